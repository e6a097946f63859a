package read

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/lang/model"
	"maltwright/lang/source/golden"
)

func steepOf(t *testing.T, steps string) *model.Steep {
	t.Helper()
	h, found := load("process \"p\" { steep { " + steps + " } }\n")
	require.Len(t, h.Processes, 1, golden.Findings(found))
	return model.First[*model.Steep](h.Processes[0])
}

func TestWhatASoakAndARestAreWithIsReadAsWritten(t *testing.T) {
	st := steepOf(t, "soak 7 h in 12 l water at 13 °C with lime and airflow 12 l/min and overflow 2 l/min; rest 9 h in air at 14 °C with airflow 15 m3/h and spray; rest 9 h with spray 20 l/h at 14 °C; soak 7 h in water at 13 °C with air and lime")
	require.Len(t, st.Steps, 4)
	soak := st.Steps[0].(*model.Soak)
	assert.InDelta(t, 0.012, model.WaterVolume(soak.Water.Quantity), 1e-12)
	assert.True(t, soak.Limed)
	assert.False(t, soak.Aerated)
	assert.InDelta(t, 0.0002, soak.Airflow.SI, 1e-12)
	assert.Equal(t, "2 l/min", soak.Overflow.Place.Text())
	rest := st.Steps[1].(*model.Rest)
	assert.InDelta(t, 15.0/3600, rest.Airflow.SI, 1e-12)
	require.NotNil(t, rest.Spray)
	assert.Nil(t, rest.Spray.Flow)
	assert.Equal(t, "20 l/h", st.Steps[2].(*model.Rest).Spray.Flow.String())
	last := st.Steps[3].(*model.Soak)
	assert.True(t, last.Aerated && last.Limed)
}

func TestWhatAStepCannotBeWithIsFound(t *testing.T) {
	for line, rule := range map[string]string{
		"soak 7 h in water at 13 °C with air and air":                saidTwice.Name,
		"soak 7 h in water at 13 °C with overflow":                   valueNeeded.Name,
		"soak 7 h in water at 13 °C with air 12 l/min":               wordsTooMany.Name,
		"soak 7 h in water at 13 °C with lime 2 l/min":               wordsTooMany.Name,
		"soak 7 h in water at 13 °C with air and":                    valueNeeded.Name,
		"soak 7 h in water at 13 °C with spray":                      unknownWord.Name,
		"soak 7 h in water at 13 °C with air and airflow 12 l/min":   twoOfAClause.Name,
		"soak 7 h in water at 13 °C with overflow 2 h":               wrongDimension.Name,
		"soak 7 h in 0 l water at 13 °C":                             outOfRange.Name,
		"soak 7 h in 12 l at 13 °C":                                  valueNeeded.Name,
		"soak 7 h in 12 h water at 13 °C":                            wrongDimension.Name,
		"rest 9 h in air at 14 °C with air":                          unknownWord.Name,
		"rest 9 h in air at 14 °C with airflow":                      valueNeeded.Name,
		"rest 9 h in air at 14 °C with airflow 15 m3/h with airflow": twoOfAClause.Name,
	} {
		_, found := load("process \"p\" { steep { " + line + " } }\n")
		assert.True(t, has(found, rule), "%s: %s", line, golden.Findings(found))
	}
}
