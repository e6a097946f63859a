package air

import (
	"errors"
	"math"
)

// FromWetBulb gives air of temperature t °C and wet bulb twb °C (both −100 to
// 200, twb no higher than t) at pressure p Pa (20 000 to 200 000),
// [ashrae-2017-ch1] eq. 33 above 0 °C of wet bulb and eq. 35 below. Outside,
// or for a wet bulb lower than that of bone-dry air, it returns a *[RangeError].
func FromWetBulb(t, twb, p float64) (State, error) {
	err := errors.Join(
		Within("temperature", t, "°C", lowest, highest),
		checkPressure(p),
	)
	if err != nil {
		return State{}, err
	}
	driest := bisectWetBulb(t, 0, p)
	if err := Within("wet bulb", twb, "°C", driest, min(t, boilingNear(p))); err != nil {
		return State{}, err
	}
	return State{T: t, W: max(0, ratioFromWetBulb(t, twb, p)), P: p}, nil
}

// WetBulb gives the temperature, °C, that a wet surface takes in this air: the
// thermodynamic wet bulb of [ashrae-2017-ch1] eq. 33 and 35, found by bisection
// to 1e-9 K. A state outside the equations returns a *[RangeError].
func (s State) WetBulb() (float64, error) {
	if err := s.Check(); err != nil {
		return 0, err
	}
	return bisectWetBulb(s.T, s.W, s.P), nil
}

// WetBulbNear gives what WetBulb gives, unchecked, for air whose wet bulb is
// known to be near guess °C and above freezing: Newton's method to 1e-7 K, with
// WetBulb's own bisection when that does not settle.
func (s State) WetBulbNear(guess float64) float64 {
	for range 8 {
		over := ratioFromWater(s.T, guess, s.P) - s.W
		const h = 1e-3
		step := over * h / (ratioFromWater(s.T, guess+h, s.P) - s.W - over)
		guess -= step
		if !(guess > 0 && guess < s.T) {
			break
		}
		if math.Abs(step) < 1e-5 { // the next step would be a thousandth of it
			return guess
		}
	}
	return bisectWetBulb(s.T, s.W, s.P)
}

// ratioFromWetBulb is the humidity ratio of air at t whose wet bulb is twb.
func ratioFromWetBulb(t, twb, p float64) float64 {
	if twb >= 0 {
		return ratioFromWater(t, twb, p)
	}
	return ratioFromIce(t, twb, p)
}

// ratioFromWater is [ashrae-2017-ch1] eq. 33: liquid water leaves the bulb.
// The coefficients are published, in kJ.
func ratioFromWater(t, twb, p float64) float64 {
	ws := HumidityRatio(Saturation(twb), p)
	return ((2501-2.326*twb)*ws - 1.006*(t-twb)) / (2501 + 1.86*t - 4.186*twb)
}

// ratioFromIce is [ashrae-2017-ch1] eq. 35: ice leaves the bulb. The
// coefficients are published, in kJ.
func ratioFromIce(t, twb, p float64) float64 {
	ws := HumidityRatio(Saturation(twb), p)
	return ((2830-0.24*twb)*ws - 1.006*(t-twb)) / (2830 + 1.86*t - 2.1*twb)
}

// bisectWetBulb solves ratioFromWetBulb for twb by bisection. Each of the two
// formulas rises with twb, but from ice to water the ratio steps down, so that
// a bulb a little below freezing has two answers; the bulb is taken as wet
// whenever it can be.
func bisectWetBulb(t, w, p float64) float64 {
	low, high, ratio := 0.0, min(t, boilingNear(p)), ratioFromWater
	if t < 0 || ratioFromWater(t, 0, p) > w {
		low, high, ratio = max(lowest, t-150), min(t, 0), ratioFromIce
	}
	for high-low > 1e-9 {
		mid := (low + high) / 2
		if ratio(t, mid, p) > w {
			high = mid
		} else {
			low = mid
		}
	}
	return (low + high) / 2
}

// boilingNear is the temperature, °C, at which the vapour takes mostVapour of
// the pressure: no wet bulb lies above it.
func boilingNear(p float64) float64 {
	return Boils(mostVapour * p)
}
