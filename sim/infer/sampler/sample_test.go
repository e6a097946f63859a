package sampler

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
)

// By hand: 1/(0.5² + 0.25² + 0.25²) = 2.67.
func TestTheEffectiveSampleSize(t *testing.T) {
	assert.InDelta(t, 8.0/3, kishSize([]float64{0.5, 0.25, 0.25}), 1e-12)
	assert.InDelta(t, 1, kishSize([]float64{1, 0, 0}), 1e-12)
}

// By hand: e⁰ : e^ln3 : nothing is 1 to 3, however far from 0 the logarithms lie.
func TestWeightsAreNormalised(t *testing.T) {
	for _, far := range []float64{0, -5000, 5000} {
		w := normalise([]float64{far, far + math.Log(3), math.Inf(-1), math.NaN()})
		assert.InDeltaSlice(t, []float64{0.25, 0.75, 0, 0}, w, 1e-9, "%v", far)
	}
	assert.Nil(t, normalise([]float64{math.Inf(-1), math.NaN()}))
}

// Systematic resampling takes a draw as often as its weight is worth, rounded up or down.
func TestResamplingTakesEachAsOftenAsItWeighs(t *testing.T) {
	s := &Sample{Weights: []float64{0.05, 0.3, 0, 0.45, 0.2}}
	for _, n := range []int{1, 7, 20, 1000} {
		count := make([]int, len(s.Weights))
		for _, i := range s.Resample(n) {
			count[i]++
		}
		for i, w := range s.Weights {
			assert.InDelta(t, w*float64(n), count[i], 1, "draw %d of %d", i, n)
		}
		assert.Zero(t, count[2])
	}
	assert.Equal(t, []int{1, 1, 3, 3, 4}, s.Resample(5))
}

// By hand: of 0 and 1 with a quarter and three quarters of the weight, the mean is 0.75
// and the variance 0.75·0.25 over all, times (n+1)/n for an effective size of 1.6.
func TestMomentsOfWeightedDraws(t *testing.T) {
	s := &Sample{Draws: [][]float64{{0, 2}, {1, 0}}, Weights: []float64{0.25, 0.75}}
	assert.InDeltaSlice(t, []float64{0.75, 0.5}, s.Mean(), 1e-12)
	assert.InDelta(t, 1.6, s.EffectiveSize(), 1e-12)
	assert.InDelta(t, 0.1875*2.6/1.6, s.covariance().At(0, 0), 1e-12)
	assert.InDelta(t, -0.375*2.6/1.6, s.covariance().At(0, 1), 1e-12)
}

// Tempering stops as soon as enough draws bear weight, and keeps their order.
func TestTemperingEvensWeightsOut(t *testing.T) {
	few := []float64{0.999, 0.0009, 0.00009, 0.00001}
	out := tempered(few, 2)
	assert.GreaterOrEqual(t, kishSize(out), 2.0)
	assert.Less(t, kishSize(out), 3.0)
	assert.IsDecreasing(t, out)
	assert.Equal(t, few, tempered(few, 1), "those that are enough stay as they are")
}
