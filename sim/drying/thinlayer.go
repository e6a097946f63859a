package drying

import (
	"errors"
	"math"

	"maltwright/sim/air"
)

// Hold is one step of a schedule for a thin layer: so many seconds in air of
// so many °C.
type Hold struct{ T, Seconds float64 }

// LayerTolerance is the largest error, kg/kg dry basis, that ThinLayer allows
// itself over a step of its integration.
const LayerTolerance = 1e-7

// ThinLayer gives the moisture, kg/kg dry basis, to which a single layer of
// kernels of moisture x (0 to 4) comes by the schedule, in so strong an air that
// the kernels have its temperature: dX/dt = −k(X, T)·(X − Xe(RH, T)). Only the
// vapour pressure of the air is carried along: vapour, Pa, 0 to 20 000, fixes
// the relative humidity at each temperature. A value outside, a temperature
// outside −20 to 180 °C, or air so damp at it that the surface counts as wet
// is a *[air.RangeError].
func ThinLayer(m Material, x, vapour float64, schedule ...Hold) (float64, error) {
	err := errors.Join(m.Check(), checkMoisture(x), air.Within("vapour pressure", vapour, "Pa", 0, 20e3))
	for _, hold := range schedule {
		if err != nil {
			return 0, err
		}
		x, err = held(m, x, vapour, hold)
	}
	return x, err
}

func held(m Material, x, vapour float64, hold Hold) (float64, error) {
	if err := air.Within("duration", hold.Seconds, "s", 0, 1e8); err != nil {
		return 0, err
	}
	if err := checkTemperature(hold.T); err != nil {
		return 0, err
	}
	end, err := Equilibrium(m, vapour/air.Saturation(hold.T), hold.T)
	if err != nil {
		return 0, err
	}
	return relax(m, x, end, hold), nil
}

// relax integrates by exact relaxation over the step with the rate at its
// middle, and takes the difference from two half steps as the error.
func relax(m Material, x, end float64, hold Hold) float64 {
	for at, step := 0.0, min(60, hold.Seconds); at < hold.Seconds; {
		step = min(step, hold.Seconds-at)
		whole := midpoint(m, x, end, hold.T, step)
		halves := midpoint(m, midpoint(m, x, end, hold.T, step/2), end, hold.T, step/2)
		miss := math.Abs(whole - halves)
		if miss <= LayerTolerance {
			x, at = halves, at+step
		}
		step *= max(0.2, min(2, 0.9*math.Cbrt(LayerTolerance/max(miss, 1e-12))))
	}
	return x
}

func midpoint(m Material, x, end, t, step float64) float64 {
	k, _, _ := m.Rate(x, t)
	middle := end + (x-end)*math.Exp(-k*step/2)
	k, _, _ = m.Rate(middle, t)
	return end + (x-end)*math.Exp(-k*step)
}
