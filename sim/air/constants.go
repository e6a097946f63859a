package air

// What the models reckon with beside the equations of the air.
const (
	// ZeroCelsius is 0 °C in K, by definition.
	ZeroCelsius = 273.15

	// MolarGas is the molar gas constant, J/(mol K) (published, SI).
	MolarGas = 8.314462618

	// DryAirHeat is the specific heat of dry air, J/(kg K); VapourHeat that of
	// water vapour; EvaporationHeat the enthalpy of vapour at 0 °C against
	// liquid water at 0 °C, J/kg (published) [ashrae-2017-ch1] eq. 29 and 30.
	DryAirHeat      = 1006.0
	VapourHeat      = 1860.0
	EvaporationHeat = 2.501e6

	// WaterHeat is the specific heat of liquid water, J/(kg K) (published).
	WaterHeat = 4187.0
)

// VapourEnthalpy gives J per kg of vapour at t °C, counted from liquid water at
// 0 °C: 2.501e6 + 1860·t, [ashrae-2017-ch1] eq. 30.
func VapourEnthalpy(t float64) float64 { return EvaporationHeat + VapourHeat*t }
