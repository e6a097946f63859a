package drying

import (
	"math"

	"maltwright/sim/air"
)

// Sorption of barley.
const (
	// Coefficients of the modified Henderson equation (published) [asabe-d245].
	hendersonK = 2.2919e-5
	hendersonC = 195.267
	hendersonN = 2.0123

	// shiftPoint is the equilibrium moisture at 20 °C and 60 % relative
	// humidity, kg/kg dry basis, by [asabe-d245]. A test holds it to Equilibrium.
	shiftPoint = 0.13412

	// wetFrom, kg/kg: from here the sorption curve is within 1e-5 of saturation
	// at any temperature of a floor.
	wetFrom = 0.5
	// steepest is more than the humidity ever rises for each kg/kg: 6.7 at 60 °C.
	steepest = 7.0
)

// Drying rates of barley malt.
const (
	gas = 8.314 // gas constant, J/(mol K) (published)

	// wetRate (1/s) and wetFall (K) give the drying constant of free water,
	// k = 139.3·exp(−4426/T) (published) [ocallaghan-1971] after [boyce-1965].
	wetRate = 139.3
	wetFall = 4426.0

	// boundDiffusion, m²/s at 20 °C, and boundEnergy, J/mol, are those of bound
	// water in the kernel (calibrated to thin layers by sim/outside/fit, drawn to
	// what is published: 1.6e-12 m²/s of vapour in ground malt
	// [meddings-potter-1974]; 42 kJ/mol of wheat in the falling rate
	// [wheat-falling-rate], 51 [becker-1960]).
	boundDiffusion = 1.42e-12
	boundEnergy    = 40.1e3

	// kernelRadius, m, is how far bound water has to go: half of kernelDiameter.
	kernelRadius = kernelDiameter / 2

	// boundBelow and freeAbove are the moistures, kg/kg dry basis, between
	// which water passes from bound to free (calibrated with them, drawn to
	// 10 to 12 % wet basis [maltings-note], and to where the constant of free
	// water was measured).
	boundBelow = 0.124
	freeAbove  = 0.201

	// boundRate is the first eigenvalue of diffusion through a sphere of radius
	// kernelRadius, π²·D/r², at 20 °C, 1/s.
	boundRate = math.Pi * math.Pi * boundDiffusion / (kernelRadius * kernelRadius)
)

// Heat of barley malt.
const (
	// dryMatterHeat is the specific heat of dry malt, J/(kg K) (handbook, from
	// memory: 1.2 to 1.4 kJ for dry cereals).
	dryMatterHeat = 1300.0

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

// Beds of barley malt.
const (
	// bedConductivity, W/(m K): of a resting bed of wet grain (handbook, from
	// memory: dry grain 0.15–0.18, wet 0.2–0.25).
	bedConductivity = 0.22

	// faceDry, kg of dry matter per m²: the layer at the open face that dries
	// first, one to two kernels (calibrated).
	faceDry = 2.0

	kernelDiameter = 4e-3 // m, of the sphere of like surface (handbook, from memory)
	voidShare      = 0.40 // of the bed (handbook, from memory: 0.38 to 0.42)

	// Coefficients of Resistance (published) [asabe-d272].
	resistanceA = 2.14e4 // Pa s²/m³
	resistanceB = 13.2   // m² s/m³

	// wetResistance is the share of the resistance of clean dry grain that
	// loosely laid wet grain has (handbook, from memory: 20 % less) [asabe-d272].
	wetResistance = 0.8
)

// roomT is the temperature, K, at which BoundRate is stated.
const roomT = 20 + air.ZeroCelsius

// ofBarley is never written to.
var ofBarley = Barley()

// Barley gives the figures of barley.
func Barley() Cereal {
	return Cereal{
		HendersonK: hendersonK, HendersonC: hendersonC, HendersonN: hendersonN,
		Reference: shiftPoint, WetFrom: wetFrom, Steepest: steepest,
		FreeRate: wetRate, FreeFall: wetFall,
		BoundRate: boundRate, BoundFall: boundEnergy / gas,
		BoundBelow: boundBelow, Transition: freeAbove - boundBelow,
		DryHeat: dryMatterHeat, WettingHeat: bindingHeat * bindingShare, WettingFall: bindingFall,
		Packing: Packing{
			Conductivity: bedConductivity, Exposed: faceDry,
			KernelDiameter: kernelDiameter, Surface: 6 * (1 - voidShare) / kernelDiameter,
			Drag: resistanceA, Bend: resistanceB, Loose: wetResistance,
		},
	}
}
