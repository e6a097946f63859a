package drying

import (
	"errors"
	"math"

	"maltwright/sim/air"
)

const (
	// DryMatterHeat is the specific heat of dry malt, J/(kg K) (handbook, from
	// memory: 1.2 to 1.4 for dry cereals).
	DryMatterHeat = 1300.0

	// WaterHeat is the specific heat of liquid water, J/(kg K) (published).
	WaterHeat = 4187.0

	// bindingShare and bindingFall give the heat that holds bound water above
	// the heat of vaporisation of free water: a share of it,
	// 0.59·exp(−0.148·M), M in % dry basis (derived: Clausius–Clapeyron at
	// 60 °C on the Chung–Pfost form of [asabe-d245], which carries the
	// temperature dependence of the data; the Henderson form has a third of it).
	bindingShare = 0.59
	bindingFall  = 14.8 // per kg/kg

	// bindingHeat is the heat of vaporisation of free water that the share
	// above refers to, J/kg: its value at 60 °C. It is kept constant so that
	// enthalpy stays linear in temperature; between 20 and 100 °C that moves
	// the bound part by 4 %, a drying malt's heat by less than 1 %.
	bindingHeat = 2.361e6
)

// Enthalpy gives J per kg of dry matter, counted from dry matter and free
// liquid water at 0 °C, of malt of moisture x (kg/kg dry basis) at t °C:
// (1300 + 4187·x)·t + β(x), where β is the heat that wetting would still set
// free. Unchecked.
func Enthalpy(x, t float64) float64 {
	binding, _ := BindingUnchecked(x)
	return SpecificHeat(x)*t + binding
}

// Temperature gives the temperature, °C, of malt of moisture x (kg/kg dry
// basis) and enthalpy h (J per kg of dry matter), the inverse of Enthalpy.
// Unchecked.
func Temperature(x, h float64) float64 {
	binding, _ := BindingUnchecked(x)
	return (h - binding) / SpecificHeat(x)
}

// SpecificHeat gives J/(K·kg of dry matter) of malt of moisture x (kg/kg dry
// basis): 1300 + 4187·x. Unchecked.
func SpecificHeat(x float64) float64 { return DryMatterHeat + WaterHeat*x }

// BindingUnchecked gives β(x), J per kg of dry matter, the heat that wetting
// malt from moisture x (kg/kg dry basis) to wetness would set free, and its
// derivative: β = 2.361e6·0.59/14.8·exp(−14.8·x).
func BindingUnchecked(x float64) (heat, slope float64) {
	bound := bindingHeat * bindingShare * math.Exp(-bindingFall*x)
	return bound / bindingFall, -bound
}

// LatentHeat gives the heat, J/kg, that takes one kg of water from malt of
// moisture x (kg/kg dry basis, 0 to 4) at t °C (−20 to 180) as vapour:
// 2.501e6 − 2327·t for free water, the difference of the enthalpies of vapour
// [ashrae-2017-ch1] and water, plus 2.361e6·0.59·exp(−14.8·x) for what binds
// it. Outside it returns a *[air.RangeError].
func LatentHeat(x, t float64) (float64, error) {
	if err := errors.Join(checkMoisture(x), checkTemperature(t)); err != nil {
		return 0, err
	}
	_, slope := BindingUnchecked(x)
	return air.VapourEnthalpy + (air.VapourHeat-WaterHeat)*t - slope, nil
}
