package sampler

import (
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/stat/distuv"
)

// Simulation-based calibration [talts-2018]: of truths drawn from the prior, with what was
// observed drawn from each, the rank of the truth among draws of its posterior is uniform.
// A posterior that is too narrow piles the ranks up at the ends, one that is too wide in the
// middle, one that is off at one end.

const (
	calibrations = 300
	rankBins     = 10
	rankDraws    = 99 // of which ranks run from 0 to 99: ten to a bin
)

// ranks are where truths of a linear problem of three axes come among draws of the
// posterior, by axis and bin; the sampler believes in a noise that is so many times the true.
func ranks(t *testing.T, belief float64) [3][rankBins]float64 {
	t.Helper()
	const noise = 0.5
	a := mat.NewDense(4, 3, []float64{1, 0.8, 0, 0, 1, 0.5, 1, 0, 1, 0.3, 0.3, 0.3})
	r := rand.New(rand.NewPCG(11, 13))
	var out [3][rankBins]float64
	for n := range calibrations {
		truth := []float64{r.NormFloat64(), r.NormFloat64(), r.NormFloat64()}
		p := newLinear(t, a, truth, noise)
		for i := range p.y.Len() {
			p.y.SetVec(i, p.y.AtVec(i)+noise*r.NormFloat64())
		}
		p.noise *= belief
		s, err := Run(standard(t, 3), each(p.logLikelihood), Options{Draws: 200, Source: source(uint64(n))})
		require.NoError(t, err)
		picked := s.Resample(rankDraws)
		for k := range truth {
			below := 0
			for _, i := range picked {
				if s.Draws[i][k] < truth[k] {
					below++
				}
			}
			out[k][below*rankBins/(rankDraws+1)]++
		}
	}
	return out
}

// uneven is χ² of the ranks of one axis against even ones.
func uneven(bins [rankBins]float64) float64 {
	sum, even := 0.0, float64(calibrations)/rankBins
	for _, n := range bins {
		sum += (n - even) * (n - even) / even
	}
	return sum
}

// Each axis may stray at a significance of a hundredth for all three together; the same
// truths are drawn every time. That the test can fail shows a sampler that takes readings
// for twice or half as exact as they are.
func TestTheRankOfTheTruthIsUniform(t *testing.T) {
	most := distuv.ChiSquared{K: rankBins - 1}.Quantile(1 - 0.01/3)
	right := ranks(t, 1)
	for k, bins := range right {
		t.Logf("axis %d: %v, χ² %.1f of at most %.1f", k+1, bins, uneven(bins), most)
		assert.Less(t, uneven(bins), most)
	}
	for _, belief := range []float64{0.5, 2} {
		worst := 0.0
		for _, bins := range ranks(t, belief) {
			worst = max(worst, uneven(bins))
		}
		assert.Greater(t, worst, most, "readings taken for %g times as exact", 1/belief)
	}
}
