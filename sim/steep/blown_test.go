package steep_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"maltwright/sim/air"
	"maltwright/sim/grain"
	"maltwright/sim/steep"
)

const minute = 60.0

// soaked is a soak of warm water after a first soak and a rest, when the grain breathes
// hard.
func soaked(t *testing.T, dt float64, w steep.Water) *steep.State {
	t.Helper()
	s := raw(t, lot(t, "barley"))
	schedule(t, &s, w.T, 8, 10)
	require.NoError(t, s.Soak(dt, w))
	return &s
}

func TestAirAtIntervalsBringsOxygenOnlyWhileItRuns(t *testing.T) {
	water := steep.Water{T: 15, Blown: &steep.Blown{Every: 2 * hour, For: 10 * minute}}
	still := steep.Water{T: 15}
	assert.Equal(t, soaked(t, 2*hour, still).Oxygen(), soaked(t, 2*hour, water).Oxygen(), "it comes on after two hours")
	before, after := soaked(t, 2*hour, water).Oxygen(), soaked(t, 2*hour+10*minute, water).Oxygen()
	full, err := steep.OxygenInWater(15)
	require.NoError(t, err)
	full *= steep.DefaultWaterPerKg
	t.Logf("oxygen %.2f, then %.2f of %.2f mg/kg", before, after, full)
	assert.Greater(t, after, before)
	brought := steep.Water{}.BroughtIn(10*minute) * (full - before)
	assert.Less(t, after, before+brought, "the grain breathes meanwhile")
	assert.InDelta(t, before+brought, after, 10.0/6, "ten minutes of the most that it takes")
	assert.Less(t, soaked(t, 3*hour, water).Oxygen(), after, "then it goes down again")
}

func TestTheOxygenUnderAirFollowsItsEquation(t *testing.T) {
	// small steps of do/dt = k·(full − o) − d(t) across the hour from which the demand stays
	const begin, dt, every = 31 * hour, 2 * hour, 3 * hour
	s := raw(t, lot(t, "barley"))
	require.NoError(t, s.Soak(begin, steep.Water{T: 12, Aerated: true}))
	require.NoError(t, s.Rest(1, steep.Air{T: 12, RH: 1}))
	water := steep.Water{T: 12, Blown: &steep.Blown{Every: every, For: every - 1e-3}}
	require.NoError(t, s.Soak(every, water))
	o, at := s.Oxygen(), begin+1+every // the air comes on
	full, err := steep.OxygenInWater(12)
	require.NoError(t, err)
	full *= steep.DefaultWaterPerKg
	k := -math.Log(1-steep.Water{}.BroughtIn(hour)) / hour
	const h = 0.05
	for since := 0.0; since < dt; since += h {
		o += h * (k*(full-o) - math.Pow(10, math.Min((at+since)/(32*hour), 1))/hour)
	}
	require.NoError(t, s.Soak(dt, water))
	assert.InEpsilon(t, o, s.Oxygen(), 1e-4, "first order in a step of 0.05 s")
}

func TestAirOftenEnoughKeepsAWholeSoakFromGoingAirless(t *testing.T) {
	for _, c := range []struct {
		every, on float64 // min
		most      float64 // h without oxygen, of 20
	}{{30, 5, 0}, {60, 10, 0}, {120, 5, 18}} {
		s := soaked(t, 20*hour, steep.Water{T: 15, Blown: &steep.Blown{Every: c.every * minute, For: c.on * minute}})
		t.Logf("%v min each %v min: airless %.2f h of 20", c.on, c.every, s.Airless()/hour)
		assert.LessOrEqual(t, s.Airless()/hour, c.most)
	}
	still, blown := soaked(t, 20*hour, steep.Water{T: 15}), soaked(t, 20*hour, steep.Water{T: 15, Blown: &steep.Blown{Every: 2 * hour, For: 5 * minute}})
	assert.Less(t, blown.Airless(), still.Airless(), "a little helps a little")
	assert.Positive(t, blown.Airless())
	assert.Greater(t, blown.Batch().Clock, still.Batch().Clock)
	assert.InDelta(t, still.Moisture(), blown.Moisture(), 0.005, "it drinks as before")
}

// Air that brings more than grain takes of standing water, at the warmest, where water holds
// least: the equation then never asks for oxygen that is not there.
func TestAirBringsMoreThanTheGrainCanTake(t *testing.T) {
	warmest, err := steep.OxygenInWater(40)
	require.NoError(t, err)
	k := -math.Log(1 - steep.Water{}.BroughtIn(hour)) // per hour
	assert.Greater(t, k*steep.DefaultWaterPerKg*warmest, 10.0)
}

func TestMoreAirNeverHurts(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		every := rapid.Float64Range(1, 6*hour).Draw(t, "every")
		b := steep.Blown{Every: every, For: every * rapid.Float64Range(1e-3, 1).Draw(t, "share")}
		at, dt := rapid.Float64Range(4, 24).Draw(t, "T"), rapid.Float64Range(60, 2*86400).Draw(t, "dt")
		still, err := steep.New(drawLot(t))
		require.NoError(t, err)
		blown, full := still, still
		require.NoError(t, still.Soak(dt, steep.Water{T: at}))
		require.NoError(t, blown.Soak(dt, steep.Water{T: at, Blown: &b}))
		require.NoError(t, full.Soak(dt, steep.Water{T: at, Aerated: true, Blown: &b}))
		require.LessOrEqual(t, blown.Airless(), still.Airless()+1e-3)
		require.GreaterOrEqual(t, blown.Oxygen(), still.Oxygen()-1e-9)
		require.LessOrEqual(t, blown.Oxygen(), full.Oxygen()+1e-9)
		require.Zero(t, full.Airless())
		require.InDelta(t, dt, blown.TimeInWater(), 1e-6*dt)
	})
}

func TestAirAtIntervalsThatCannotBeIsRefused(t *testing.T) {
	s := raw(t, lot(t, "barley"))
	before := s
	for name, b := range map[string]steep.Blown{
		"longer than its interval": {Every: 60, For: 61}, "no time": {Every: 60}, "all at once": {For: 1},
		"not a time": {Every: math.NaN(), For: 1}, "backward": {Every: 60, For: -1},
	} {
		var out *air.RangeError
		assert.ErrorAs(t, s.Soak(hour, steep.Water{T: 15, Blown: &b}), &out, name)
	}
	assert.Equal(t, before, s)
}

func TestTheIntervalBeginsAnewInFreshWater(t *testing.T) {
	water := steep.Water{T: 15, Blown: &steep.Blown{Every: 2 * hour, For: 10 * minute}}
	first := soaked(t, 1.5*hour, water)
	require.NoError(t, first.ChangeWater(water))
	before := first.Oxygen()
	require.NoError(t, first.Soak(hour, water))
	assert.Less(t, first.Oxygen(), before, "no air has come on")
	still := soaked(t, 1.5*hour, steep.Water{T: 15})
	require.NoError(t, still.ChangeWater(water))
	require.NoError(t, still.Soak(hour, steep.Water{T: 15}))
	assert.InDelta(t, still.Oxygen(), first.Oxygen(), 1e-9)
}

// Air that is drawn through takes the bed to its wet bulb, and the open face then gives to the
// room what a face of that warmth gives, not what one as warm as the air would.
func TestTheOpenFaceOfABedThatAirCoolsIsAsCold(t *testing.T) {
	at := steep.Air{T: 18, RH: 0.65, Drawn: 1 / hour}
	dried := func(area float64) (water, warmth float64) {
		s := raw(t, lot(t, "barley"))
		require.NoError(t, s.Soak(8*hour, steep.Water{T: 13}))
		a := at
		a.Area = &area
		require.NoError(t, s.Rest(4*hour, a))
		before := s.Evaporated()
		require.NoError(t, s.Rest(10*minute, a))
		return s.Evaporated() - before, s.T()
	}
	covered, _ := dried(1e-6)
	open, cold := dried(1)
	room, err := air.FromRH(at.T, at.RH, air.StandardPressure)
	require.NoError(t, err)
	bulb, err := room.WetBulb()
	require.NoError(t, err)
	assert.InDelta(t, bulb, cold, 0.3)
	face, err := grain.NewFace(at.T, at.RH, 0, nil)
	require.NoError(t, err)
	assert.InEpsilon(t, face.Evaporation(cold, 1)*10*minute, open-covered, 0.1)
	assert.Less(t, open-covered, 0.7*face.Evaporation(at.T, 1)*10*minute)
}
