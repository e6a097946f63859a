package grain_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/sim/grain"
)

// A lot that chits half as fast is behind by what that takes, and no more: from there on it
// grows as fast.
func TestALotThatChitsLateGrowsNoSlower(t *testing.T) {
	usual := grain.LotOf(profile(t, "barley"), 5, 0.14)
	late := usual
	late.ChitBy(0.5)
	require.NoError(t, late.Check())
	behind := usual.Profile.Chit
	assert.InDelta(t, 2*usual.Profile.Chit, late.Profile.Chit, 1e-12)
	assert.InDelta(t, usual.Profile.Due(100), late.Profile.Due(200), 1e-12)
	for _, clock := range []float64{300, 900, 2000} {
		assert.InDelta(t, usual.Profile.Acrospire(clock), late.Profile.Acrospire(clock+behind), 1e-12)
		assert.InDelta(t, usual.Profile.Modification(clock), late.Profile.Modification(clock+behind), 1e-12)
		assert.Equal(t, usual.ClockSpeed(clock, 15, 0.45, 1), late.ClockSpeed(clock, 15, 0.45, 1))
	}
	assert.Equal(t, profile(t, "barley"), usual.Profile, "the usual lot is as it was")
}

// All that the language can say of a lot is a lot that can be steeped.
func TestEveryFactorOfALotThatCanBeStatedIsALot(t *testing.T) {
	for _, name := range grain.Names() {
		for _, factor := range []float64{0.2, 1, 5} {
			l := grain.LotOf(profile(t, name), 5, 0.14)
			l.HoldLoose(factor)
			l.ChitBy(factor)
			assert.NoError(t, l.Check(), "%s, %g", name, factor)
			assert.InDelta(t, factor*profile(t, name).HuskWater, l.Profile.HuskWater, 1e-12)
			assert.InDelta(t, factor*profile(t, name).FilmWater, l.Profile.FilmWater, 1e-12)
		}
	}
}
