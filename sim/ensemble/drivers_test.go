package ensemble

import (
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/sim/forecast"
)

// drawn is an ensemble of so many members with axes that are drawn anew; of tells its total
// time from the draw of a member and a number that goes with nothing.
func drawn(members, axes int, seed uint64, of func(draw []float64, own float64) float64) *Ensemble {
	r := rand.New(rand.NewPCG(seed, 1))
	e := &Ensemble{Unknowns: make([]Unknown, axes), Members: make([]Member, members), Draws: make([][]float64, members)}
	for i := range e.Members {
		draw := make([]float64, axes)
		for k := range draw {
			draw[k] = r.Float64()
		}
		e.Draws[i] = draw
		e.Members[i].Totals = forecast.Totals{Total: of(draw, r.NormFloat64())}
	}
	return e
}

// A figure that is the same in every member, but for the last digits of the arithmetic, has
// nothing that drives it, however well those digits go with an unknown.
func TestAFigureWithoutSpreadHasNoDrivers(t *testing.T) {
	const sixteen = 16 * 3600.0
	assert.Empty(t, drawn(100, 5, 1, func(draw []float64, _ float64) float64 { return sixteen + 20*draw[0] }).Drivers(totalTime))
	assert.Empty(t, drawn(100, 5, 1, func([]float64, float64) float64 { return sixteen }).Drivers(totalTime))
	list := drawn(100, 5, 1, func(draw []float64, _ float64) float64 { return sixteen + 3600*draw[0] }).Drivers(totalTime)
	require.NotEmpty(t, list)
	assert.InDelta(t, 1, list[0].Share, 1e-9)
}

// What has nothing to do with a figure is told to drive it once in a hundred times, whatever
// the number of members; in ten thousand members not under a hundredth of the spread.
func TestNoiseDrivesAFigureOnceInAHundred(t *testing.T) {
	for _, members := range []int{30, 100, 400} {
		told, axes := 0, 0
		for seed := range uint64(100) {
			e := drawn(members, 20, seed, func(_ []float64, own float64) float64 { return 1e6 + 1e5*own })
			told += len(e.Drivers(totalTime))
			axes += 20
		}
		assert.InDelta(t, 0.01, float64(told)/float64(axes), 0.007, "%d members", members) // three standard deviations of 2000 draws
	}
	weak := func(draw []float64, own float64) float64 { return 1e6 + 1e5*(own+0.2*draw[0]) } // 0.003 of the variance
	assert.Empty(t, drawn(10_000, 1, 1, weak).Drivers(totalTime))
}
