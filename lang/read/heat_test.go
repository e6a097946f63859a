package read

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/lang/finding"
	"maltwright/lang/model"
	"maltwright/lang/source/golden"
)

// defined loads definitions that must read.
func defined(t *testing.T, text string) *model.House {
	t.Helper()
	h, found := load(text)
	worst, _ := finding.Worst(found)
	require.Less(t, worst, finding.Fault, golden.Findings(found))
	return h
}

func TestFactsOfAKilnAreReadAsWritten(t *testing.T) {
	k := defined(t, `kiln "tower" {
  area 12 m2
  fan 6000 m3/h at 40 mm of water; fan 2.2 kW; fan 9000 m3/h at 0 Pa
  chimney 6 m
  recovers 35 %
  heater 110 kW at 85 %
  fired peat by direct
  walls brick 60 m2 with insulation
}`).Kilns[0]
	require.Len(t, k.Fan, 2)
	assert.InDelta(t, 6000/hour, k.Fan[0].Flow.SI, 1e-12, "the least air first, however they are written")
	assert.InDelta(t, 392.266, k.Fan[0].Pressure.SI, 1e-9)
	assert.Equal(t, "40 mm of water", k.Fan[0].Pressure.String())
	assert.Zero(t, k.Fan[1].Pressure.SI)
	assert.Equal(t, "fan 9000 m3/h at 0 Pa", k.Fan[1].Place.Text())
	assert.Equal(t, 2200.0, k.FanPower.SI)
	assert.Equal(t, 6.0, k.Chimney.SI)
	assert.InDelta(t, 0.35, k.Recovers.SI, 1e-12)
	assert.InDelta(t, 0.85, k.Efficiency.SI, 1e-12)
	assert.Equal(t, "peat", k.Fired.Text)
	assert.True(t, k.Direct)
	assert.Equal(t, "brick", k.Walls.Material.Text)
	assert.Equal(t, 60.0, k.Walls.Area.SI)
	assert.True(t, k.Walls.Insulated)
	assert.Equal(t, k.Fan[0].Place, k.BlowsBy())
	assert.False(t, k.Tumbles)
}

func TestADrumAndAnOvenAreReadAsWritten(t *testing.T) {
	h := defined(t, `kiln "roaster" { holds 20 l; tumbles yes; walls metal }
kiln "wall oven" { area 0.3 m2; draught still; door ajar 3 cm }
kiln "trays" { area 1 m2; tumbles no; airflow 60 m3/h }`)
	drum, oven, trays := h.Kilns[0], h.Kilns[1], h.Kilns[2]
	assert.True(t, drum.Tumbles)
	assert.InDelta(t, 0.02, drum.Holds.SI, 1e-12)
	assert.Nil(t, drum.Area)
	assert.Nil(t, drum.Walls.Area)
	assert.False(t, drum.Walls.Insulated)
	assert.InDelta(t, 0.03, oven.Door.SI, 1e-12)
	assert.False(t, trays.Tumbles)
	assert.Equal(t, trays.Airflow.Place, trays.BlowsBy())
}

func TestFloorsAndVesselsTakeAFanAndAnEfficiency(t *testing.T) {
	h := defined(t, `floor "box" { area 4 m2; airflow 1200 m3/h; fan 0.75 kW; heater 6 kW at 90 % }
vessel "drum" { holds 2000 l; area 4 m2; airflow 1200 m3/h; fan 750 W; heater 6 kW at 90 % }`)
	for _, f := range []*model.Floor{h.Floors[0], h.Vessels[0].Bed()} {
		assert.Equal(t, 750.0, f.FanPower.SI)
		assert.InDelta(t, 0.9, f.Efficiency.SI, 1e-12)
	}
}

func TestAKilnIsGivenTheExhaustOfAnotherThatMayStandBelow(t *testing.T) {
	h := defined(t, `kiln "top" { area 10 m2; air from "middle" }
kiln "middle" { area 10 m2; air from "bottom" }
kiln "bottom" { area 10 m2; heater 60 kW }`)
	top, middle, bottom := h.Kilns[0], h.Kilns[1], h.Kilns[2]
	assert.Same(t, middle, top.AirFrom)
	assert.Nil(t, bottom.AirFrom)
	assert.Equal(t, []*model.Kiln{middle, bottom}, top.Upstream())
	assert.Empty(t, bottom.Upstream())
}

// Of a circle nobody's air is known, and nothing behind it goes round for ever.
func TestACircleOfKilnsIsCutWhereItIsTold(t *testing.T) {
	h, found := load(`kiln "a" { area 1 m2; air from "b" }
kiln "b" { area 1 m2; air from "c" }
kiln "c" { area 1 m2; air from "a" }
kiln "beside" { area 1 m2; air from "a" }`)
	assert.True(t, has(found, airInCircle.Name))
	assert.Len(t, found, 1, golden.Findings(found))
	for _, k := range h.Kilns[:3] {
		assert.Nil(t, k.AirFrom, k.Name)
	}
	assert.Same(t, h.Kilns[0], h.Kilns[3].AirFrom)
}

func onKilnOf(t *testing.T, lines string) *model.Kilning {
	t.Helper()
	h, found := load("process \"p\" { kiln {\n" + lines + "\n} }\n")
	require.Len(t, h.Processes, 1, golden.Findings(found))
	return model.First[*model.Kilning](h.Processes[0])
}

func TestAStepOnTheKilnSaysWithWhatItIs(t *testing.T) {
	st := onKilnOf(t, `dry at air-on 45 °C with smoke and airflow 40 m3/h and returns 50 % for 8 h
stew at malt 65 °C for 90 min with returns 90 %
roast at malt 175 °C for 50 min
cool to malt 30 °C with water 2 l
cool to malt 25 °C`)
	require.Len(t, st.Steps, 5)
	dry := st.Steps[0]
	assert.True(t, model.Smoked(dry))
	assert.InDelta(t, 40/hour, model.Airflow(dry).SI, 1e-12)
	assert.InDelta(t, 0.5, model.Returns(dry).SI, 1e-12)
	stew := st.Steps[1]
	assert.False(t, model.Smoked(stew))
	assert.Nil(t, model.Airflow(stew))
	assert.InDelta(t, 0.9, model.Returns(stew).SI, 1e-12)
	roast, ok := st.Steps[2].(*model.Roast)
	require.True(t, ok)
	assert.Equal(t, model.RoastStep, roast.Kind())
	assert.Equal(t, "malt", roast.At.Where)
	assert.Equal(t, 3000.0, roast.For.SI)
	assert.InDelta(t, 0.002, st.Steps[3].(*model.Cool).Water.SI, 1e-12)
	assert.Nil(t, st.Steps[4].(*model.Cool).Water)
}

func TestWhatAStepOnTheKilnCannotBeWithIsTold(t *testing.T) {
	for line, rule := range map[string]string{
		"dry at air-on 45 °C for 8 h with airflow":                       "value-needed",
		"dry at air-on 45 °C for 8 h with returns":                       "value-needed",
		"dry at air-on 45 °C for 8 h with smoke 50 %":                    "words-too-many",
		"dry at air-on 45 °C for 8 h with airflow 50 %":                  "wrong-dimension",
		"dry at air-on 45 °C for 8 h with returns 40 m3/h":               "wrong-dimension",
		"dry at air-on 45 °C for 8 h with returns 50 % and returns 60 %": "said-twice",
		"dry at air-on 45 °C for 8 h with returns 100 %":                 "out-of-range",
		"dry at air-on 45 °C for 8 h with airflow 9000000 m3/h":          "out-of-range",
		"cool to malt 30 °C with water 0 l":                              "out-of-range",
		"cool to malt 30 °C with smoke":                                  "unknown-word",
	} {
		_, found := load("process \"p\" { kiln {\n" + line + "\n} }\n")
		assert.True(t, has(found, rule), "%s: %s", line, golden.Findings(found))
		for _, f := range found {
			assert.True(t, f.Rule == rule || f.Place.Start < 20, "%s is told of as %s too: %s", line, f.Rule, f.Message)
		}
	}
}

// On the upper floor malt is as warm as the exhaust of the lower one has it.
func TestDryingNeedsNoTemperatureOnExhaustAlone(t *testing.T) {
	for kiln, asked := range map[string]bool{
		`kiln "upper" { area 1 m2; air from "lower" }`:               false,
		`kiln "upper" { area 1 m2; air from "lower"; heater 20 kW }`: true,
		`kiln "upper" { area 1 m2 }`:                                 true,
	} {
		_, found := load("process \"p\" { kiln in \"upper\" {\n dry until moisture at most 20 % allow 10 to 30 h\n} }\nkiln \"lower\" { area 1 m2 }\n" + kiln)
		assert.Equal(t, asked, has(found, stepNeedsTemperature.Name), kiln)
	}
}

func TestBoughtMaltIsMalt(t *testing.T) {
	h := defined(t, `grain "a" { species barley; already kilned malt; moisture 4.5 % }
grain "b" { species barley; already green malt; moisture 44 % }
grain "c" { species barley; moisture 12 % }`)
	for i, want := range [][2]bool{{false, true}, {true, false}, {false, false}} {
		assert.Equal(t, want, [2]bool{h.Grains[i].Grown(), h.Grains[i].Kilned()}, h.Grains[i].Name)
	}
	_, found := load(`grain "a" { species barley; already kilned malt; moisture 12 % }`)
	assert.True(t, has(found, unusualFigure.Name), "raw grain has so much, and malt has not")
	_, found = load(`grain "a" { species barley; already green malt; moisture 4.5 % }`)
	assert.True(t, has(found, outOfRange.Name))
}
