package steep_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"maltwright/sim/grain"
	"maltwright/sim/steep"
)

// stay is one soak or rest of a drawn schedule.
type stay struct {
	wet bool
	dt  float64
	t   float64
	rh  float64
	air bool

	blown *steep.Blown // nil for no air at intervals

	perKg                    *float64
	airflow, overflow, drawn float64
	spray                    *steep.Spray
}

func drawStays(t *rapid.T) []stay {
	return rapid.SliceOfN(rapid.Custom(func(t *rapid.T) stay {
		return stay{
			wet:   rapid.Bool().Draw(t, "wet"),
			dt:    rapid.Float64Range(1, 12*hour).Draw(t, "dt"),
			t:     rapid.Float64Range(4, 24).Draw(t, "T"),
			rh:    rapid.Float64Range(0.5, 1).Draw(t, "RH"),
			air:   rapid.Bool().Draw(t, "aerated"),
			blown: rapid.SampledFrom([]*steep.Blown{nil, {Every: 1800, For: 300}, {Every: 3 * hour, For: 77}, {Every: 61.3, For: 1}}).Draw(t, "blown"),
		}
	}), 1, 8).Draw(t, "stays")
}

func (s stay) apply(g *steep.State, dt float64) error {
	if s.wet {
		return g.Soak(dt, steep.Water{T: s.t, Aerated: s.air, Blown: s.blown, PerKg: s.perKg, Airflow: s.airflow, Overflow: s.overflow})
	}
	return g.Rest(dt, steep.Air{T: s.t, RH: s.rh, Drawn: s.drawn, Spray: s.spray})
}

func drawLot(t *rapid.T) grain.Lot {
	p, err := grain.Of(rapid.SampledFrom(grain.Names()).Draw(t, "grain"))
	require.NoError(t, err)
	return grain.LotOf(p, rapid.Float64Range(0.01, 1e4).Draw(t, "dry"), rapid.Float64Range(0.08, 0.2).Draw(t, "X0"))
}

// drawMore adds what moves water, warmth and oxygen by an amount.
func drawMore(t *rapid.T, list []stay) []stay {
	for i := range list {
		if rapid.Bool().Draw(t, "measured") {
			litres := rapid.Float64Range(0.5, 5).Draw(t, "litres")
			list[i].perKg = &litres
		}
		list[i].overflow = rapid.SampledFrom([]float64{0, 1e-6, 1e-4, 1e-2}).Draw(t, "overflow")
		list[i].airflow = rapid.SampledFrom([]float64{0, 1e-8, 3e-6, 1e-4}).Draw(t, "airflow")
		list[i].drawn = rapid.SampledFrom([]float64{0, 1e-6, 1e-5, 1e-4}).Draw(t, "drawn")
		list[i].spray = rapid.SampledFrom([]*steep.Spray{nil, {T: 10}, {T: 8, Rate: 1e-5}, {T: 18, Rate: 1e-3}}).Draw(t, "spray")
	}
	return list
}

func TestWaterAndDryMatterBalance(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l := drawLot(t)
		s, err := steep.New(l)
		require.NoError(t, err)
		for _, st := range drawMore(t, drawStays(t)) {
			if st.apply(&s, st.dt) != nil { // dried out by the air that is drawn through
				return
			}
			b := s.Batch()
			grown := grain.StarchWater * b.Respired
			water := l.DryMass*l.Moisture0 + s.Absorbed() - s.Evaporated() + grown
			require.InEpsilon(t, water, b.Water, 1e-9)
			require.InEpsilon(t, l.DryMass, b.Dry+b.Leached+b.Respired, 1e-9)
			require.InEpsilon(t, s.DrainedMass(), b.Mass(), 1e-9)
			require.InEpsilon(t, s.X(), s.CoreX()+s.HuskX()+s.FilmX(), 1e-9)
			require.NoError(t, b.Check())
		}
	})
}

func TestChunksOfTimeDoNotMatter(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l := drawLot(t)
		whole, err := steep.New(l)
		require.NoError(t, err)
		cut := whole
		chunk := rapid.Float64Range(100, 600).Draw(t, "chunk")
		for _, st := range drawStays(t) {
			require.NoError(t, st.apply(&whole, st.dt))
			for left := st.dt; left > 0; left -= chunk {
				require.NoError(t, st.apply(&cut, math.Min(left, chunk)))
			}
		}
		a, b := whole.Batch(), cut.Batch()
		require.InEpsilon(t, a.Water, b.Water, 1e-6)
		require.InEpsilon(t, a.Dry, b.Dry, 1e-6)
		// a step that the kernels wake in is not so smooth, nor one in which they come to want
		// more oxygen than the water gives: 0.1 °C·h are some half a minute of growth
		require.InDelta(t, a.Clock, b.Clock, 1e-3*math.Max(a.Clock, 100))
		require.InDelta(t, a.Chitted, b.Chitted, 5e-4)
		require.InDelta(t, a.Debt, b.Debt, 1e-4)
		require.InDelta(t, whole.Airless(), cut.Airless(), 1e-3)
		require.InDelta(t, whole.Oxygen(), cut.Oxygen(), 1e-6)
	})
}

func TestSoakingWetsAndWarmthSpeedsIt(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l := drawLot(t)
		cool, err := steep.New(l)
		require.NoError(t, err)
		warm := cool
		at := rapid.Float64Range(4, 20).Draw(t, "T")
		dt := rapid.Float64Range(60, 40*hour).Draw(t, "dt")
		before := cool.X()
		require.NoError(t, cool.Soak(dt, steep.Water{T: at}))
		require.NoError(t, warm.Soak(dt, steep.Water{T: at + 2}))
		require.Greater(t, cool.X(), before)
		require.Greater(t, warm.X(), cool.X())
		longer := cool
		require.NoError(t, longer.Soak(hour, steep.Water{T: at}))
		require.Greater(t, longer.X(), cool.X())
	})
}

func TestARestMovesWaterInwardAndNoWeightButByDrying(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s, err := steep.New(drawLot(t))
		require.NoError(t, err)
		require.NoError(t, s.Soak(rapid.Float64Range(300, 10*hour).Draw(t, "soak"), steep.Water{T: 14}))
		after := s
		require.NoError(t, after.Rest(rapid.Float64Range(60, 12*hour).Draw(t, "rest"), steep.Air{T: 14, RH: 1}))
		require.GreaterOrEqual(t, after.CoreX(), s.CoreX())
		require.LessOrEqual(t, after.FilmX(), s.FilmX())
		grown := after.Batch().Respired - s.Batch().Respired
		burnt := grown * (1 - grain.StarchWater)
		require.InEpsilon(t, s.DrainedMass()-burnt, after.DrainedMass(), 1e-9, "air at saturation dries nothing")
		dry := s
		require.NoError(t, dry.Rest(hour, steep.Air{T: 14, RH: 0.6}))
		require.Less(t, dry.DrainedMass(), s.DrainedMass())
	})
}

func TestTheCoreDrinksFromFilmFirst(t *testing.T) {
	s := raw(t, lot(t, "barley"))
	require.NoError(t, s.Soak(2*hour, steep.Water{T: 14}))
	require.NoError(t, s.Rest(hour, steep.Air{T: 14, RH: 1}))
	assert.InDelta(t, 0.06, s.HuskX(), 0.001)
	assert.Less(t, s.FilmX(), 0.08)
	require.NoError(t, s.Rest(20*hour, steep.Air{T: 14, RH: 1}))
	assert.Zero(t, s.FilmX())
	assert.Zero(t, s.HuskX())
}
