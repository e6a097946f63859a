package air

import "maltwright/sim/powers"

const (
	triplePoint = 0.01 // °C, where ice, water and vapour meet, by definition

	// lowest and highest temperature of the saturation equations, °C
	// (published) [ashrae-2017-ch1].
	lowest, highest = -100.0, 200.0
)

// SaturationPressure gives the pressure of vapour, Pa, in balance with ice
// (below 0.01 °C) or liquid water (above) at t °C, by the equations of Hyland
// and Wexler, [ashrae-2017-ch1] eq. 5 and 6 [hyland-wexler-1983], −100 to
// 200 °C. Outside it returns a *[RangeError].
func SaturationPressure(t float64) (float64, error) {
	if err := Within("temperature", t, "°C", lowest, highest); err != nil {
		return 0, err
	}
	return hylandWexler(t), nil
}

func hylandWexler(t float64) float64 {
	p, _ := saturationWithSlope(t, t <= triplePoint)
	return p
}

// saturationWithSlope gives the pressure and its derivative, Pa/K, on the
// curve of ice or of water.
func saturationWithSlope(t float64, ice bool) (pressure, slope float64) {
	tk := t + ZeroCelsius
	ln, dln := overWater(tk)
	if ice {
		ln, dln = overIce(tk)
	}
	p := powers.Exp(ln)
	return p, p * dln
}

// overIce gives ln p and its derivative by temperature in K, [ashrae-2017-ch1]
// eq. 5 (coefficients published there).
func overIce(tk float64) (ln, slope float64) {
	const (
		c1, c2, c3 = -5.6745359e3, 6.3925247, -9.6778430e-3
		c4, c5, c6 = 6.2215701e-7, 2.0747825e-9, -9.4840240e-13
		c7         = 4.1635019
	)
	ln = c1/tk + c2 + tk*(c3+tk*(c4+tk*(c5+tk*c6))) + c7*powers.Log(tk)
	slope = -c1/(tk*tk) + c3 + tk*(2*c4+tk*(3*c5+tk*4*c6)) + c7/tk
	return ln, slope
}

// overWater gives ln p and its derivative by temperature in K,
// [ashrae-2017-ch1] eq. 6 (coefficients published there).
func overWater(tk float64) (ln, slope float64) {
	const (
		c8, c9, c10 = -5.8002206e3, 1.3914993, -4.8640239e-2
		c11, c12    = 4.1764768e-5, -1.4452093e-8
		c13         = 6.5459673
	)
	ln = c8/tk + c9 + tk*(c10+tk*(c11+tk*c12)) + c13*powers.Log(tk)
	slope = -c8/(tk*tk) + c10 + tk*(2*c11+tk*3*c12) + c13/tk
	return ln, slope
}
