package follow

import (
	"context"
	"math"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/lang/model"
	"maltwright/sim/forecast"
	"maltwright/sim/visits"
)

func followText(t *testing.T, until time.Time, lines string) *Following {
	t.Helper()
	b := load(t, "use \"pale.malt\"\nbatch \"x\" of \"Loft pale\" {\n  began 2026-03-06 07:00\n"+lines+"}\n")
	f, err := Of(context.Background(), b, until, Options{Members: few})
	require.NoError(t, err)
	return f
}

// A batch and its bag are weighed behind the same soak; it ended once.
func TestAStepEndsOnceHoweverOftenItIsWeighed(t *testing.T) {
	f := followText(t, began.Add(9*time.Hour), "  bag 100 g at the start\n  weighed bag 124 g at 14:00 after soak 1\n  weighed 7.41 kg at 14:05 after soak 1\n")
	assert.Equal(t, model.SteepStage, f.Stand.Sight.Stage)
	assert.False(t, f.Over())
	assert.Greater(t, f.Centre.Totals.Total, 6*86400.0)
	twice := followRecord(t, "2026-03-13 08:00", "weighed 5.68 kg at 07:14 after dry 1", "weighed 5.69 kg at 07:00 after dry 1\n  weighed 5.68 kg at 07:14 after dry 1")
	assert.Equal(t, model.KilnStage, twice.Stand.Sight.Stage)
	assert.Empty(t, doubts(twice))
}

// A soak of which nothing is written was there all the same.
func TestASoakThatWasNotWeighedIsNotLost(t *testing.T) {
	all := followRecord(t, "2026-03-08 12:00")
	without := followRecord(t, "2026-03-08 12:00", "  weighed 9.29 kg at 22:00 after soak 3\n", "", "  read    water 13.6 °C at 15:01\n", "")
	assert.InDelta(t, all.Stand.Moisture.P50, without.Stand.Moisture.P50, 0.012)
}

// A weight that is said to end the withering, but is that of wet green malt.
func TestAStepThatCannotHaveEndedIsDoubted(t *testing.T) {
	f := followRecord(t, "2026-03-12 14:00", "weighed 8.92 kg at 13:14 after germinate", "weighed 8.92 kg at 13:14 after wither")
	assert.Equal(t, map[string]DoubtKind{"weighed 8.92 kg at 13:14 after wither": NotYet}, doubts(f))
}

// A reading without a time is of the end of its step, and counts.
func TestAReadingWithoutATimeCounts(t *testing.T) {
	f := followText(t, began.Add(9*time.Hour), "  weighed 7.90 kg after soak 1\n")
	plain := followText(t, began.Add(9*time.Hour), "")
	require.Len(t, f.Judged, 1)
	assert.Greater(t, f.Stand.Moisture.P50, plain.Stand.Moisture.P50+0.01)
}

// While nothing was read, or nothing that a forecast has a figure for, the visits are those of the process alone, as begin, visits and a sheet have them.
func TestWhileNothingWasReadThePlanIsThatOfTheProcess(t *testing.T) {
	for _, lines := range []string{"", "  remark \"smells fresh\" at 08:00\n"} {
		f := followText(t, began.Add(9*time.Hour), lines)
		plain, err := forecast.Run(f.Trial.Process, forecast.Options{Begun: f.Trial.Batch.Began.Time})
		require.NoError(t, err)
		assert.InDelta(t, plain.Totals.Total, f.Middle().Totals.Total, 1e-6)
		var want []visits.Visit
		for _, v := range visits.Gather(visits.List(plain)) {
			if v.At >= f.Now {
				want = append(want, v)
			}
		}
		require.Len(t, f.Due, len(want))
		for i, v := range f.Due {
			assert.InDelta(t, want[i].At, v.At, 1e-6)
			if !math.IsNaN(want[i].Weight) {
				assert.InDelta(t, want[i].Weight, v.Weight, 1e-9)
			}
		}
	}
	f := followText(t, began.Add(9*time.Hour), "  weighed 7.20 kg at 14:00 after soak 1\n")
	assert.Less(t, f.Due[1].Weight, followText(t, began.Add(9*time.Hour), "").Due[1].Weight, "what is read counts at once")
}
