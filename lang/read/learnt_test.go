package read

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/lang/model"
	"maltwright/lang/source/golden"
)

const learntLoft = `house "Loft" {
  growth      1.06 error 0.04
  respiration 0.95
  withering   1.15 error 0.12
  uptake      1.08 error 0.06 of "Far field 2026"
  husk-water  1.12 error 0.09 of "Far field 2026"
  chit        0.85 error 0.12 of "Far field 2026"
  drying      0.91 error 0.05 of "tray kiln"
  thermometer -1.8 °F error 0.4 °C
}
grain "Far field 2026" { species barley }
grain "Far field 2025" { species barley }
kiln "tray kiln" { area 0.5 m2 }
kiln "other kiln" { area 0.5 m2 }
`

func TestWhatAHouseLearntIsReadAsWritten(t *testing.T) {
	h, found := load(learntLoft)
	require.Empty(t, golden.Findings(found))
	l := h.Learnt
	require.NotNil(t, l)
	assert.Equal(t, "Loft", l.Name)
	assert.Equal(t, `"Loft"`, l.Place.Text())
	assert.Equal(t, 1.06, l.Growth.Value.SI)
	assert.Equal(t, 0.04, l.Growth.Error.SI)
	assert.Equal(t, "growth      1.06 error 0.04", l.Growth.Place.Text())
	assert.Equal(t, 0.95, l.Respiration.Value.SI)
	assert.Nil(t, l.Respiration.Error)
	assert.Equal(t, 1.15, l.Withering.Value.SI)
	assert.Equal(t, 0.12, l.Withering.Error.SI)
	assert.InDelta(t, -1.0, l.Thermometer.Value.SI, 1e-12, "1.8 °F is 1 K, by definition")
	assert.Equal(t, 0.4, l.Thermometer.Error.SI)

	assert.Equal(t, 1.08, l.UptakeOf(h.Grains[0]).Value.SI)
	assert.Nil(t, l.UptakeOf(h.Grains[1]), "of another lot nothing was learnt")
	assert.Equal(t, 1.12, l.HuskWaterOf(h.Grains[0]).Value.SI)
	assert.Equal(t, 0.09, l.HuskWaterOf(h.Grains[0]).Error.SI)
	assert.Nil(t, l.HuskWaterOf(h.Grains[1]))
	assert.Equal(t, 0.85, l.ChitOf(h.Grains[0]).Value.SI)
	assert.Nil(t, l.ChitOf(h.Grains[1]))
	assert.Equal(t, 0.91, l.DryingOf(h.Kilns[0]).Value.SI)
	assert.Nil(t, l.DryingOf(h.Kilns[1]))
	assert.Nil(t, l.UptakeOf(nil))
	assert.Nil(t, l.DryingOf(nil))
}

// A block of an older version says nothing of what came later.
func TestAHouseThatLearntBeforeThereWereMoreFiguresReads(t *testing.T) {
	h, found := load("house \"Loft\" { growth 1.06; uptake 1.08 error 0.06 of \"Far field 2026\" }\ngrain \"Far field 2026\" { species barley }\n")
	require.Empty(t, golden.Findings(found))
	l, g := h.Learnt, h.Grains[0]
	assert.Equal(t, 1.08, l.UptakeOf(g).Value.SI)
	assert.Nil(t, l.HuskWaterOf(g))
	assert.Nil(t, l.ChitOf(g))
}

func TestAProcessKnowsWhatItsHouseLearnt(t *testing.T) {
	h, found := loadExample(t, shortest+shortKiln+"}\nhouse \"Loft\" { growth 1.06 }")
	require.Empty(t, golden.Findings(found))
	assert.Same(t, h.Learnt, h.Processes[0].Learnt())
	assert.Nil(t, (&model.Process{}).Learnt())
	assert.Nil(t, (&model.Process{House: &model.House{}}).Learnt().UptakeOf(&model.Grain{}), "and asks in vain where nothing was learnt")
}

func TestABatchKnowsWhatTheHouseOfItsProcessLearnt(t *testing.T) {
	h, found := Load("main.malt", []byte("use \"learnt.malt\"\nuse \"pale.malt\"\nbatch \"26-03\" of \"Loft pale\" { began 2026-03-06 07:00 }"), ".", files{
		"learnt.malt": "house \"Loft\" { thermometer 0.8 °C }",
		"pale.malt":   shortest[len("use \"loft.malt\"\n"):] + shortKiln + "}\ngrain \"Far field 2026\" { species barley }\nvessel \"blue tub\" { holds 25 l }\nfloor \"larch floor\" { area 0.8 m2 }\nkiln \"tray kiln\" { area 0.5 m2 }",
	})
	require.Empty(t, golden.Findings(found))
	assert.Equal(t, 0.8, h.Batches[0].Process.Learnt().Thermometer.Value.SI)
}
