package evidence_test

import (
	"context"
	"fmt"
	"math"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func foretold(t *testing.T, lines string, i int) (value, sd float64) {
	t.Helper()
	x := trial(t, written(t, lines), time.Time{})
	g, err := x.Linearise(context.Background())
	require.NoError(t, err)
	value, sd, ok := g.Foretell(i)
	require.True(t, ok)
	return value, sd
}

// What is foretold of a reading is by all others: whatever it is itself, it is the same. A weight
// before it narrows it.
func TestAReadingIsForetoldByAllOthers(t *testing.T) {
	const first = "  weighed 7.38 kg at 14:00 after soak 1\n"
	second := func(kg float64) string {
		return fmt.Sprintf("  weighed %.2f kg at 2026-03-07 06:00 after soak 2\n", kg)
	}
	value, sd := foretold(t, first+second(8.58), 1)
	for _, kg := range []float64{8.3, 9.57, 12} {
		v, _ := foretold(t, first+second(kg), 1)
		assert.InDelta(t, value, v, 0.02, "%g kg", kg)
	}
	assert.InDelta(t, 8.58, value, 0.15)
	_, alone := foretold(t, second(8.58), 0)
	assert.Less(t, sd, 0.8*alone)
	assert.Greater(t, sd, 0.01*value, "a scale and what drips are in it")
}

// A count fits at its own time where it is what the forecast has, and earlier where it is less.
func TestAReadingThatGrowsFitsAtATime(t *testing.T) {
	lines := "  counted acrospire %s at 2026-03-10 08:00\n"
	at := func(counts string) float64 {
		x := trial(t, written(t, fmt.Sprintf(lines, counts)), time.Time{})
		z := make([]float64, len(x.Axes))
		off, ok := x.Fits(0, z)
		require.True(t, ok, counts)
		f := middle(t, x)
		o := &x.Observations[0]
		assert.Equal(t, o.Value > o.Expect(f, 0), off > 0, "%s: later where there is more", counts)
		return off
	}
	assert.Less(t, at("2 64 32 2 0 0"), at("2 34 62 2 0 0"))
	assert.Less(t, math.Abs(at("2 30 64 4 0 0")), 6*3600.0)
	x := trial(t, written(t, fmt.Sprintf(lines, "0 0 0 0 0 100")), time.Time{})
	_, ok := x.Fits(0, make([]float64, len(x.Axes)))
	assert.False(t, ok, "nothing of two days has it")
}
