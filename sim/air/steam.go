package air

import "math"

// Boils gives the temperature, °C, at which water boils under a pressure of p Pa (611 Pa to
// 1.5 MPa; NaN outside), where the equations of [hyland-wexler-1983] have its vapour come to that pressure.
func Boils(p float64) float64 {
	t, err := boiling(p)
	if err != nil {
		return math.NaN()
	}
	return t
}

// VapourVolume gives m³ for each kg of steam of t °C under a pressure of p Pa, as an ideal
// gas: R·T/(M·p), 1.70 at 100 °C and 101 325 Pa, where steam tables have 1.67.
func VapourVolume(t, p float64) float64 {
	return gasConstant / MassRatio * (t + ZeroCelsius) / p
}
