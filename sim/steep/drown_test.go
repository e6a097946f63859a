package steep_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/sim/steep"
)

// A day without oxygen leaves what makes malt [bryce-2010]; of barley two days in still water
// are lost (common practice).
func TestKernelsDrownInDaysWithoutOxygen(t *testing.T) {
	still := func(hours float64) steep.State {
		s := raw(t, lot(t, "barley"))
		require.NoError(t, s.Soak(hours*hour, steep.Water{T: 15}))
		return s
	}
	before := 0.0
	for _, c := range []struct{ hours, least, most float64 }{{24, 0, 0}, {48, 0.1, 0.5}, {60, 0.5, 0.95}, {84, 1, 1}, {168, 1, 1}} {
		s := still(c.hours)
		t.Logf("%3.0f h, %3.0f h of them without oxygen: %.2f drowned", c.hours, s.AirlessNow()/hour, s.Drowned())
		assert.GreaterOrEqual(t, s.Drowned(), c.least)
		assert.LessOrEqual(t, s.Drowned(), c.most)
		assert.GreaterOrEqual(t, s.Drowned(), before)
		before = s.Drowned()
	}
	aired := raw(t, lot(t, "barley"))
	require.NoError(t, aired.Soak(96*hour, steep.Water{T: 15, Aerated: true}))
	assert.Zero(t, aired.Drowned())
	changed := raw(t, lot(t, "barley"))
	for range 3 {
		require.NoError(t, changed.Soak(24*hour, steep.Water{T: 10}))
		require.NoError(t, changed.ChangeWater(steep.Water{T: 10}))
	}
	assert.Zero(t, changed.Drowned(), "three waters of a day were usual")
	long := raw(t, lot(t, "maize"))
	require.NoError(t, long.Soak(48*hour, steep.Water{T: 22}))
	assert.Zero(t, long.Drowned(), "which is soaked for days")
}

// What has drowned does not come back, and no more chit than live.
func TestWhatHasDrownedNeitherChitsNorBreathes(t *testing.T) {
	half, none := raw(t, lot(t, "barley")), raw(t, lot(t, "barley"))
	require.NoError(t, half.Soak(56*hour, steep.Water{T: 15}))
	require.NoError(t, none.Soak(96*hour, steep.Water{T: 15}))
	dead := half.Drowned()
	require.InDelta(t, 0.5, dead, 0.3)
	burnt := half.Batch().Respired
	for _, s := range []*steep.State{&half, &none} {
		require.NoError(t, s.Rest(96*hour, steep.Air{T: 16, RH: 1}))
		b := s.Batch()
		require.NoError(t, b.Check())
	}
	assert.Equal(t, dead, half.Drowned())
	assert.Greater(t, half.Batch().Respired, burnt)
	assert.InDelta(t, (1-dead)*half.Batch().Lot.Germination, half.Batch().Chitted, 0.1)
	assert.LessOrEqual(t, half.Batch().Chitted, (1-dead)*half.Batch().Lot.Germination)
	assert.Zero(t, none.Batch().Chitted)
	still := none.Batch()
	assert.Zero(t, still.Rootlets())
	require.NoError(t, none.Rest(24*hour, steep.Air{T: 16, RH: 1}))
	assert.Equal(t, still.Clock, none.Batch().Clock)
	assert.Equal(t, still.Respired, none.Batch().Respired)
	again, err := steep.Again(half.Batch(), 200*hour)
	require.NoError(t, err)
	assert.Equal(t, dead, again.Drowned(), "it goes with the batch")
}

// Air between makes up for the hours before, so that soaks of a usual steep do not add up.
func TestSoaksWithRestsBetweenDoNotDrown(t *testing.T) {
	s := raw(t, lot(t, "barley"))
	for range 6 {
		require.NoError(t, s.Soak(16*hour, steep.Water{T: 15}))
		require.NoError(t, s.Rest(16*hour, steep.Air{T: 15, RH: 1}))
	}
	t.Logf("%.0f h without oxygen in all", s.Airless()/hour)
	assert.Greater(t, s.Airless(), 24*hour)
	assert.Zero(t, s.Drowned())
}
