package drying_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"maltwright/sim/air"
	"maltwright/sim/drying"
)

// other is malt of a cereal that is barley but for what change does to it.
func other(change func(*drying.Cereal)) drying.Malt {
	c := drying.Barley()
	change(&c)
	return drying.Malt{Cereal: &c}
}

func TestMaltOfNoStatedCerealIsBarleys(t *testing.T) {
	stated := other(func(*drying.Cereal) {})
	rapid.Check(t, func(t *rapid.T) {
		x, at := rapid.Float64Range(0, 4).Draw(t, "x"), rapid.Float64Range(-20, 180).Draw(t, "t")
		k, _, _ := house.Rate(x, at)
		same, _, _ := stated.Rate(x, at)
		require.Equal(t, k, same)
		require.Equal(t, drying.Enthalpy(house, x, at), drying.Enthalpy(stated, x, at))
	})
}

// Water that lies deeper, is held more tightly or begins to be bound sooner
// leaves later; at rest only what holds it counts.
func TestAnotherCerealDriesAsItsFiguresSay(t *testing.T) {
	for name, c := range map[string]struct {
		change func(*drying.Cereal)
		wetter bool // after six hours
		rests  bool // at another moisture than barley
	}{
		"thicker kernel":     {func(c *drying.Cereal) { c.BoundRate /= 2 }, true, false},
		"thinner kernel":     {func(c *drying.Cereal) { c.BoundRate *= 2 }, false, false},
		"slow free water":    {func(c *drying.Cereal) { c.FreeRate /= 2 }, true, false},
		"bound sooner":       {func(c *drying.Cereal) { c.BoundBelow += 0.1 }, true, false},
		"holds more tightly": {func(c *drying.Cereal) { c.HendersonK /= 2 }, true, true},
		"holds less tightly": {func(c *drying.Cereal) { c.HendersonK *= 2 }, false, true},
	} {
		malt, six := other(c.change), hours(60, 6)
		barley, err := drying.ThinLayer(house, dry(0.45), barn(t), six)
		require.NoError(t, err, name)
		got, err := drying.ThinLayer(malt, dry(0.45), barn(t), six)
		require.NoError(t, err, name)
		assert.Greater(t, math.Abs(got-barley), 1e-3, name)
		assert.Equal(t, c.wetter, got > barley, name)
		rest, err := drying.Equilibrium(house, 0.2, 60)
		require.NoError(t, err, name)
		own, err := drying.Equilibrium(malt, 0.2, 60)
		require.NoError(t, err, name)
		assert.Equal(t, c.rests, rest != own, name)
	}
}

func TestHeatOfDesorptionFollowsTheMaterial(t *testing.T) {
	tight, err := drying.LatentHeat(other(func(c *drying.Cereal) { c.WettingHeat *= 2 }), 0.1, 50)
	require.NoError(t, err)
	usual, err := drying.LatentHeat(house, 0.1, 50)
	require.NoError(t, err)
	assert.Greater(t, tight, usual)
}

// Wet bounds what it is asked for: at the temperatures of a floor barley is wet
// from there on, and its curve nowhere steeper.
func TestBarleysWetSurfaceIsWet(t *testing.T) {
	from, steepest := house.Wet()
	rapid.Check(t, func(t *rapid.T) {
		at := rapid.Float64Range(-1, 60).Draw(t, "t")
		rh, _, _ := house.Humidity(from, at)
		require.Greater(t, rh, 1-1e-5)
		_, slope, _ := house.Humidity(rapid.Float64Range(0, from).Draw(t, "x"), at)
		require.Less(t, slope, steepest)
	})
}

func TestFiguresThatMeanNothingAreRefused(t *testing.T) {
	for name, change := range map[string]func(*drying.Cereal){
		"no sorption":   func(c *drying.Cereal) { c.HendersonK = 0 },
		"no transition": func(c *drying.Cereal) { c.Transition = 0 },
		"no wetting":    func(c *drying.Cereal) { c.WettingFall = 0 },
		"all unknown":   func(c *drying.Cereal) { *c = drying.Cereal{} },
	} {
		var refused *air.RangeError
		require.ErrorAs(t, other(change).Check(), &refused, name)
	}
}
