package pneumatic

import (
	"errors"
	"math"

	"maltwright/sim/air"
)

// Lever is what a controller moves to keep the bed at a temperature.
type Lever int

// The levers.
const (
	AirOn   Lever = iota // temperature of air-on, at the flow asked for
	Airflow              // the flow, at the air-on asked for
)

// Follow keeps the mean of the bed at T by one lever, whatever Supply asks of that lever.
// It gives the bed the heat balance that brings it there with a time constant of an
// hour, as far as the lever goes.
type Follow struct {
	T           float64 // °C, 0 to 45
	By          Lever
	Least, Most float64 // of the lever: °C, 0 to 45, or m³/s
}

// followTime, s: a controller of a bed is slower than its air, common practice.
const followTime = hour

func (f *Follow) check(area float64) error {
	if f == nil {
		return nil
	}
	err := errors.Join(
		air.Within("temperature that the bed is led to", f.T, "°C", lowestBed, highestBed),
		air.Within("lever", float64(f.By), "", float64(AirOn), float64(Airflow)))
	if f.By == Airflow {
		err = errors.Join(err, checkFlow("least airflow", f.Least, area, slowest), checkFlow("most airflow", f.Most, area, slowest))
	} else {
		err = errors.Join(err,
			air.Within("coolest air-on", f.Least, "°C", lowestBed, highestBed),
			air.Within("warmest air-on", f.Most, "°C", lowestBed, highestBed))
	}
	if err == nil && f.Least > f.Most {
		return &air.RangeError{Quantity: "least of the lever", Value: f.Least, Unit: map[Lever]string{AirOn: "°C", Airflow: "m³/s"}[f.By], High: f.Most}
	}
	return err
}

// lead gives the air-on, °C, and the flow, m³/s, that follow the bed, which wants so
// much carried off, W, by air that leaves it with offH J and offW kg per kg. Water
// that leaves takes what heat it had in the bed, at mean °C, with it: that cools
// nothing.
func (s *supplied) lead(wanted, mean, offH, offW float64) (t, flow float64) {
	f := s.Follow
	p := s.plant(s.Flow, mixture{})
	carried := func(t float64) float64 { // W, by the flow asked for, of air of t °C
		on := air.State{T: t, W: s.ratio(s.RH * air.Saturation(t)), P: s.pressure}
		return p.dryAir(on) * (offH - on.Enthalpy() - (offW-on.W)*air.WaterHeat*mean)
	}
	if f.By == Airflow {
		each := carried(s.T) / s.Flow // J/m³
		switch {
		case wanted <= 0:
			return s.T, f.Least
		case each*f.Most <= wanted:
			return s.T, f.Most
		}
		return s.T, max(f.Least, wanted/each)
	}
	return falling(func(t float64) float64 { return carried(t) - wanted }, f.Least, f.Most), s.Flow
}

// falling finds where a falling function is nil between two values, to 1e-6, or the end
// that is nearer to it: false position in Illinois' variant.
func falling(f func(float64) float64, low, high float64) float64 {
	atLow, atHigh := f(low), f(high)
	switch {
	case atLow <= 0:
		return low
	case atHigh >= 0:
		return high
	}
	at, side := low, 0
	for range 60 {
		before := at
		at = low + (high-low)*atLow/(atLow-atHigh)
		switch y := f(at); {
		case math.Abs(at-before) < 1e-7:
			return at
		case y > 0:
			if low, atLow = at, y; side > 0 {
				atHigh /= 2
			}
			side = 1
		default:
			if high, atHigh = at, y; side < 0 {
				atLow /= 2
			}
			side = -1
		}
	}
	return at
}
