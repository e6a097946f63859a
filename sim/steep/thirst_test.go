package steep_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/sim/steep"
)

// A gate that ends a rest by the minute must not move the steep by points.
func TestAMinuteMoreOfRestMovesTheSteepByLittle(t *testing.T) {
	out := func(minutes float64) float64 {
		s := raw(t, lot(t, "barley"))
		schedule(t, &s, 15, 8, minutes/60, 8)
		return 100 * s.Moisture()
	}
	most := 0.0
	before := out(1)
	for m := 2.0; m <= 16*60; m++ {
		now := out(m)
		most = math.Max(most, math.Abs(now-before))
		before = now
	}
	t.Logf("%.2f %% after a minute of rest, %.2f %% after 16 h, by at most %.3f points a minute", out(1), before, most)
	assert.Less(t, most, 0.02, "points of moisture")
	assert.Greater(t, before, out(1)+1, "kernels that breathe drink faster")
}

// In a rest the speed rises as the air goes on, and however it is cut the kernels drink as much.
func TestARestThatIsCutDrinksAsMuch(t *testing.T) {
	whole, cut := raw(t, lot(t, "barley")), raw(t, lot(t, "barley"))
	for _, s := range []*steep.State{&whole, &cut} {
		require.NoError(t, s.Soak(2*hour, steep.Water{T: 15}))
	}
	require.NoError(t, whole.Rest(10*hour, steep.Air{T: 15, RH: 1}))
	for range 600 {
		require.NoError(t, cut.Rest(hour/60, steep.Air{T: 15, RH: 1}))
	}
	assert.InDelta(t, whole.CoreX(), cut.CoreX(), 1e-6)
	assert.InDelta(t, whole.HuskX(), cut.HuskX(), 1e-6)
}
