package outside

import "math"

// Moist air by the short formulas that are printed for a pocket calculator, apart from package
// air: they vouch for what whole kilns are held to.

// handPressure is that of the air at a height, m, in kPa [ashrae-2017-ch1].
func handPressure(height float64) float64 {
	return 101.325 * math.Pow(1-2.25577e-5*height, 5.2559)
}

// handSaturation is the pressure of water vapour over water at t °C, in kPa: Tetens' formula
// [fao-56].
func handSaturation(t float64) float64 { return 0.6108 * math.Exp(17.27*t/(t+237.3)) }

// handRatio is the water of air, kg/kg, in which vapour has the pressure e of p, both in kPa.
func handRatio(e, p float64) float64 { return 0.622 * e / (p - e) }

// handEnthalpy is that of air with w kg/kg of water at t °C, kJ for each kg of it dry
// [ashrae-2017-ch1].
func handEnthalpy(t, w float64) float64 { return 1.006*t + w*(2501+1.86*t) }

// handDensity is the dry air in a cubic metre of air at t °C with w kg/kg of water, kg
// [ashrae-2017-ch1].
func handDensity(t, w, p float64) float64 { return p / (0.287042 * (t + 273.15) * (1 + 1.607858*w)) }

// handWetBulb is where air of t °C with w kg/kg of water is saturated once it has wetted itself, °C:
// its enthalpy stays but for that of the liquid that it takes up.
func handWetBulb(t, w, p float64) float64 {
	low, high := -5.0, t
	for high-low > 1e-6 {
		mid := (low + high) / 2
		full := handRatio(handSaturation(mid), p)
		if handEnthalpy(mid, full)-(full-w)*4.186*mid < handEnthalpy(t, w) {
			low = mid
		} else {
			high = mid
		}
	}
	return (low + high) / 2
}

// handRest is the moisture, wet basis, of barley at rest with air of t °C and a relative humidity: the
// modified equation of Henderson, with the constants of the standard [asabe-d245], from memory.
func handRest(t, rh float64) float64 {
	x := math.Pow(-math.Log(1-rh)/(2.2919e-5*(t+195.267)), 1/2.0123) / 100
	return x / (1 + x)
}
