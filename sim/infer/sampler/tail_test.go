package sampler

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// pareto draws from a generalised Pareto distribution of scale 1, by its quantiles, in
// rising order.
func pareto(k float64, n int, r *rand.Rand) []float64 {
	x := make([]float64, n)
	for i := range x {
		x[i] = math.Expm1(-k*math.Log(r.Float64())) / k
	}
	slices.Sort(x)
	return x
}

// The shape of draws from the distribution itself is found, without bias and as well as the
// theory of the likelihood allows: a standard error of (1+k)/√n.
func TestTheShapeOfATailIsFound(t *testing.T) {
	const n, times = 300, 40
	for _, k := range []float64{-0.3, 0.1, 0.5, 0.7, 1, 1.5} {
		sum, squares := 0.0, 0.0
		for seed := range uint64(times) {
			off := paretoShape(pareto(k, n, rand.New(rand.NewPCG(seed, 3)))) - k
			sum, squares = sum+off, squares+off*off
		}
		sd := (1 + k) / math.Sqrt(n)
		t.Logf("k %.1f: off by %+.3f in the mean, %.3f in the mean square; the theory has %.3f", k, sum/times, math.Sqrt(squares/times), sd)
		assert.InDelta(t, 0, sum/times, 0.03)
		assert.Less(t, math.Sqrt(squares/times), 1.5*sd)
	}
}

// Weights of draws from a normal distribution for one as wide as s have a tail of
// k = 1 − 1/s²: with x² the exponential of which such weights are powers.
func TestTheTailOfAProposalThatIsTooNarrow(t *testing.T) {
	for _, c := range []struct{ width, low, high float64 }{{0.8, -10, 0.5}, {1.2, 0.15, 0.6}, {3, Untrusted, 1.3}} {
		r, logs := rand.New(rand.NewPCG(5, 3)), make([]float64, 4000)
		for i := range logs {
			x := r.NormFloat64()
			logs[i] = x*x/2 - x*x/(2*c.width*c.width)
		}
		s := &Sample{Weights: normalise(logs)}
		t.Logf("target %.1f times as wide: k %.2f by the draws, %.2f by the theory", c.width, s.Tail(), 1-1/(c.width*c.width))
		assert.Greater(t, s.Tail(), c.low)
		assert.Less(t, s.Tail(), c.high)
		assert.Equal(t, c.high < Untrusted, s.Trusted())
	}
}

func TestATailOfNothing(t *testing.T) {
	even := func(n int) []float64 {
		w := make([]float64, n)
		for i := range w {
			w[i] = 1 / float64(n)
		}
		return w
	}
	assert.True(t, (&Sample{Weights: even(100)}).Trusted(), "all weigh the same")
	assert.True(t, (&Sample{Weights: even(3)}).Trusted())
	half := slices.Concat(make([]float64, 50), even(50))
	assert.True(t, (&Sample{Weights: half}).Trusted(), "half of them cannot be, and all others weigh the same")
	assert.False(t, (&Sample{Weights: []float64{0.5, 0.3, 0.2}}).Trusted(), "too few to tell")
	one := make([]float64, 200)
	one[7] = 1
	assert.False(t, (&Sample{Weights: one}).Trusted(), "one bears it all")
	one[3], one[5], one[9], one[11], one[30], one[7] = 1e-9, 1e-7, 1e-5, 1e-3, 1e-12, 0.99
	assert.False(t, (&Sample{Weights: one}).Trusted(), "one bears nearly all of it")
}

// A posterior that no round comes near must be told as such.
func TestASampleThatMissesIsNotTrusted(t *testing.T) {
	far := each(func(x []float64) float64 {
		sum := 0.0
		for _, v := range x {
			sum -= 2000 * (v - 2) * (v - 2)
		}
		return sum
	})
	s, err := Run(standard(t, 6), far, Options{Draws: 200, Source: source(4), Rounds: -1})
	require.NoError(t, err)
	t.Logf("effective size %.1f, tail %.2f", s.EffectiveSize(), s.Tail())
	assert.False(t, s.Trusted())
	s, err = Run(standard(t, 2), each(func(x []float64) float64 { return -2 * (x[0] - 1) * (x[0] - 1) }), Options{Draws: 400, Source: source(4)})
	require.NoError(t, err)
	assert.True(t, s.Trusted())
}
