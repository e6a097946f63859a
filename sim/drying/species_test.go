package drying_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"maltwright/sim/drying"
)

var cereals = map[string]func() drying.Cereal{"barley": drying.Barley, "wheat": drying.Wheat, "maize": drying.Maize, "sorghum": drying.Sorghum}

// ASABE D245, data at 25 °C and 60 %; handbook, from memory: hard wheat 12.5,
// maize 12.9, sorghum 12.0 %; the data scatter between lots by about a point.
func TestSorptionOfOtherCerealsAgreesWithTheirData(t *testing.T) {
	for name, moisture := range map[string]float64{"wheat": 0.125, "maize": 0.129, "sorghum": 0.120} {
		c := cereals[name]()
		x, err := drying.Equilibrium(drying.Malt{Cereal: &c}, 0.6, 25)
		require.NoError(t, err, name)
		assert.InDelta(t, moisture, wet(x), 0.01, name)
		t.Logf("%s: %.1f %%", name, 100*wet(x))
	}
}

// What a cereal says of itself follows from its coefficients, as barley's is stated.
func TestWhatACerealStatesOfItsSorptionIsSo(t *testing.T) {
	for name, of := range cereals {
		c := of()
		malt := drying.Malt{Cereal: &c}
		require.NoError(t, malt.Check(), name)
		reference, err := drying.Equilibrium(malt, 0.6, 20)
		require.NoError(t, err, name)
		assert.InDelta(t, reference, c.Reference, 2e-5, name)
		rapid.Check(t, func(t *rapid.T) {
			at := rapid.Float64Range(-1, 60).Draw(t, "t")
			rh, _, _ := malt.Humidity(c.WetFrom, at)
			require.Greater(t, rh, 1-1e-5, name)
			_, slope, _ := malt.Humidity(rapid.Float64Range(0, c.WetFrom).Draw(t, "x"), at)
			require.Less(t, slope, c.Steepest, name)
		})
	}
}

// Half the radius, an eighth of the weight: four times the rate.
func TestSmallKernelsDryFasterWhenTheirWaterIsBound(t *testing.T) {
	c := drying.Barley()
	small := c.Weighing(0.045 / 8)
	assert.InEpsilon(t, 4*c.BoundRate, small.BoundRate, 1e-12)
	assert.Equal(t, c.FreeRate, small.FreeRate)
}
