package outside

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/optimize"

	"maltwright/sim/outside/figure"
	"maltwright/sim/steep"
)

func weighings() []row {
	var list []row
	for _, series := range figure.MolinaCano() {
		list = append(list,
			row{what: "lot " + series.Lot + ", its factor fitted: worst of 6 weighings", unit: "g of 50", digits: 1, says: "at most 1.1", accepted: atMost(1.1),
				key: "molina-cano-1995", standing: "seen; the bound is ours", model: fitted(series.Grams, 1)}.fitted("barleyHuskWater", "barleyFilmWater"),
			row{what: "the same, its factor and its husk water fitted", unit: "g of 50", digits: 1, says: "at most 0.5", accepted: atMost(0.5),
				key: "molina-cano-1995", standing: "seen; the bound is ours", model: fitted(series.Grams, 1, looseWater)}.fitted("barleyHuskWater", "barleyFilmWater"))
	}
	return list
}

// looseWater is what husk and film of barley hold together, kg/kg.
const looseWater = 0.14

// fitted fits the first of the lot's factor and its loose water, or both, and gives
// the worst miss that is left, g.
func fitted(grams []float64, start ...float64) func(testing.TB) float64 {
	return func(t testing.TB) float64 {
		worst := func(x []float64) float64 {
			loose := looseWater
			if len(x) > 1 {
				loose = x[1]
			}
			if x[0] < 0.1 || x[0] > 5 || loose < 0.02 || loose > 0.5 {
				return 1e6
			}
			return worstMiss(t, x[0], loose, grams)
		}
		best, err := optimize.Minimize(optimize.Problem{Func: worst}, start, nil, &optimize.NelderMead{})
		require.NoError(t, err)
		return best.F
	}
}

// worstMiss is the farthest the model's weights lie from those on the scale, g.
func worstMiss(t testing.TB, factor, loose float64, grams []float64) float64 {
	l := lot(t, "barley", 0.044, 0.12)
	l.UptakeFactor = factor
	l.Profile.HuskWater, l.Profile.FilmWater = 0.4*loose, 0.6*loose
	s, err := steep.New(l)
	require.NoError(t, err)
	worst, at := 0.0, 0.0
	for i, h := range figure.WeighedAt() {
		require.NoError(t, s.Soak((h-at)*hour, steep.Water{T: 15}))
		worst, at = math.Max(worst, math.Abs(1000*s.DrainedMass()-grams[i])), h
	}
	return worst
}

// lot50 is what 50 g of a lot of 12 % weigh after hours in water of 15 °C, kg.
func lot50(t testing.TB, hours float64) float64 {
	s, err := steep.New(lot(t, "barley", 0.044, 0.12))
	require.NoError(t, err)
	require.NoError(t, s.Soak(hours*hour, steep.Water{T: 15}))
	return s.DrainedMass()
}
