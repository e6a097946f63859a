package steep_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/sim/grain"
	"maltwright/sim/steep"
)

// Grain that is taken out and put back at once drinks on as if nobody had touched it, but
// for what was loose on it: that counts as drunk, so that husk and film fill anew.
func TestGrainThatIsPutBackDrinksOn(t *testing.T) {
	s := raw(t, lot(t, "barley"))
	require.NoError(t, s.Soak(8*3600, steep.Water{T: 14}))
	require.NoError(t, s.Rest(20*3600, steep.Air{T: 14, RH: 1}))
	again, err := steep.Again(s.Batch(), 28*3600)
	require.NoError(t, err)
	assert.InDelta(t, s.X(), again.X(), 1e-12)
	assert.Equal(t, s.Batch().Clock, again.Batch().Clock)
	assert.Equal(t, s.Batch().Chitted, again.Batch().Chitted)
	for _, x := range []*steep.State{&s, &again} {
		require.NoError(t, x.Soak(4*3600, steep.Water{T: 14}))
	}
	assert.InDelta(t, s.Moisture(), again.Moisture(), 0.006)
	assert.InDelta(t, s.Leached(), again.Leached(), 1e-9)
	b := again.Batch()
	assert.InDelta(t, b.Lot.DryMass, b.Dry+b.Leached+b.Respired, 1e-9*b.Lot.DryMass)
}

// No core drinks more than it can hold, however wet a piece was sprinkled.
func TestWetGrainIsSteepedAgainWithoutRunningOver(t *testing.T) {
	b, err := grain.NewBatch(lot(t, "barley"))
	require.NoError(t, err)
	b.Clock, b.Chitted, b.Water = 500, 0.9, 1.2*b.Dry
	s, err := steep.Again(b, 100*3600)
	require.NoError(t, err)
	before := s.X()
	require.NoError(t, s.Soak(24*3600, steep.Water{T: 14}))
	assert.LessOrEqual(t, s.X(), before)
	assert.Greater(t, s.Moisture(), 0.45)
	_, err = steep.Again(grain.Batch{Lot: b.Lot, Dry: b.Dry, Water: -1}, 1)
	assert.Error(t, err)
}

// A lot whose core can hold little, and that comes moister than that, drinks no more.
func TestACoreThatIsFullDrinksNothing(t *testing.T) {
	l := lot(t, "maize")
	l.Moisture0 = 0.5
	l.HoldCore(0.4)
	s, err := steep.New(l)
	require.NoError(t, err)
	before := s.CoreX()
	require.NoError(t, s.Soak(40*3600, steep.Water{T: 22, Aerated: true}))
	assert.InDelta(t, before, s.CoreX(), 0.02, "but for the dry matter that leaches")
	require.NoError(t, s.Rest(10*3600, steep.Air{T: 22, RH: 0.7}))
	assert.Greater(t, s.Moisture(), 0.3)
}

// What was never wetted is raw grain.
func TestAgainOfRawGrainIsNew(t *testing.T) {
	b, err := grain.NewBatch(lot(t, "barley"))
	require.NoError(t, err)
	again, err := steep.Again(b, 0)
	require.NoError(t, err)
	fresh, err := steep.New(b.Lot)
	require.NoError(t, err)
	assert.Equal(t, fresh, again)
}

// Grain that comes moist from the field is no farther from being full than grain that was
// soaked so far: it ends where stored grain ends, after fewer hours.
func TestMoistGrainDrinksLess(t *testing.T) {
	after := func(w, hours float64) float64 {
		l := lot(t, "barley")
		x, err := grain.DryBasis(w)
		require.NoError(t, err)
		l.Moisture0 = x
		s, err := steep.New(l)
		require.NoError(t, err)
		assert.InDelta(t, w, s.Moisture(), 1e-12, "it holds what it holds")
		require.NoError(t, s.Soak(hours*3600, steep.Water{T: 14}))
		return s.Moisture()
	}
	for _, w := range []float64{0.18, 0.22, 0.26, 0.30, 0.35} {
		assert.Greater(t, after(w, 24), after(0.12, 24), "%v", w)
		assert.Less(t, after(w, 400), 0.53, "%v: no grain holds more", w)
	}
	assert.InDelta(t, after(0.12, 400), after(0.35, 400), 0.025)
	assert.Greater(t, after(0.30, 6), 0.36)
}
