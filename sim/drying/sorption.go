package drying

import (
	"errors"
	"math"

	"maltwright/sim/air"
)

// Coefficients of the modified Henderson equation for barley (published)
// [asabe-d245]: hendersonK in 1/(K·(% dry basis)^N), hendersonC in °C.
const (
	hendersonK = 2.2919e-5
	hendersonC = 195.267
	hendersonN = 2.0123
)

// WetSurface is the relative humidity above which the surface of malt counts
// as wet: the end of the data behind the sorption curve (published)
// [asabe-d245].
const WetSurface = 0.95

// Humidity gives the relative humidity, 0 to 1, of air at rest with malt of
// moisture x (kg/kg dry basis, 0 to 4) at t °C (−20 to 180):
// 1 − RH = exp(−K·(t + C)·M^N), M = 100·x, [asabe-d245]. Outside it returns a
// *[air.RangeError]. The data behind it end at 95 % and near 50 °C.
func (m Malt) Humidity(x, t float64) (float64, error) {
	if err := errors.Join(m.Check(), checkMoisture(x), checkTemperature(t)); err != nil {
		return 0, err
	}
	rh, _, _ := m.HumidityUnchecked(x, t)
	return rh, nil
}

// HumidityUnchecked gives what Humidity gives with its derivatives by moisture
// and by temperature. Below x = 0 it is continued as an odd function, which
// keeps it rising for a solver that steps over the edge.
func (m Malt) HumidityUnchecked(x, t float64) (rh, byX, byT float64) {
	return henderson(x, t, 1/m.sorptionScale())
}

// drowned is an exponent at which the humidity is 1 but for 1e-10.
const drowned = 23.0

func henderson(x, t, perScale float64) (rh, byX, byT float64) {
	sign := 1.0
	if x < 0 {
		sign, x = -1, -x
	}
	percent := max(100*x*perScale, 1e-6)
	if percent*percent*hendersonK*(t+hendersonC) > drowned {
		return sign, 0, 0
	}
	exponent := hendersonK * (t + hendersonC) * math.Exp(hendersonN*math.Log(percent))
	dry := math.Exp(-exponent)
	return sign * (1 - dry), 100 * perScale * dry * exponent * hendersonN / percent, sign * dry * exponent / (t + hendersonC)
}

// Equilibrium gives the moisture, kg/kg dry basis, to which malt at t °C (−20
// to 180) tends in air of relative humidity rh (0 to 0.95), the inverse of
// Humidity. Outside it returns a *[air.RangeError]: above 0.95 the surface
// counts as wet and there is no one equilibrium.
func (m Malt) Equilibrium(rh, t float64) (float64, error) {
	err := errors.Join(m.Check(), air.Within("relative humidity", rh, air.Share, 0, WetSurface), checkTemperature(t))
	if err != nil {
		return 0, err
	}
	percent := math.Pow(-math.Log1p(-rh)/(hendersonK*(t+hendersonC)), 1/hendersonN)
	return percent / 100 * m.sorptionScale(), nil
}
