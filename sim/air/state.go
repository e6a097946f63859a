package air

import (
	"errors"
	"math"
)

const (
	// MassRatio is the molar mass of water over that of dry air (published)
	// [ashrae-2017-ch1] eq. 20.
	MassRatio = 0.621945

	// gasConstant of dry air, J/(kg K) (published) [ashrae-2017-ch1] eq. 1.
	gasConstant = 287.042
)

// State is moist air. States from New, FromRH and FromWetBulb are within the
// range of the equations; one filled in by hand can be put to Check.
type State struct {
	T float64 // temperature, °C
	W float64 // humidity ratio, kg of water per kg of dry air
	P float64 // pressure, Pa
}

// New gives air of temperature t °C (−100 to 200), humidity ratio w kg/kg (nil
// up to saturation) and pressure p Pa (20 000 to 200 000). Outside it returns
// a *[RangeError].
func New(t, w, p float64) (State, error) {
	s := State{T: t, W: w, P: p}
	return s, s.Check()
}

// FromRH gives air of temperature t °C (−100 to 200), relative humidity rh (0
// to 1) and pressure p Pa (20 000 to 200 000). Outside, or when the vapour
// alone would reach the pressure, it returns a *[RangeError].
func FromRH(t, rh, p float64) (State, error) {
	err := errors.Join(
		Within("temperature", t, "°C", lowest, highest),
		Within("relative humidity", rh, Share, 0, 1),
		checkPressure(p),
	)
	if err != nil {
		return State{}, err
	}
	pv := rh * hylandWexler(t)
	if err := Within("vapour pressure", pv, "Pa", 0, mostVapour*p); err != nil {
		return State{}, err
	}
	return State{T: t, W: HumidityRatio(pv, p), P: p}, nil
}

// mostVapour is the largest share of the pressure that the vapour may take:
// beyond it the humidity ratio runs off to infinity.
const mostVapour = 0.99

// Check returns a *[RangeError] when the state lies outside what New accepts.
func (s State) Check() error {
	err := errors.Join(
		Within("temperature", s.T, "°C", lowest, highest),
		checkPressure(s.P),
	)
	if err != nil {
		return err
	}
	most := min(hylandWexler(s.T), mostVapour*s.P)
	return Within("humidity ratio", s.W, "kg/kg", 0, HumidityRatio(most, s.P)*(1+1e-12))
}

// HumidityRatio gives kg of water per kg of dry air for a vapour pressure pv
// and a total pressure p, both Pa: W = 0.621945·pv/(p − pv), [ashrae-2017-ch1]
// eq. 20, 0 ≤ pv < p; unchecked.
func HumidityRatio(pv, p float64) float64 { return MassRatio * pv / (p - pv) }

// VapourPressure gives the partial pressure of the vapour, Pa:
// p·W/(0.621945 + W), the inverse of HumidityRatio.
func (s State) VapourPressure() float64 { return s.P * s.W / (MassRatio + s.W) }

// RH gives the relative humidity, 0 to 1: vapour pressure over saturation
// pressure at T, over ice below 0.01 °C.
func (s State) RH() float64 { return s.VapourPressure() / Saturation(s.T) }

// Enthalpy gives J per kg of dry air, counted from dry air and liquid water at
// 0 °C: 1006·T + W·(2.501e6 + 1860·T), [ashrae-2017-ch1] eq. 30.
func (s State) Enthalpy() float64 {
	return DryAirHeat*s.T + s.W*VapourEnthalpy(s.T)
}

// Volume gives m³ of moist air per kg of dry air:
// 287.042·(T + 273.15)·(1 + W/0.621945)/P, [ashrae-2017-ch1] eq. 26.
func (s State) Volume() float64 {
	return gasConstant * (s.T + ZeroCelsius) * (1 + s.W/MassRatio) / s.P
}

// Density gives kg of moist air per m³: (1 + W)/Volume, [ashrae-2017-ch1] eq. 29.
func (s State) Density() float64 { return (1 + s.W) / s.Volume() }

// Viscosity gives that of dry air at t °C, Pa s: 1.458e-6·T^1.5/(T + 110.4), T in kelvin, the
// equation of Sutherland (handbook, from memory), −50 to 200 °C; unchecked.
func Viscosity(t float64) float64 {
	k := t + ZeroCelsius
	return 1.458e-6 * k * math.Sqrt(k) / (k + 110.4)
}

// DewPoint gives the temperature, °C, at which the vapour begins to condense
// (below 0.01 °C, to freeze out). Air with less vapour than saturates at
// −100 °C has no dew point here: a *[RangeError].
func (s State) DewPoint() (float64, error) { return boiling(s.VapourPressure()) }
