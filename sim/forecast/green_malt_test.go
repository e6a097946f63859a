package forecast

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/lang/model"
)

func runGreen(t testing.TB, lot, body string) *Forecast {
	t.Helper()
	f, err := Run(load(t, house+"grain \"green\" { species barley; already green malt; "+lot+"treated no }\nprocess \"p\" {\n make pale malt\n from 10 kg of \"green\"\n at \"room\"\n"+body+"}\n"), Options{})
	require.NoError(t, err)
	require.False(t, f.BrokenOff(), "%v", f.Trouble)
	return f
}

// Bought green malt goes to the kiln as it is: its yield is counted from its own dry
// matter, of which the kiln takes none and deculming the rootlets.
func TestBoughtGreenMaltIsDried(t *testing.T) {
	f := runGreen(t, "moisture 45 %; ", kilnText)
	first := f.Stages[0].Steps[0]
	assert.Equal(t, model.KilnStage, f.Stages[0].Kind)
	assert.Zero(t, first.Start)
	assert.InDelta(t, 0.45, first.MoistureStart, 1e-9)
	assert.InDelta(t, 5.5, f.DryMass, 1e-9)
	assert.InDelta(t, f.DryMass-f.Totals.Rootlets*(1-f.Totals.FinalMoisture), f.Totals.Malt*(1-f.Totals.FinalMoisture), 1e-9)
	assert.InDelta(t, 0.967, f.Totals.YieldDry, 0.01, "rootlets are some hundredths")
	assert.Less(t, f.Totals.FinalMoisture, 0.06)
}

// It dries as the green malt does that is made here and grown as far.
func TestBoughtGreenMaltDriesAsOnesOwn(t *testing.T) {
	own := run1(t, steepText+growText+kilnText)
	green := own.Stages[1].Steps[0]
	p := load(t, house+"grain \"green\" { species barley; already green malt; moisture 40 %; treated no }\nprocess \"p\" {\n make pale malt\n from 10 kg of \"green\"\n at \"room\"\n"+kilnText+"}\n")
	p.Charge.SI, p.Grain.Moisture.SI = green.WeightEnd, green.MoistureEnd
	bought, err := Run(p, Options{})
	require.NoError(t, err)
	kiln := own.Stages[2].Steps
	for i, s := range bought.Stages[0].Steps {
		assert.InDelta(t, kiln[i].End-kiln[i].Start, s.End-s.Start, 400, s.Label)
		assert.InDelta(t, kiln[i].MoistureEnd, s.MoistureEnd, 0.003, s.Label)
	}
	assert.InDelta(t, own.Totals.Malt, bought.Totals.Malt, 0.02)
}

func TestBoughtGreenMaltGrowsOnWhileItWithers(t *testing.T) {
	f := runGreen(t, "moisture 45 %; ", "wither on \"tray\" { air at 16 °C; humidity 90 %; for 24 h }\n"+kilnText)
	assert.Greater(t, f.Pieces[0].Acrospire, 0.76)
	assert.Greater(t, f.Totals.DryMatterLost, 0.03)
}

func TestWhatIsTakenOfGreenMaltIsSaid(t *testing.T) {
	f := runGreen(t, "", kilnText)
	assert.Contains(t, f.Assumed, Assumption(GrainMoisture{UsualGreen, true, false}))
	assert.Contains(t, f.Assumed, Assumption(GrownBefore{usualGrowth}))
	for _, a := range f.Assumed {
		switch a.(type) {
		case KernelWeight, Germination:
			assert.Failf(t, "of no use", "%T", a)
		}
	}
}

// A process that makes green malt ends with the growing, and its promises are of that.
func TestGreenMaltIsMadeWhenItHasGrown(t *testing.T) {
	f, err := Run(load(t, house+"process \"p\" {\n make green malt\n from 5 kg of \"lot\"\n at \"room\"\n"+steepText+growText+"expect final moisture 40 to 46 %\nexpect malt weight at least 6 kg\n}\n"), Options{})
	require.NoError(t, err)
	require.False(t, f.BrokenOff(), "%v", f.Trouble)
	last := f.Stages[1].Steps[0]
	assert.Equal(t, last.MoistureEnd, f.Totals.FinalMoisture)
	assert.Equal(t, last.WeightEnd, f.Totals.Malt)
	for _, e := range f.Expects {
		assert.True(t, e.Holds, e.Test.Measure)
	}
}
