package steep_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/sim/air"
	"maltwright/sim/grain"
	"maltwright/sim/steep"
)

// Oxygen in water saturated with air at sea level, published tables; seen.
func TestOxygenInSaturatedWater(t *testing.T) {
	for at, want := range map[float64]float64{10: 11.3, 15: 10.1, 20: 9.1} {
		got, err := steep.OxygenInWater(at)
		require.NoError(t, err)
		assert.InDelta(t, want, got, 0.1, "%v °C", at)
	}
	_, err := steep.OxygenInWater(41)
	assert.Error(t, err)
}

// Kent and Evers, Technology of Cereals; handbook: 1 mg/(kg·h) in the first
// soak, ten times that in the third.
func TestOxygenDemandRisesTenfoldByTheThirdSoak(t *testing.T) {
	s := raw(t, lot(t, "barley"))
	take := func() float64 {
		before := s.Oxygen()
		require.NoError(t, s.Soak(360, steep.Water{T: 15}))
		return 10 * (before - s.Oxygen())
	}
	require.NoError(t, s.Soak(1, steep.Water{T: 15}))
	assert.InDelta(t, 1, take(), 0.02)
	schedule(t, &s, 15, 8, 10, 8, 7)
	require.NoError(t, s.Soak(1, steep.Water{T: 15}))
	assert.InDelta(t, 10, take(), 0.02)
}

func TestStillWaterRunsOutOfOxygenAndAirKeepsIt(t *testing.T) {
	still := raw(t, lot(t, "barley"))
	require.NoError(t, still.Soak(1, steep.Water{T: 19}))
	hours := still.OxygenLasts() / hour
	t.Logf("still water at 19 °C lasts %.1f h", hours)
	assert.Greater(t, hours, 6.0, "a first soak of six hours is good practice")
	assert.Less(t, hours, 12.0, "a first soak of more than ten hours in still water is not")
	require.NoError(t, still.Soak(30*hour, steep.Water{T: 19}))
	assert.Zero(t, still.Oxygen())
	assert.InDelta(t, 30-hours, still.Airless()/hour, 0.01)

	blown := raw(t, lot(t, "barley"))
	require.NoError(t, blown.Soak(30*hour, steep.Water{T: 19, Aerated: true}))
	assert.Zero(t, blown.Airless())
	assert.Greater(t, blown.Batch().Clock, still.Batch().Clock)
}

func TestFreshWaterAndRestsRenewTheOxygen(t *testing.T) {
	s := raw(t, lot(t, "barley"))
	water := steep.Water{T: 15}
	assert.Error(t, s.ChangeWater(water), "there is no water yet")
	require.NoError(t, s.Soak(20*hour, water))
	assert.Zero(t, s.Oxygen())
	require.NoError(t, s.ChangeWater(water))
	assert.Positive(t, s.Oxygen())
	assert.Equal(t, 1, s.Soaks())
	require.NoError(t, s.Rest(hour, steep.Air{T: 15, RH: 0.9}))
	assert.Zero(t, s.OxygenLasts())
	assert.False(t, s.Submerged())
	require.NoError(t, s.Soak(1, water))
	assert.Equal(t, 2, s.Soaks())
	assert.Positive(t, s.OxygenLasts())
}

func TestAWarmRestGrowsAndAnAirlessSoakDoesNot(t *testing.T) {
	s := raw(t, lot(t, "barley"))
	schedule(t, &s, 15, 8, 10, 8)
	rested := s
	require.NoError(t, rested.Rest(5*hour, steep.Air{T: 15, RH: 0.9}))
	assert.Greater(t, rested.Batch().Clock, s.Batch().Clock+50)
	require.NoError(t, s.Soak(10*hour, steep.Water{T: 15}))
	before := s.Batch().Clock
	require.NoError(t, s.Soak(10*hour, steep.Water{T: 15}))
	assert.Equal(t, before, s.Batch().Clock)
}

// Handbook (Narziß), from memory: a steep washes out about 1 % of the dry
// matter.
func TestSteepingLosses(t *testing.T) {
	s := raw(t, lot(t, "barley"))
	schedule(t, &s, 15, 8, 10, 8, 7, 4)
	assert.InDelta(t, 0.010, s.Leached()/880, 0.001)
	assert.InDelta(t, 20*hour, s.TimeInWater(), 1e-6)
	assert.InDelta(t, 17*hour, s.TimeInAir(), 1e-6)
}

// Handbook, from memory: steeped barley fills 1.4 times its dry volume; MEBAK:
// 68–75 kg/hl dry.
func TestTheBedSwells(t *testing.T) {
	s := raw(t, lot(t, "barley"))
	dry := s.BedVolume()
	assert.InDelta(t, 1000/680.0, dry, 1e-9)
	for s.Moisture() < 0.45 {
		require.NoError(t, s.Soak(hour, steep.Water{T: 15}))
	}
	assert.InDelta(t, 1.4*dry, s.BedVolume(), 0.01*dry)
	assert.InDelta(t, 1000/1280.0+1.5, s.FillVolume(steep.DefaultWaterPerKg), 1e-9)
}

func TestSteepRefusesWhatItCannotReckon(t *testing.T) {
	s := raw(t, lot(t, "barley"))
	require.NoError(t, s.Soak(hour, steep.Water{T: 15}))
	before := s
	good := steep.Water{T: 15}
	var none steep.State
	for name, err := range map[string]error{
		"frozen water":     s.Soak(hour, steep.Water{T: -1}),
		"hot water":        s.Soak(hour, steep.Water{T: 41}),
		"a drop of water":  s.Soak(hour, steep.Water{T: 15, PerKg: new(0.1)}),
		"no time":          s.Soak(0, good),
		"time backward":    s.Soak(-1, good),
		"not a time":       s.Soak(math.NaN(), good),
		"half a year":      s.Soak(180*86400, good),
		"frozen air":       s.Rest(hour, steep.Air{T: -1, RH: 0.5}),
		"wetter than wet":  s.Rest(hour, steep.Air{T: 15, RH: 1.5}),
		"face inside out":  s.Rest(hour, steep.Air{T: 15, RH: 0.5, Area: new(-1.0)}),
		"dried to a crisp": s.Rest(30*86400, steep.Air{T: 30, RH: 0.1, Speed: 2}),
		"frozen refill":    s.ChangeWater(steep.Water{T: -3}),
	} {
		var out *air.RangeError
		assert.ErrorAs(t, err, &out, name)
	}
	assert.Equal(t, before, s, "a refusal leaves the grain as it was")
	assert.Error(t, none.Soak(hour, good), "no grain")
	assert.Error(t, none.Rest(hour, steep.Air{T: 15, RH: 0.5}), "no grain")
	_, err := steep.New(grain.Lot{})
	assert.Error(t, err)
}
