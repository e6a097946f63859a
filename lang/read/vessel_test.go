package read

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/lang/model"
	"maltwright/lang/source/golden"
)

const tubs = "vessel \"tub 1\" { holds 30 l }\nvessel \"tub 2\" { holds 10 l; area 0.4 m2; airflow 200 m3/h; heater 2 kW; cooler 3 kW; returns 50 %; tumbles yes; weighs 2 kg }\n"

func TestASteepIsSharedOutByWhatItsVesselsHold(t *testing.T) {
	h, found := load(tubs + "process \"p\" { steep in \"tub 1\" and \"tub 2\" { soak 7 h in water at 13 °C } }\n")
	require.Len(t, h.Processes, 1, golden.Findings(found))
	st := model.First[*model.Steep](h.Processes[0])
	require.Len(t, st.Vessels(), 2)
	assert.Equal(t, "40 l", st.Room().String())
	shares := st.Shares()
	require.Len(t, shares, 2)
	assert.InDelta(t, 0.75, shares[0].Of, 1e-12)
	assert.Equal(t, "tub 2", shares[1].In.Name)
	assert.InDelta(t, 0.25, shares[1].Of, 1e-12)
	h, _ = load(tubs + "process \"p\" { steep in \"tub 2\" { soak 7 h in water at 13 °C } }\n")
	one := model.First[*model.Steep](h.Processes[0])
	assert.Empty(t, one.Shares())
	assert.Equal(t, one.Vessel.Holds, one.Room())
	assert.Nil(t, (&model.Steep{}).Room())
	assert.Nil(t, (&model.Steep{Vessel: &model.Vessel{}}).Room())
}

func TestAVesselIsTheFloorOfWhatGrowsInIt(t *testing.T) {
	h, found := load(tubs + "process \"p\" { germinate in \"tub 2\" { hold bed at 14 °C; for 3 days } }\n")
	require.Len(t, h.Processes, 1, golden.Findings(found))
	piece := model.PieceOf(h.Processes[0].Stages[0])
	require.NotNil(t, piece.Floor)
	assert.Same(t, h.Vessels[1], piece.In)
	assert.Equal(t, "tub 2", piece.Floor.Name)
	assert.Equal(t, 0.4, piece.Floor.Area.SI)
	assert.True(t, piece.Floor.Blown())
	assert.Equal(t, []float64{2000, 3000, 0.5, 2}, []float64{piece.Floor.Heater.SI, piece.Floor.Cooler.SI, piece.Floor.Returns.SI, piece.Floor.Weighs.SI})
	assert.Equal(t, "yes", piece.Floor.Tumbles.Text)
}

func TestVesselsThatCannotBeAreFound(t *testing.T) {
	for text, rule := range map[string]string{
		"steep in \"tub 1\" and \"tub 1\" { soak 7 h in water at 13 °C }":                                  saidTwice.Name,
		"steep in \"tub 1\" and \"tub 3\" { soak 7 h in water at 13 °C }":                                  unknownName.Name,
		"steep in \"tub 1\" and { soak 7 h in water at 13 °C }":                                            valueNeeded.Name,
		"germinate in \"tub 1\" { hold bed at 14 °C; for 3 days }":                                         missingStatement.Name,
		"germinate { hold bed at 14 °C; for 3 days }":                                                      valueNeeded.Name,
		"germinate in \"tub 2\" on \"f\" { hold bed at 14 °C; for 3 days }":                                twoOfAClause.Name,
		"germinate in \"tub 3\" { hold bed at 14 °C; for 3 days }":                                         unknownName.Name,
		"steep in \"tub 2\" { soak 7 h in water at 13 °C }; kiln in \"k\" { dry at air-on 50 °C for 3 h }": unusedDefinition.Name,
	} {
		_, found := load(tubs + "floor \"f\" { area 1 m2 }\nprocess \"p\" { " + text + " }\n")
		assert.True(t, has(found, rule), "%s: %s", text, golden.Findings(found))
	}
	_, found := load(tubs + "process \"p\" { steep in \"tub 1\" and \"tub 2\" { soak 7 h in water at 13 °C }; germinate in \"tub 2\" { hold bed at 14 °C; for 3 days } }\n")
	assert.False(t, has(found, unusedDefinition.Name), golden.Findings(found))
}
