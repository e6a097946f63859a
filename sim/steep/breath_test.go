package steep_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/sim/grain"
	"maltwright/sim/steep"
)

// What kernels burn for so much growth is the same under aired water as in air, but that
// they are wetter there.
func TestGrowthAndBurningGoByOneAccess(t *testing.T) {
	aired, sprayed := raw(t, lot(t, "barley")), raw(t, lot(t, "barley"))
	require.NoError(t, aired.Soak(240*hour, steep.Water{T: 15, Aerated: true}))
	require.NoError(t, sprayed.Soak(hour, steep.Water{T: 15, Aerated: true}))
	for sprayed.Batch().Clock < aired.Batch().Clock {
		require.NoError(t, sprayed.Rest(hour/10, steep.Air{T: 15, RH: 1, Spray: &steep.Spray{T: 15}}))
	}
	a, b := aired.Batch(), sprayed.Batch()
	t.Logf("°C·h %.0f and %.0f, burnt %.2f and %.2f %%, in water %.0f h, in air %.0f h", a.Clock, b.Clock,
		100*a.Respired/880, 100*b.Respired/880, aired.TimeInWater()/hour, sprayed.TimeInAir()/hour)
	assert.InEpsilon(t, b.Respired, a.Respired, 0.05)
	assert.Greater(t, aired.TimeInWater(), 1.5*sprayed.TimeInAir(), "the water brings less than they want")
}

// What is burnt under water is no more than the oxygen that comes into it can burn.
func TestNoMoreIsBurntThanOxygenComesIn(t *testing.T) {
	full, err := steep.OxygenInWater(15)
	require.NoError(t, err)
	for _, each := range []float64{0, 0.1, 1, 10, 50} { // m³ for a tonne and hour
		s := raw(t, lot(t, "barley"))
		require.NoError(t, s.Soak(60*hour, steep.Water{T: 15, Airflow: each / 1000 / hour}))
		taken := grain.StarchO2 * s.Batch().Respired / (880 / 0.88) * 1e6 // mg for each kg as received
		most := steep.DefaultWaterPerKg * full * (1 + 60*each)            // its own, and each hour as often what air can bring
		t.Logf("%4.1f m³/(t·h): took %.0f of %.0f mg/kg, clock %.0f °C·h", each, taken, most, s.Batch().Clock)
		assert.LessOrEqual(t, taken, most)
	}
}

func TestMoreAirMeansMoreGrowthUnderWater(t *testing.T) {
	for _, more := range []func(x float64) steep.Water{
		func(x float64) steep.Water { return steep.Water{T: 15, Overflow: x / hour} },
		func(x float64) steep.Water { return steep.Water{T: 15, Airflow: x / 1000 / hour} },
	} {
		before := -1.0
		for _, x := range []float64{0, 0.1, 1, 5, 20} {
			clock := soaked(t, 20*hour, more(x)).Batch().Clock
			assert.Greater(t, clock, before)
			before = clock
		}
	}
}

func TestWhatIsOwedBuildsWithoutOxygenAndIsWorkedOffInAir(t *testing.T) {
	still := soaked(t, 12*hour, steep.Water{T: 15})
	early := raw(t, lot(t, "barley"))
	require.NoError(t, early.Soak(12*hour, steep.Water{T: 15}))
	owed := still.Batch().Debt
	t.Logf("owed %.3f, after as long a first soak %.3f", owed, early.Batch().Debt)
	assert.Greater(t, owed, 0.1)
	assert.Less(t, early.Batch().Debt, owed/2, "an early lack does little harm")
	again, err := steep.Again(still.Batch(), 40*hour)
	require.NoError(t, err)
	assert.Equal(t, owed, again.Batch().Debt, "it goes into the next steep")
	require.NoError(t, again.Rest(24*hour, steep.Air{T: 15, RH: 1}))
	assert.Less(t, again.Batch().Debt, owed/5)
	assert.Zero(t, soaked(t, 12*hour, steep.Water{T: 15, Aerated: true}).Batch().Debt)
}

// A drained bed is reached by oxygen as far as it diffuses: in a deep one less grows, unless
// air is drawn through it.
func TestADeepRestGrowsLess(t *testing.T) {
	clock := func(depth, drawn float64) float64 {
		s := soaked(t, 8*hour, steep.Water{T: 18})
		area := s.BedVolume() / depth
		require.NoError(t, s.Rest(20*hour, steep.Air{T: 18, RH: 1, Area: &area, Drawn: drawn}))
		return s.Batch().Clock
	}
	assert.Greater(t, clock(0.2, 0), clock(1.5, 0)+50)
	assert.InDelta(t, clock(0.2, 0), clock(1.5, 20.0/1000/hour), 5, "20 m³ for a tonne and hour are enough")
}

// As much air brings as much oxygen, whatever the water that it goes through.
func TestMoreWaterMakesAPumpNoStronger(t *testing.T) {
	burnt := func(perKg float64) float64 {
		s := raw(t, lot(t, "barley"))
		s.Begin(15)
		require.NoError(t, s.Soak(60*hour, steep.Water{T: 15, PerKg: &perKg, Overflow: 0, Aerated: true}))
		return s.Batch().Respired
	}
	assert.InEpsilon(t, burnt(1.5), burnt(6), 0.03, "but for the heat of wetting")
}

// Air that neither cools nor dries takes no growth away, however little of it and however deep
// the bed.
func TestDrawnAirThatDoesNotCoolTakesNoGrowthAway(t *testing.T) {
	clock := func(depth, drawn float64) float64 {
		s := soaked(t, 8*hour, steep.Water{T: 15})
		area := s.BedVolume() / depth
		require.NoError(t, s.Rest(24*hour, steep.Air{T: 15, RH: 1, Area: &area, Drawn: drawn / 1000 / hour}))
		return s.Batch().Clock
	}
	for _, depth := range []float64{0.05, 0.3, 1.5} {
		before := clock(depth, 0)
		for _, each := range []float64{0.01, 0.1, 1, 10, 100} { // m³ for a tonne and hour
			now := clock(depth, each)
			assert.GreaterOrEqual(t, now, before-1e-6*before, "%g m deep, %g m³/(t·h)", depth, each)
			before = now
		}
	}
}
