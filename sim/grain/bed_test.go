package grain_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"maltwright/sim/grain"
)

const steeped = 0.45 / 0.55 // kg/kg, 45 %

// aTonne is a tonne of raw barley of 12 %.
func aTonne(t require.TestingT) grain.Lot {
	p, err := grain.Of("barley")
	require.NoError(t, err)
	return grain.LotOf(p, 880, 0.12/0.88)
}

// The bed swells by its water, hence in proportion on the dry basis and not on the wet one.
func TestTheBedSwellsByItsWater(t *testing.T) {
	l := aTonne(t)
	assert.InDelta(t, 1000/680.0, l.BedVolume(l.Moisture0, 0), 1e-9)
	assert.InDelta(t, 1.4*1000/680.0, l.BedVolume(steeped, 0), 1e-9)
	half := (l.Moisture0 + steeped) / 2 // 32 %, and not 28.5 half way on the wet basis
	assert.InDelta(t, 1.2*1000/680.0, l.BedVolume(half, 0), 1e-9)
	assert.InDelta(t, 1.4*1.5*1000/680.0, l.BedVolume(steeped, l.Profile.GrownTo(1)), 1e-9)
	perWater := (l.BedVolume(steeped, 0) - l.BedVolume(0.2, 0)) / (880 * (steeped - 0.2))
	assert.InDelta(t, 1e-3, perWater, 0.03e-3, "a litre for each kilogram of water")
}

// 550 to 600 kg/m² lie 1.2 m deep after filling [owens-2001]. Poured barley of 650 kg/m³ does at 557.
func TestABoxIsFilledAsOwensHasIt(t *testing.T) {
	l := aTonne(t)
	l.Profile.BulkDensity = 650
	assert.InDelta(t, 557, 1.2*1000/l.BedVolume(steeped, 0), 0.5)
}

// Beds of 0.5 to 0.6 m grow to 0.8 to 0.9 m (common practice): from the least to the most by
// 1.33 to 1.8.
func TestABedGrowsAsDeepAsBedsDo(t *testing.T) {
	l := aTonne(t)
	for _, a := range []float64{0.75, 1} {
		grows := l.BedVolume(0.44/0.56, l.Profile.GrownTo(a)) / l.BedVolume(steeped, 0)
		assert.Greater(t, grows, 0.8/0.6)
		assert.Less(t, grows, 0.9/0.5)
	}
}

// Green malt weighs 400 to 550 kg/m³, kilned malt 500 to 550 (common practice). A tonne of raw
// barley makes 0.83 tonnes of green dry matter, 0.80 of malt, after what was burnt.
func TestMaltWeighsWhatMaltWeighs(t *testing.T) {
	l := aTonne(t)
	x, full := 0.44/0.56, l.Profile.GrownTo(0.85)
	green := 830 * (1 + x) / l.BedVolume(x, full)
	assert.Greater(t, green, 400.0)
	assert.Less(t, green, 550.0)
	x = 0.045 / 0.955
	dried := 800 * (1 + x) / l.BedVolume(x, full)
	assert.Greater(t, dried, 500.0)
	assert.Less(t, dried, 550.0)
}

// A quarter, eight bushels, weighed 448 lb of barley and 336 lb of malt (common practice): malt
// of four fifths of the barley's weight then fills 1.07 of its room.
func TestAQuarterOfBarleyMakesAboutAQuarterOfMalt(t *testing.T) {
	l := aTonne(t)
	assert.InDelta(t, 448.0/336*0.8, l.BedVolume(0.03, l.Profile.GrownTo(0.85))/l.BedVolume(l.Moisture0, 0), 0.05)
}

func TestABedLiesDeeperWithWaterAndGrowth(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l := aTonne(t)
		x, clock := rapid.Float64Range(0, 1.2).Draw(t, "x"), rapid.Float64Range(0, 4000).Draw(t, "clock")
		v := l.BedVolume(x, clock)
		assert.Positive(t, v)
		assert.Greater(t, l.BedVolume(x+0.01, clock), v)
		assert.GreaterOrEqual(t, l.BedVolume(x, clock+50), v)
	})
}
