package drying

import (
	"errors"

	"maltwright/sim/air"
	"maltwright/sim/powers"
)

// DryHeat gives the specific heat of the dry matter, J/(kg K).
func (m Malt) DryHeat() float64 { return m.figures().DryHeat }

// Wetting gives the integral heat of wetting, J per kg of dry matter, from
// moisture x (kg/kg dry basis), and its derivative: for barley
// 2.361e6·0.59/14.8·exp(−14.8·x).
func (m Malt) Wetting(x float64) (heat, slope float64) {
	c := m.figures()
	bound := c.WettingHeat * powers.Exp(-c.WettingFall*x)
	return bound / c.WettingFall, -bound
}

// Enthalpy gives J per kg of dry matter, counted from dry matter and free
// liquid water at 0 °C, of a material of moisture x (kg/kg dry basis) at t °C:
// (c + 4187·x)·t + β(x), where c is the specific heat of its dry matter and β
// its heat of wetting. Unchecked.
func Enthalpy(m Material, x, t float64) float64 {
	wetting, _ := m.Wetting(x)
	return SpecificHeat(m, x)*t + wetting
}

// Temperature gives the temperature, °C, of a material of moisture x (kg/kg
// dry basis) and enthalpy h (J per kg of dry matter), the inverse of Enthalpy.
// Unchecked.
func Temperature(m Material, x, h float64) float64 {
	wetting, _ := m.Wetting(x)
	return (h - wetting) / SpecificHeat(m, x)
}

// SpecificHeat gives J/(K·kg of dry matter) of a material of moisture x (kg/kg
// dry basis): c + 4187·x. Unchecked.
func SpecificHeat(m Material, x float64) float64 { return m.DryHeat() + air.WaterHeat*x }

// LatentHeat gives the heat of desorption, J/kg, that takes one kg of water
// from a material of moisture x (kg/kg dry basis, 0 to 4) at t °C (−20 to 180)
// as vapour: 2.501e6 − 2327·t for free water, the difference of the enthalpies
// of vapour [ashrae-2017-ch1] and water, less the derivative of the heat of
// wetting. Outside it returns a *[air.RangeError].
func LatentHeat(m Material, x, t float64) (float64, error) {
	if err := errors.Join(m.Check(), checkMoisture(x), checkTemperature(t)); err != nil {
		return 0, err
	}
	_, slope := m.Wetting(x)
	return air.EvaporationHeat + (air.VapourHeat-air.WaterHeat)*t - slope, nil
}
