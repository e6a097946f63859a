package steep_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/optimize"

	"maltwright/sim/steep"
)

// Molina-Cano et al. 1995 [molina-cano-1995], six steep series distributed with
// a public statistics data set; seen: grams of a 50 g sample after hours in
// water. Temperature and first moisture are not given: 15 °C and 12 % are
// taken.
var (
	weighedAt = []float64{5, 10, 15, 20, 30, 35}
	weighed   = map[string][]float64{
		"91-1-1": {58.29, 61.67, 64.28, 66.56, 70.39, 71.76},
		"91-2-1": {60.80, 65.21, 68.40, 71.16, 74.80, 75.86},
	}
)

// misses gives the forecast less the weight, g, at each weighing, for the lot's
// factor and the water that husk and film hold together.
func misses(t *testing.T, factor, loose float64, grams []float64) []float64 {
	l := lot(t, "barley")
	l.DryMass = 0.044
	l.UptakeFactor = factor
	l.Profile.HuskWater, l.Profile.FilmWater = 0.4*loose, 0.6*loose
	s := raw(t, l)
	out, at := make([]float64, len(grams)), 0.0
	for i, h := range weighedAt {
		require.NoError(t, s.Soak((h-at)*hour, steep.Water{T: 15}))
		out[i], at = 1000*s.DrainedMass()-grams[i], h
	}
	return out
}

// fit makes the worst of the misses as small as can be and returns it, g.
func fit(t *testing.T, start []float64, miss func(x []float64) []float64) float64 {
	worst := func(x []float64) float64 {
		w := 0.0
		for _, v := range x {
			if v < 0.02 || v > 5 {
				return 1e6
			}
		}
		for _, m := range miss(x) {
			w = math.Max(w, math.Abs(m))
		}
		return w
	}
	best, err := optimize.Minimize(optimize.Problem{Func: worst}, start, nil, &optimize.NelderMead{})
	require.NoError(t, err)
	t.Logf("fitted %.3f, worst %.2f g", best.X, best.F)
	return best.F
}

// A weighing corrects the lot's factor alone: at most 1.1 g of some 65 is left.
func TestOneFactorFitsALotsWeighings(t *testing.T) {
	for name, grams := range weighed {
		worst := fit(t, []float64{1}, func(x []float64) []float64 { return misses(t, x[0], 0.14, grams) })
		assert.LessOrEqual(t, worst, 1.1, name)
	}
}

func TestFactorAndHuskWaterFitALotsWeighingsClosely(t *testing.T) {
	for name, grams := range weighed {
		worst := fit(t, []float64{1, 0.12}, func(x []float64) []float64 { return misses(t, x[0], x[1], grams) })
		assert.LessOrEqual(t, worst, 0.5, name)
	}
}
