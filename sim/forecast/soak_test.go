package forecast

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func airless(f *Forecast) (s float64) {
	for _, t := range Troubles[OxygenGone](f) {
		s += t.Airless
	}
	return s
}

func TestASoakThatFollowsAnotherIsInFreshWater(t *testing.T) {
	one := run1(t, `steep in "tub" { soak 16 h in water at 13 °C }`+"\n"+growText+kilnText)
	two := run1(t, `steep in "tub" { soak 8 h in water at 13 °C; soak 8 h in water at 13 °C }`+"\n"+growText+kilnText)
	assert.InDelta(t, 2*one.Totals.SteepWater, two.Totals.SteepWater, 1e-9)
	assert.Less(t, airless(two), airless(one))
	require.Positive(t, airless(one))
	assert.InDelta(t, one.Totals.SteepOutMoisture, two.Totals.SteepOutMoisture, 0.005, "the kernels drink on as before")
}

func TestASoakAfterARestIsCountedOnce(t *testing.T) {
	f := run1(t, `steep in "tub" { soak 8 h in water at 13 °C; rest 8 h in air at 14 °C; soak 8 h in water at 13 °C }`+"\n"+growText+kilnText)
	assert.InDelta(t, 2*1.5*5, f.Totals.SteepWater, 1e-9)
}

// wetText is a steep of a long third soak, with what is said of its air.
func wetText(air string) string {
	return `steep in "tub" { soak 6 h in water at 15 °C; rest 10 h in air at 15 °C; repeat 1 times { soak 6 h in water at 15 °C; rest 10 h in air at 15 °C }; soak 12 h in water at 15 °C` + air + " }\n" + growText + kilnText
}

func TestAirAtIntervalsKeepsTheOxygenUp(t *testing.T) {
	still, often, seldom := run1(t, wetText("")), run1(t, wetText("; aerate every 30 min for 5 min")), run1(t, wetText("; aerate every 4 h for 5 min"))
	always := run1(t, wetText(" with air; aerate every 4 h for 5 min"))
	t.Logf("without oxygen: %.1f h still, %.1f h with 5 min each 4 h", airless(still)/3600, airless(seldom)/3600)
	require.Positive(t, airless(still))
	assert.Zero(t, airless(often))
	for _, gone := range Troubles[OxygenGone](always) {
		assert.Less(t, gone.Soak, 3, "air all the time wants no more")
	}
	assert.Less(t, airless(seldom), airless(still))
	assert.Positive(t, airless(seldom))
	assert.Less(t, often.Totals.Total, still.Totals.Total, "what breathes grows")
	assert.InDelta(t, still.Totals.SteepOutMoisture, often.Totals.SteepOutMoisture, 0.005, "the kernels drink as before")
	assert.InDelta(t, still.Totals.SteepWater, often.Totals.SteepWater, 1e-9)
}

func TestWhatAirAtIntervalsBringsIsAssumed(t *testing.T) {
	brings := func(text string) (list []float64) {
		for _, a := range run1(t, text).Assumed {
			if b, ok := a.(BlownAir); ok {
				list = append(list, b.Brings)
			}
		}
		return list
	}
	assert.Empty(t, brings(wetText("")))
	once := brings(wetText("; aerate every 30 min for 5 min"))
	require.Len(t, once, 1)
	assert.InDelta(t, 0.565, once[0], 0.001, "10 for each hour, for 5 min")
	assert.Greater(t, brings(wetText("; aerate every 30 min for 10 min"))[0], once[0])
	assert.Empty(t, brings(`steep in "tub" { soak 12 h in water at 15 °C with air; aerate every 1 h for 5 min }`+"\n"+growText+kilnText))
}

func TestKernelsThatDrownAreTold(t *testing.T) {
	long := run1(t, `steep in "tub" { soak 168 h in water at 18 °C }`+"\n"+growText+kilnText)
	told := Troubles[Drowned](long)
	require.Len(t, told, 1)
	assert.Equal(t, 1.0, told[0].Kernels)
	assert.Greater(t, told[0].Airless, 100*3600.0)
	assert.Zero(t, long.Pieces[0].Chitted)
	usual := run1(t, `steep in "tub" { soak 20 h in water at 15 °C }`+"\n"+growText+kilnText)
	assert.Positive(t, airless(usual))
	assert.Empty(t, Troubles[Drowned](usual))
}

// A single rest of months in the warm would have the kernels burn more than they are.
func TestASteepThatLastsTooLongEndsInTheStepThatIsTooLong(t *testing.T) {
	f := run1(t, `steep in "tub" { soak 6 h in water at 20 °C; rest 2000 h in air at 30 °C with spray; soak 6 h in water }`+"\n"+growText+kilnText)
	unable := Troubles[Unable](f)
	require.Len(t, unable, 1)
	assert.Equal(t, LongSteep{longestSteep}, unable[0].Cause)
	last := f.Stages[0].Steps[1]
	assert.Equal(t, longestSteep, last.End)
	assert.Equal(t, BrokenOff, last.EndedBy)
	assert.Less(t, last.MoistureEnd, 0.8)
	assert.Positive(t, last.WeightEnd)
}
