package air

import "math"

// StandardPressure is the pressure of the standard atmosphere at sea level,
// Pa (published) [ashrae-2017-ch1].
const StandardPressure = 101325.0

// Pressure gives the pressure of the standard atmosphere, Pa, at an altitude
// in metres: p = 101325·(1 − 2.25577e-5·z)^5.2559, [ashrae-2017-ch1] eq. 3,
// −5000 to 11000 m. Outside it returns a *[RangeError]. Weather moves the true
// pressure by some 3 % about this, which moves a wet bulb by less than 0.2 K.
func Pressure(altitude float64) (float64, error) {
	if err := Within("altitude", altitude, "m", -5000, 11000); err != nil {
		return 0, err
	}
	return StandardPressure * math.Pow(1-2.25577e-5*altitude, 5.2559), nil
}

// checkPressure refuses a pressure that no place on land has.
func checkPressure(p float64) error {
	return Within("pressure", p, "Pa", 20e3, 200e3)
}
