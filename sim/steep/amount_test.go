package steep_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/sim/air"
	"maltwright/sim/steep"
)

// litres gives an amount of water for each kg.
func litres(n float64) *float64 { return &n }

// Small steps of do/dt = k·(full − o) − d(t), with k the water that runs in for what stands.
func TestTheOxygenUnderAnOverflowFollowsItsEquation(t *testing.T) {
	const perKg, in, dt = 2.0, 2.0 / (3 * hour), 4 * hour // a third of the water each hour
	water := steep.Water{T: 15, PerKg: litres(perKg), Overflow: in}
	s := raw(t, lot(t, "barley"))
	s.Begin(15)
	schedule(t, &s, 15, 8, 10)
	began := s.TimeInWater() + s.TimeInAir()
	full, err := steep.OxygenInWater(15)
	require.NoError(t, err)
	require.NoError(t, s.Soak(1, water))
	o := s.Oxygen()
	const h = 0.1
	for since := 1.0; since < dt; since += h {
		o += h * (in/perKg*(full*perKg-o) - math.Pow(10, math.Min((began+since)/(32*hour), 1))/hour)
	}
	require.Positive(t, o)
	require.NoError(t, s.Soak(dt-1, water))
	assert.InDelta(t, o, s.Oxygen(), 0.05, "but for the warmth of the wetting, by which it holds a little less")
}

func TestMoreOverflowOrAirMeansLessTimeWithoutOxygen(t *testing.T) {
	for _, more := range []func(x float64) steep.Water{
		func(x float64) steep.Water { return steep.Water{T: 15, Overflow: x / hour} },
		func(x float64) steep.Water { return steep.Water{T: 15, Airflow: x / 1000 / hour} },
	} {
		before := math.Inf(1)
		for _, x := range []float64{0, 0.01, 0.1, 0.5, 1, 3, 20} {
			s := soaked(t, 20*hour, more(x))
			assert.LessOrEqual(t, s.Airless(), before)
			before = s.Airless()
		}
		assert.Zero(t, before, "20 l or m³ an hour, a kg or a tonne, is enough")
		assert.Positive(t, soaked(t, 20*hour, more(0.1)).Airless())
	}
	usual := steep.Water{T: 15, Airflow: 10.0 / 1000 / hour}
	s, blown := soaked(t, 2*hour, usual), soaked(t, 2*hour, steep.Water{T: 15, Blown: &steep.Blown{Every: 1, For: 1}})
	assert.InDelta(t, blown.Oxygen(), s.Oxygen(), 0.02, "10 m³ for a tonne and hour is what the air at intervals is reckoned with")
}

// 100 kg of grain as received, 88 kg of it dry, of 1.4 kJ/(K·kg dry) or what the malt has:
// the hand balance of the first moment.
func TestGrainAndMeasuredWaterComeToOneTemperature(t *testing.T) {
	l := lot(t, "barley")
	s := raw(t, l)
	s.Begin(30)
	require.NoError(t, s.Soak(1e-6, steep.Water{T: 12, PerKg: litres(1)}))
	grain := l.DryMass * (l.Profile.Malt.DryHeat() + air.WaterHeat*l.Moisture0)
	water := l.DryMass * (1 + l.Moisture0) * air.WaterHeat
	assert.InDelta(t, (grain*30+water*12)/(grain+water), s.T(), 1e-3)
	assert.Greater(t, s.T(), 15.0, "warm grain warms so little water")
	more := raw(t, l)
	more.Begin(30)
	require.NoError(t, more.Soak(1e-6, steep.Water{T: 12, PerKg: litres(10)}))
	assert.Less(t, more.T(), s.T(), "and more water less")
	unsaid := raw(t, l)
	unsaid.Begin(30)
	require.NoError(t, unsaid.Soak(1e-6, steep.Water{T: 12}))
	assert.Equal(t, 12.0, unsaid.T(), "of water of no said amount the grain is as warm")
}

func TestWettingWarmsAndAnOverflowHoldsTheWater(t *testing.T) {
	still, kept := raw(t, lot(t, "barley")), raw(t, lot(t, "barley"))
	still.Begin(14)
	kept.Begin(14)
	require.NoError(t, still.Soak(8*hour, steep.Water{T: 14, PerKg: litres(1.5)}))
	require.NoError(t, kept.Soak(8*hour, steep.Water{T: 14, PerKg: litres(1.5), Overflow: 1 / hour}))
	t.Logf("8 h in 1.5 l/kg at 14 °C: %.2f °C, with an overflow of 1 l/(kg·h) %.2f °C", still.T(), kept.T())
	// all that dry barley gives off as it is wetted, over the heat of grain and water
	l := lot(t, "barley")
	heat, _ := l.Profile.Malt.Wetting(l.Moisture0)
	whole := heat * l.DryMass / (l.DryMass*(l.Profile.Malt.DryHeat()+air.WaterHeat*l.Moisture0) + air.WaterHeat*1.5*l.DryMass*(1+l.Moisture0))
	assert.InDelta(t, 14+whole, still.T(), 0.1*whole, "most of the heat of wetting")
	assert.InDelta(t, 14, kept.T(), 0.05)
}

func TestDrawnAirDriesAndCoolsTowardTheWetBulb(t *testing.T) {
	in, err := air.FromRH(16, 0.7, air.StandardPressure)
	require.NoError(t, err)
	bulb, err := in.WetBulb()
	require.NoError(t, err)
	t0, x0 := math.Inf(1), math.Inf(1)
	for _, each := range []float64{0, 8, 50, 400} { // m³ for a tonne and hour
		s := raw(t, lot(t, "barley"))
		require.NoError(t, s.Soak(8*hour, steep.Water{T: 16}))
		require.NoError(t, s.Rest(10*hour, steep.Air{T: 16, RH: 0.7, Drawn: each / 1000 / hour}))
		t.Logf("%3.0f m³/(t·h): %.2f °C, %.2f %%", each, s.T(), 100*s.Moisture())
		assert.Less(t, s.T(), t0)
		assert.Less(t, s.X(), x0)
		assert.GreaterOrEqual(t, s.T(), bulb-1e-9)
		t0, x0 = s.T(), s.X()
	}
	assert.InDelta(t, bulb, t0, 0.5, "so much air brings it there")
}

func TestASprayKeepsTheFilmFull(t *testing.T) {
	dry, wet, cold := raw(t, lot(t, "barley")), raw(t, lot(t, "barley")), raw(t, lot(t, "barley"))
	a := steep.Air{T: 16, RH: 0.7}
	for s, spray := range map[*steep.State]*steep.Spray{&dry: nil, &wet: {T: 10}, &cold: {T: 10, Rate: 1 / hour}} {
		require.NoError(t, s.Soak(8*hour, steep.Water{T: 16}))
		a.Spray = spray
		require.NoError(t, s.Rest(10*hour, a))
	}
	p := lot(t, "barley").Profile
	assert.InDelta(t, p.FilmWater, wet.FilmX()*wet.DryMatter()/lot(t, "barley").DryMass, 1e-6)
	assert.Greater(t, wet.X(), dry.X()+0.05)
	assert.Greater(t, wet.Absorbed(), dry.Absorbed())
	assert.Equal(t, wet.TimeInAir(), dry.TimeInAir(), "it breathes as in air")
	assert.Zero(t, wet.Airless()-dry.Airless())
	assert.Equal(t, 16.0, wet.T(), "a spray of no said amount does not cool")
	assert.InDelta(t, 10, cold.T(), 0.1)
	assert.Less(t, cold.Batch().Clock, wet.Batch().Clock)
}

// Where warmth moves by itself it is followed in steps of ten minutes: how the time is cut
// matters a little.
func TestCuttingTheTimeMattersLittleWhereWarmthMoves(t *testing.T) {
	run := func(chunk float64) steep.State {
		s := raw(t, lot(t, "barley"))
		s.Begin(20)
		w := steep.Water{T: 12, PerKg: litres(1.2), Overflow: 1e-5, Airflow: 1e-6}
		a := steep.Air{T: 16, RH: 0.7, Drawn: 3e-6, Spray: &steep.Spray{T: 12, Rate: 1e-5}}
		for left := 8 * hour; left > 0; left -= chunk {
			require.NoError(t, s.Soak(math.Min(left, chunk), w))
		}
		for left := 9 * hour; left > 0; left -= chunk {
			require.NoError(t, s.Rest(math.Min(left, chunk), a))
		}
		return s
	}
	whole, cut := run(9*hour), run(97)
	assert.InDelta(t, whole.T(), cut.T(), 0.02)
	assert.InEpsilon(t, whole.X(), cut.X(), 1e-4)
	assert.InEpsilon(t, whole.Batch().Clock, cut.Batch().Clock, 1e-3)
}

func TestAmountsThatCannotBeAreRefused(t *testing.T) {
	for _, w := range []steep.Water{{T: 12, Overflow: -1}, {T: 12, Overflow: 1}, {T: 12, Airflow: 1}, {T: 12, PerKg: litres(0.1)}} {
		s := raw(t, lot(t, "barley"))
		var out *air.RangeError
		assert.ErrorAs(t, s.Soak(hour, w), &out)
	}
	for _, a := range []steep.Air{{T: 12, RH: 0.7, Drawn: 1}, {T: 12, RH: 0.7, Spray: &steep.Spray{T: 60}}, {T: 12, RH: 0.7, Spray: &steep.Spray{T: 12, Rate: -1}}} {
		s := raw(t, lot(t, "barley"))
		var out *air.RangeError
		assert.ErrorAs(t, s.Rest(hour, a), &out)
	}
}
