package kiln_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/sim/air"
	"maltwright/sim/drying"
	"maltwright/sim/kiln"
)

// Pieces of 20 s are taken in one step each but for the first moments, so that
// every step is looked at: water, heat of the malt and heat of the kiln close
// to rounding, and no dry matter is lost.
func TestBalancesCloseAtEveryStep(t *testing.T) {
	round := cabinet
	round.Recirculation, round.Heater = 0.5, new(400.0)
	saving := house
	saving.Recirculation, saving.Recovers = 0.3, 0.8
	for name, c := range map[string]struct {
		charge kiln.Charge
		kit    kiln.Equipment
		set    kiln.Setting
	}{
		"deep":         {tonne, house, kiln.Hold(kiln.AirOn, 60)},
		"tray":         {tray, cabinet, kiln.Hold(kiln.Malt, 45)},
		"return air":   {tray, round, kiln.Hold(kiln.AirOn, 60)},
		"exchanger":    {tonne, saving, kiln.Hold(kiln.AirOn, 60)},
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
			balanced(t, b, name)
			require.Equal(t, mass, l.DryMass, name)
		}
		v := b.View()
		assert.Less(t, v.Work.Steps, 460, name)
		assert.InDelta(t, v.Mass, v.Ledger.DryMass+v.Ledger.WaterInMalt, 1e-9*v.Mass, name)
	}
}

// balanced asks that water and heat of the kiln add up: heat to rounding, water to what the
// search for the humidity of air-on leaves where exhaust is led back.
func balanced(t require.TestingT, b *kiln.Bed, what string) {
	w := b.Balance()
	moved := math.Abs(w.Heater) + math.Abs(w.Recovered) + math.Abs(w.Warmed) + math.Abs(w.Evaporated) + math.Abs(w.Exhaust)
	l := b.View().Ledger
	require.LessOrEqual(t, math.Abs(w.HeatMissing), 1e-9*(moved+1e4*l.DryMass), what)
	require.LessOrEqual(t, math.Abs(w.WaterMissing), 1e-9*(w.On+w.Gone+l.DryMass)+1e-8*l.AirPassed, what)
}

// The latent heat of the water, 2.501 MJ/kg as vapour of 0 °C, and what loosens the last of it,
// by the sorption heat of the malt, are what the balance calls evaporation.
func TestBalanceTellsWhereTheHeatWent(t *testing.T) {
	kit := house
	kit.Recirculation = 0.5
	for name, kit := range map[string]kiln.Equipment{"through": house, "led back": kit} {
		b := bed(t, tonne, kit, winter)
		run(t, b, 30, kiln.Hold(kiln.AirOn, 60))
		w, v := b.Balance(), b.View()
		taken := w.Gone - w.DrawnIn
		assert.InDelta(t, w.On-w.Left, taken, 1e-3, name)
		assert.InDelta(t, v.Ledger.AirPassed*(1-kit.Recirculation)*air.HumidityRatio(0.8*air.Saturation(10), air.StandardPressure), w.DrawnIn, 0.1)
		loosened := drying.Enthalpy(drying.Malt{}, v.X, 0) - drying.Enthalpy(drying.Malt{}, dry(0.45), 0)
		assert.InEpsilon(t, 2.501e6*taken+loosened*v.Ledger.DryMass, w.Evaporated, 0.01, name)
		held := (1300+4187*v.X)*v.MaltT - (1300+4187*dry(0.45))*15
		assert.InDelta(t, held*v.Ledger.DryMass, w.Warmed, 0.02*w.Heater, name)
		assert.InEpsilon(t, w.Heater, w.Warmed+w.Evaporated+w.Exhaust, 1e-9, name)
		if name == "through" {
			assert.Zero(t, w.Returned)
		} else {
			assert.InEpsilon(t, w.Exhaust+w.Evaporated, w.Returned, 0.1, "as much goes round as goes out")
		}
	}
}
