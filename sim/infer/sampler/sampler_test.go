package sampler

import (
	"errors"
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/stat/distmv"
)

func standard(t testing.TB, dim int) *distmv.Normal {
	t.Helper()
	unit := mat.NewSymDense(dim, nil)
	for k := range dim {
		unit.SetSym(k, k, 1)
	}
	n, ok := distmv.NewNormal(make([]float64, dim), unit, nil)
	require.True(t, ok)
	return n
}

func source(seed uint64) rand.Source { return rand.NewPCG(seed, 1) }

// each makes the likelihood of all draws from that of one.
func each(of func(x []float64) float64) LogLikelihood {
	return func(draws [][]float64) ([]float64, error) {
		out := make([]float64, len(draws))
		for i, x := range draws {
			out[i] = of(x)
		}
		return out, nil
	}
}

// linear is the problem y = A·x + e, with x standard normal and e normal with a standard
// deviation of noise: its posterior is normal, and known in closed form.
type linear struct {
	a     *mat.Dense
	y     *mat.VecDense
	noise float64
	mean  *mat.VecDense
	cov   *mat.SymDense
}

func newLinear(t testing.TB, a *mat.Dense, truth []float64, noise float64) linear {
	t.Helper()
	rows, dim := a.Dims()
	p := linear{a: a, y: mat.NewVecDense(rows, nil), noise: noise, mean: mat.NewVecDense(dim, nil), cov: mat.NewSymDense(dim, nil)}
	p.y.MulVec(a, mat.NewVecDense(dim, truth))
	precision := mat.NewSymDense(dim, nil)
	precision.SymOuterK(1/(noise*noise), a.T()) // AᵀA/σ²
	for k := range dim {
		precision.SetSym(k, k, precision.At(k, k)+1)
	}
	var chol mat.Cholesky
	require.True(t, chol.Factorize(precision))
	require.NoError(t, chol.InverseTo(p.cov))
	b := mat.NewVecDense(dim, nil)
	b.MulVec(a.T(), p.y)
	b.ScaleVec(1/(noise*noise), b)
	require.NoError(t, chol.SolveVecTo(p.mean, b))
	return p
}

func (p linear) logLikelihood(x []float64) float64 {
	r := mat.NewVecDense(p.y.Len(), nil)
	r.MulVec(p.a, mat.NewVecDense(len(x), x))
	r.SubVec(p.y, r)
	return -mat.Dot(r, r) / (2 * p.noise * p.noise)
}

// start is the mode with the curvature there, as a fit gives them.
func (p linear) start() ([]float64, mat.Symmetric, error) { return p.mean.RawVector().Data, p.cov, nil }

// agrees holds the moments of the draws beside the closed form. The standard error of a
// mean is its sd over √n, that of a covariance √((CᵢᵢCⱼⱼ + Cᵢⱼ²)/n), where n is the effective
// sample size. Of the some hundred figures that are compared in all none may be further
// off than 4.5 errors, which chance brings about once in 1500 runs of the test.
func (p linear) agrees(t *testing.T, s *Sample) {
	t.Helper()
	n, dim := s.EffectiveSize(), p.mean.Len()
	mean, cov := s.Mean(), s.covariance()
	for i := range dim {
		assert.InDelta(t, p.mean.AtVec(i), mean[i], 4.5*math.Sqrt(p.cov.At(i, i)/n), "mean of axis %d of %d", i, dim)
		for j := range i + 1 {
			c := p.cov.At(i, j)
			assert.InDelta(t, c, cov.At(i, j), 4.5*math.Sqrt((p.cov.At(i, i)*p.cov.At(j, j)+c*c)/n), "covariance of axes %d and %d of %d", i, j, dim)
		}
	}
}

// random is a matrix whose axes are seen through each other.
func random(seed uint64, rows, dim int) *mat.Dense {
	r := rand.New(source(seed))
	a := mat.NewDense(rows, dim, nil)
	a.Apply(func(i, j int, _ float64) float64 { return r.NormFloat64() }, a)
	return a
}

func filled(dim int, v float64) []float64 {
	out := make([]float64, dim)
	for k := range out {
		out[k] = v
	}
	return out
}

func TestALinearProblemIsSampledAsItIsInClosedForm(t *testing.T) {
	for _, dim := range []int{1, 2, 3, 6, 12} {
		p := newLinear(t, random(uint64(dim), 2*dim, dim), filled(dim, 0.5), 2)
		s, err := Run(standard(t, dim), each(p.logLikelihood), Options{Draws: 1000, Source: source(7), Start: p.start})
		require.NoError(t, err)
		t.Logf("%2d axes: %.0f effective of %d", dim, s.EffectiveSize(), len(s.Draws))
		assert.GreaterOrEqual(t, s.EffectiveSize(), 500.0, "%d axes", dim)
		p.agrees(t, s)
	}
}

// With nothing to start from the proposals must find the posterior by themselves.
func TestTheProposalsFindThePosteriorByThemselves(t *testing.T) {
	for _, dim := range []int{1, 2, 4, 6} {
		p := newLinear(t, random(uint64(dim), 2*dim, dim), filled(dim, 1), 0.5)
		s, err := Run(standard(t, dim), each(p.logLikelihood), Options{Draws: 1000, Source: source(8), Rounds: 10})
		require.NoError(t, err)
		t.Logf("%2d axes: %.0f effective of %d", dim, s.EffectiveSize(), len(s.Draws))
		assert.Greater(t, s.Rounds, 0)
		assert.GreaterOrEqual(t, s.EffectiveSize(), 500.0, "%d axes", dim)
		p.agrees(t, s)
	}
}

// Three prior standard deviations off in each axis, and a hundredth as wide: no draw from
// the prior comes near.
func TestANarrowPosteriorFarFromThePriorIsFound(t *testing.T) {
	for _, dim := range []int{1, 3, 12} {
		a := mat.NewDense(dim, dim, nil)
		for k := range dim {
			a.Set(k, k, 1)
		}
		p := newLinear(t, a, filled(dim, 3), 0.01)
		s, err := Run(standard(t, dim), each(p.logLikelihood), Options{Draws: 1000, Source: source(9), Start: p.start})
		require.NoError(t, err)
		assert.GreaterOrEqual(t, s.EffectiveSize(), 400.0, "%d axes", dim)
		p.agrees(t, s)
	}
}

// Only the sum of two axes is seen, to a fiftieth of its prior sd: the errors of the two
// go together by -0.9992.
func TestAxesThatOnlyTheirSumTellsOfAreCorrelated(t *testing.T) {
	p := newLinear(t, mat.NewDense(1, 2, []float64{1, 1}), []float64{1, 0.5}, 0.03)
	require.Less(t, p.cov.At(0, 1)/p.cov.At(0, 0), -0.999)
	s, err := Run(standard(t, 2), each(p.logLikelihood), Options{Draws: 1000, Source: source(10), Rounds: 10})
	require.NoError(t, err)
	assert.GreaterOrEqual(t, s.EffectiveSize(), 500.0)
	p.agrees(t, s)
}

// A start that is a mile off costs draws, and makes nothing wrong: the prior is still
// part of the mixture.
func TestABadStartMakesNoDrawWrong(t *testing.T) {
	p := newLinear(t, random(3, 6, 3), filled(3, 0.5), 0.5)
	away := func() ([]float64, mat.Symmetric, error) { return []float64{6, 6, 6}, p.cov, nil }
	s, err := Run(standard(t, 3), each(p.logLikelihood), Options{Draws: 1000, Source: source(11), Start: away})
	require.NoError(t, err)
	assert.Greater(t, s.Rounds, 1)
	p.agrees(t, s)
}

// Two modes of equal weight, eight of their sd apart.
func TestBothModesOfAPosteriorAreFound(t *testing.T) {
	two := func(x []float64) float64 {
		near := func(at float64) float64 { return -((x[0]-at)*(x[0]-at) + x[1]*x[1]) / (2 * 0.25 * 0.25) }
		return math.Log(math.Exp(near(1)) + math.Exp(near(-1)))
	}
	s, err := Run(standard(t, 2), each(two), Options{Draws: 1000, Source: source(12)})
	require.NoError(t, err)
	right := 0.0
	for i, x := range s.Draws {
		if x[0] > 0 {
			right += s.Weights[i]
		}
	}
	// the standard error of a share of a half is ½/√n
	assert.InDelta(t, 0.5, right, 4*0.5/math.Sqrt(s.EffectiveSize()))
	// each mode is that of a likelihood of sd 0.25 with the prior: 1/(1 + 0.25²) of the way
	at, around := 1/(1+0.0625), 0.0625/(1+0.0625)
	sd := math.Sqrt((at*at + around) / s.EffectiveSize())
	assert.InDelta(t, 0, s.Mean()[0], 4*sd)
	assert.InDelta(t, at*at+around, s.covariance().At(0, 0), 4*2*at*math.Sqrt(around/s.EffectiveSize())+4*sd*sd)
}

func TestALikelihoodThatTellsNothingLeavesThePrior(t *testing.T) {
	s, err := Run(standard(t, 4), each(func([]float64) float64 { return -3 }), Options{Draws: 100, Source: source(13)})
	require.NoError(t, err)
	assert.Zero(t, s.Rounds)
	assert.InDelta(t, 100, s.EffectiveSize(), 1e-9)
	for k := range 4 {
		var seen [100]bool
		for _, x := range s.Draws {
			seen[int(100*0.5*math.Erfc(-x[k]/math.Sqrt2))] = true
		}
		assert.NotContains(t, seen, false, "axis %d is not covered evenly", k)
	}
}

func TestTheSameSeedGivesTheSameDraws(t *testing.T) {
	p := newLinear(t, random(3, 6, 3), filled(3, 1), 0.7)
	run := func(seed uint64) *Sample {
		s, err := Run(standard(t, 3), each(p.logLikelihood), Options{Draws: 50, Source: source(seed)})
		require.NoError(t, err)
		require.Greater(t, s.Rounds, 0)
		return s
	}
	assert.Equal(t, run(1), run(1))
	assert.NotEqual(t, run(1).Draws, run(2).Draws)
}

func TestADrawWithoutALikelihoodWeighsNothing(t *testing.T) {
	half := func(x []float64) float64 {
		switch {
		case x[0] > 0:
			return 0
		case x[0] > -1:
			return math.NaN()
		}
		return math.Inf(-1)
	}
	s, err := Run(standard(t, 1), each(half), Options{Draws: 1000, Source: source(14), Rounds: -1})
	require.NoError(t, err)
	assert.InDelta(t, 500, s.EffectiveSize(), 1)
	assert.InDelta(t, math.Sqrt(2/math.Pi), s.Mean()[0], 0.01, "the mean of half a normal distribution")
	_, err = Run(standard(t, 1), each(func([]float64) float64 { return math.Inf(-1) }), Options{Draws: 10, Source: source(14)})
	assert.ErrorIs(t, err, ErrNoLikelihood)
}

func TestWhatEndsARun(t *testing.T) {
	p := newLinear(t, random(3, 6, 3), filled(3, 1), 0.1)
	o := Options{Draws: 50, Source: source(15)}
	failed := errors.New("failed")
	_, err := Run(standard(t, 3), func([][]float64) ([]float64, error) { return nil, failed }, o)
	assert.ErrorIs(t, err, failed)
	o.Start = func() ([]float64, mat.Symmetric, error) { return nil, nil, failed }
	_, err = Run(standard(t, 3), each(p.logLikelihood), o)
	assert.ErrorIs(t, err, failed)
	o.Start, o.Afford = nil, func(rounds int) bool { return rounds < 1 }
	s, err := Run(standard(t, 3), each(p.logLikelihood), o)
	require.NoError(t, err)
	assert.Equal(t, 1, s.Rounds)
	assert.Len(t, s.Draws, 100)
	o.Rounds = -1
	s, err = Run(standard(t, 3), each(p.logLikelihood), o)
	require.NoError(t, err)
	assert.Len(t, s.Draws, 50)
	for _, o := range []Options{{}, {Draws: 1, Source: source(1)}, {Draws: 10}} {
		_, err = Run(standard(t, 3), each(p.logLikelihood), o)
		assert.Error(t, err)
	}
}
