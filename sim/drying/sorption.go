package drying

import (
	"errors"
	"math"

	"maltwright/sim/air"
	"maltwright/sim/powers"
)

// WetSurface is the relative humidity above which the surface of malt counts
// as wet: the end of the data behind the sorption curve (published)
// [asabe-d245].
const WetSurface = 0.95

// Humidity gives the relative humidity, 0 to 1, of air at rest with a material
// of moisture x (kg/kg dry basis, 0 to 4) at t °C (−20 to 180). Outside it
// returns a *[air.RangeError].
func Humidity(m Material, x, t float64) (float64, error) {
	if err := errors.Join(m.Check(), checkMoisture(x), checkTemperature(t)); err != nil {
		return 0, err
	}
	rh, _, _ := m.Humidity(x, t)
	return rh, nil
}

// Equilibrium gives the moisture, kg/kg dry basis, to which a material at t °C
// (−20 to 180) tends in air of relative humidity rh (0 to 0.95), the inverse of
// Humidity. Outside it returns a *[air.RangeError]: above 0.95 the surface
// counts as wet and there is no one equilibrium.
func Equilibrium(m Material, rh, t float64) (float64, error) {
	err := errors.Join(m.Check(), air.Within("relative humidity", rh, air.Share, 0, WetSurface), checkTemperature(t))
	if err != nil {
		return 0, err
	}
	return m.Equilibrium(rh, t), nil
}

// Humidity gives the relative humidity with its derivatives by the modified
// Henderson equation, 1 − RH = exp(−K·(t + C)·M^N), M = 100·x, [asabe-d245];
// its data end at 95 % and near 50 °C. Below x = 0 it is continued as an odd
// function.
func (m Malt) Humidity(x, t float64) (rh, byX, byT float64) {
	return m.figures().henderson(x, t, 1/m.sorptionScale())
}

// Equilibrium gives the inverse of Humidity.
func (m Malt) Equilibrium(rh, t float64) float64 {
	c := m.figures()
	percent := math.Pow(-math.Log1p(-rh)/(c.HendersonK*(t+c.HendersonC)), 1/c.HendersonN)
	return percent / 100 * m.sorptionScale()
}

// Wet gives the moisture of a wet surface, kg/kg dry basis, and a bound of the
// slope of Humidity.
func (m Malt) Wet() (from, steepest float64) {
	c := m.figures()
	return c.WetFrom, c.Steepest
}

// drowned is an exponent at which the humidity is 1 but for 1e-10.
const drowned = 23.0

func (c *Cereal) henderson(x, t, perScale float64) (rh, byX, byT float64) {
	sign := 1.0
	if x < 0 {
		sign, x = -1, -x
	}
	percent := max(100*x*perScale, 1e-6)
	if percent*percent*c.HendersonK*(t+c.HendersonC) > drowned {
		return sign, 0, 0
	}
	exponent := c.HendersonK * (t + c.HendersonC) * powers.Exp(c.HendersonN*powers.Log(percent))
	dry := powers.Exp(-exponent)
	return sign * (1 - dry), 100 * perScale * dry * exponent * c.HendersonN / percent, sign * dry * exponent / (t + c.HendersonC)
}
