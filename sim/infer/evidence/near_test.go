package evidence_test

import (
	"context"
	"fmt"
	"math"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Of many readings none that lies far from what the others foretell is taken to be near, and most of those that
// scatter as they should are; of few none is.
func TestNearIsWhatTheOthersForetell(t *testing.T) {
	const half = 60
	record := func(n int) string {
		var lines strings.Builder
		at := time.Date(2026, 3, 6, 14, 0, 0, 0, time.Local)
		lines.WriteString("  weighed 7.38 kg at 2026-03-06 14:00 after soak 1\n")
		for i := range n {
			at = at.Add(5 * time.Minute)
			off := 0.02 * math.Sin(float64(7*i))
			if i == n/2 {
				off = 0.9
			}
			fmt.Fprintf(&lines, "  weighed %.2f kg at %s\n", 7.38+off, at.Format("2006-01-02 15:04"))
		}
		return lines.String()
	}
	x := trial(t, written(t, record(2*half)), time.Time{})
	g, err := x.Linearise(context.Background())
	require.NoError(t, err)
	count := 0
	for i, o := range x.Observations {
		value, sd, ok := g.Foretell(i)
		require.True(t, ok)
		if g.Near(i) {
			count++
			assert.Less(t, math.Abs(o.Value-value)/sd, 1.5, "reading %d", i)
		}
	}
	assert.Greater(t, count, half)
	few := trial(t, written(t, record(half)), time.Time{})
	g, err = few.Linearise(context.Background())
	require.NoError(t, err)
	for i := range few.Observations {
		assert.False(t, g.Near(i))
	}
}
