package kiln_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/sim/kiln"
)

// Pieces of 20 s are taken in one step each but for the first moments, so that
// every step is looked at: water, heat of the malt and heat of the kiln close
// to rounding, and no dry matter is lost.
func TestBalancesCloseAtEveryStep(t *testing.T) {
	round := cabinet
	round.Recirculation, round.Heater = 0.5, new(400.0)
	for name, c := range map[string]struct {
		charge kiln.Charge
		kit    kiln.Equipment
		set    kiln.Setting
	}{
		"deep":         {tonne, house, kiln.Hold(kiln.AirOn, 60)},
		"tray":         {tray, cabinet, kiln.Hold(kiln.Malt, 45)},
		"return air":   {tray, round, kiln.Hold(kiln.AirOn, 60)},
		"still oven":   {tray, kiln.Equipment{Area: 0.5, Airflow: kiln.StillVent, Heater: new(800.0), Still: true}, kiln.Hold(kiln.Oven, 60)},
		"with no fire": {tray, cabinet, still},
	} {
		b := bed(t, c.charge, c.kit, spring)
		mass := b.View().Ledger.DryMass
		require.InDelta(t, c.charge.DryMass, mass, 1e-9*mass)
		for range 360 {
			_, err := b.Advance(20, c.set)
			require.NoError(t, err)
			l := b.View().Ledger
			require.Less(t, l.WaterError(), 1e-9, name)
			require.Less(t, l.HeatError(), 1e-9, name)
			require.Less(t, l.KilnError(), 1e-9, name)
			require.Equal(t, mass, l.DryMass, name)
		}
		v := b.View()
		assert.Less(t, v.Work.Steps, 460, name)
		assert.InDelta(t, v.Mass, v.Ledger.DryMass+v.Ledger.WaterInMalt, 1e-9*v.Mass, name)
	}
}
