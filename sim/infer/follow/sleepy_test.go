package follow

import (
	"context"
	"fmt"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/sim/ensemble"
	"maltwright/sim/forecast"
)

// chitsCounted follows a batch of which chits were counted, each so many hours from its beginning.
func chitsCounted(t *testing.T, counts map[float64]int) *Following {
	t.Helper()
	text := "use \"pale.malt\"\nbatch \"x\" of \"Loft pale\" {\n  began 2026-03-06 07:00\n  weighed 7.34 kg at 14:00 after soak 1\n" +
		"  weighed 8.54 kg at 2026-03-07 06:00 after soak 2\n  weighed 9.26 kg at 2026-03-07 22:00 after soak 3\n"
	last := began
	for h := 40.0; h < 80; h++ {
		if n, ok := counts[h]; ok {
			last = began.Add(time.Duration(h * float64(time.Hour)))
			text += fmt.Sprintf("  counted chit %d of 100 at %s\n", n, last.Format("2006-01-02 15:04"))
		}
	}
	f, err := Of(context.Background(), load(t, text+"}\n"), last, Options{Members: 200})
	require.NoError(t, err)
	return f
}

func factorIn(t *testing.T, f *Following, which ensemble.Factor) Factor {
	t.Helper()
	for _, x := range f.Factors() {
		if x.Which == which {
			return x
		}
	}
	t.Fatalf("no factor %s", which)
	return Factor{}
}

// The fewer kernels have chitted, the later the batch ends: a count that few lots give is no
// slip of the pen.
func TestFewerChitsEndLater(t *testing.T) {
	total := func(t *forecast.Totals) float64 { return t.Total }
	last := 0.0
	for _, n := range []int{90, 50, 20} {
		f := chitsCounted(t, map[float64]int{48: n})
		end := f.Ensemble.Total(total).P50
		t.Logf("%d of 100: %.1f h, chit %.2f", n, end/3600, factorIn(t, f, ensemble.Chit).Spread.P50)
		assert.Greater(t, end, last, "%d of 100", n)
		last = end
		assert.Empty(t, f.Doubts, "%d of 100", n)
	}
}

// A lot that wakes late over two days is told as one that chits slowly, and hardly as one
// that grows slowly; and that it lies at the edge of what is thought possible is said.
func TestASleepyLotIsAtTheEdgeOfWhatChits(t *testing.T) {
	f := chitsCounted(t, map[float64]int{48: 20, 56: 36, 64: 50, 73: 62})
	chit, growth := factorIn(t, f, ensemble.Chit), factorIn(t, f, ensemble.Growth)
	t.Logf("chit %.2f, growth %.2f", chit.Spread.P50, growth.Spread.P50)
	assert.Equal(t, -1, chit.Edge)
	assert.Zero(t, growth.Edge)
	assert.Greater(t, growth.Spread.P50, 0.8)
	usual := chitsCounted(t, map[float64]int{48: 86})
	for _, x := range usual.Factors() {
		assert.Zero(t, x.Edge, x.Which)
	}
}
