package kiln_test

import (
	"errors"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"maltwright/sim/drying"
	"maltwright/sim/drying/invent"
	"maltwright/sim/kiln"
)

// Whatever lies on it, a kiln makes no water, no dry matter and no heat.
func TestBalancesCloseForAnyMaterial(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		bed := anyBedOf(t, invent.Material(t))
		first := bed.View()
		for range 4 {
			_, err := bed.Advance(600, anySetting(t))
			if errors.Is(err, kiln.ErrStalled) { // no cereal: drawn so steep that no step follows it, and refused
				return
			}
			require.NoError(t, err)
			v := bed.View()
			require.True(t, finite(v), "%+v", v)
			require.Less(t, v.Ledger.WaterError(), 1e-9)
			require.Less(t, v.Ledger.HeatError(), 1e-9)
			require.Less(t, v.Ledger.KilnError(), 1e-9)
			require.InEpsilon(t, first.Ledger.DryMass, v.Mass/(1+v.X), 1e-9)
			require.GreaterOrEqual(t, v.Driest, -1e-9)
		}
	})
}

// A cereal of thicker kernels, or one that holds water more tightly, comes wetter
// off the same kiln; thinner kernels come drier.
func TestAnotherCerealDriesOtherwiseOnTheSameKiln(t *testing.T) {
	end := func(change func(*drying.Cereal)) float64 {
		c := drying.Barley()
		change(&c)
		b, err := kiln.New(tray, cabinet, spring, drying.Malt{Cereal: &c})
		require.NoError(t, err)
		return run(t, b, 12, kiln.Hold(kiln.AirOn, 60)).X
	}
	barley := end(func(*drying.Cereal) {})
	const clearly = 0.002 // kg/kg
	assert.Greater(t, end(func(c *drying.Cereal) { c.BoundRate /= 2 }), barley+clearly, "thicker kernels")
	assert.Less(t, end(func(c *drying.Cereal) { c.BoundRate *= 2 }), barley-clearly, "thinner kernels")
	assert.Greater(t, end(func(c *drying.Cereal) { c.HendersonK /= 3 }), barley+clearly, "tightly held water")
	assert.Greater(t, end(func(c *drying.Cereal) { c.BoundBelow += 0.1 }), barley+clearly, "water that is bound sooner")
}
