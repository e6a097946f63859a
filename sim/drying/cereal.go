package drying

import (
	"errors"

	"maltwright/sim/air"
)

// Cereal holds the figures by which the malt of a species dries.
type Cereal struct {
	// Henderson K, 1/(K·(% dry basis)^N), C, °C, and N are the coefficients of
	// the modified Henderson equation.
	HendersonK, HendersonC, HendersonN float64
	// Reference is the equilibrium moisture at 20 °C and 60 % relative
	// humidity, kg/kg dry basis, at which a shift of sorption is stated.
	Reference float64
	// WetFrom and Steepest are what [Sorption.Wet] gives.
	WetFrom, Steepest float64

	// FreeRate, 1/s, and FreeFall, K, give the drying constant of free water,
	// k = FreeRate·exp(−FreeFall/T).
	FreeRate, FreeFall float64
	// BoundRate is the drying constant of bound water at 20 °C, 1/s, and
	// BoundFall, K, its activation energy over the gas constant.
	BoundRate, BoundFall float64
	// BoundBelow is the critical moisture, kg/kg dry basis, under which all
	// water is bound, and Transition how far above it all water is free.
	BoundBelow, Transition float64

	// DryHeat is the specific heat of the dry matter, J/(kg K).
	DryHeat float64
	// WettingHeat, J/kg, and WettingFall, per kg/kg, give the heat that holds
	// water at moisture x above that of vaporisation: WettingHeat·exp(−WettingFall·x).
	WettingHeat, WettingFall float64

	Packing Packing
}

// check returns a *[air.RangeError] for every figure with which the equations
// mean nothing.
func (c *Cereal) check() error {
	return errors.Join(
		air.Within("Henderson's K", c.HendersonK, "", 1e-7, 1e-2),
		air.Within("Henderson's C", c.HendersonC, "°C", 30, 1000),
		air.Within("Henderson's N", c.HendersonN, "", 1, 4),
		air.Within("reference of sorption", c.Reference, "kg/kg", 0.06, 0.4),
		air.Within("moisture of a wet surface", c.WetFrom, "kg/kg", 0.1, dampestX),
		air.Within("steepest sorption", c.Steepest, "", 0.1, 100),
		air.Within("rate of free water", c.FreeRate, "1/s", 1e-3, 1e6),
		air.Within("fall of the rate of free water", c.FreeFall, "K", 0, 2e4),
		air.Within("rate of bound water", c.BoundRate, "1/s", 1e-9, 1e-2),
		air.Within("fall of the rate of bound water", c.BoundFall, "K", 0, 2e4),
		air.Within("moisture of bound water", c.BoundBelow, "kg/kg", 0, 1),
		air.Within("transition to free water", c.Transition, "kg/kg", 0.01, 2),
		air.Within("specific heat of dry matter", c.DryHeat, "J/(kg K)", 500, 4000),
		air.Within("heat of wetting", c.WettingHeat, "J/kg", 0, 5e6),
		air.Within("fall of the heat of wetting", c.WettingFall, "", 1, 100),
		c.Packing.check(),
	)
}

func (p *Packing) check() error {
	return errors.Join(
		air.Within("conductivity of the bed", p.Conductivity, "W/(m K)", 0.01, 2),
		air.Within("layer at the face", p.Exposed, "kg/m²", 0.01, 100),
		air.Within("diameter of a kernel", p.KernelDiameter, "m", 2e-4, 0.05),
		air.Within("surface of the kernels", p.Surface, "m²/m³", 10, 2e4),
		air.Within("resistance", p.Drag, "Pa s²/m³", 1, 1e7),
		air.Within("bend of the resistance", p.Bend, "m² s/m³", 0.01, 1e4),
		air.Within("resistance of loose malt", p.Loose, air.Share, 0.01, 2),
	)
}
