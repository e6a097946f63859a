// Package quality follows what heat does to malt: the enzymes that are left, the
// precursor of DMS, the colour.
//
// # How it works
//
// Each is a rate that depends on the temperature of the malt and on its moisture,
// integrated along the way of each layer through the kiln. All of them are
// indications, calibrated to practice: they rank two schedules well and say what a
// step costs, but they are no laboratory values, and every figure is shown with
// that standing.
//
// A [State] is a plain value: copy it with an assignment.
package quality

import (
	"maltwright/sim/air"
	"maltwright/sim/powers"
)

// State is one portion of malt.
type State struct {
	Diastatic float64 // share of the β-amylase of green malt that is left, 0 to 1
	Alpha     float64 // the same of α-amylase
	Precursor float64 // the same of the DMS precursor
	Colour    float64 // of the wort, EBC
	Modified  float64 // how far it was modified when it came to the kiln, 0 to 1
	Stewed    float64 // what stewing made that heat colours: 1 is all below 55 °C, 3 all from 65 °C on
	Used      float64 // how much of that is used up
	Faster    float64 // logarithm of how much faster it colours than by the equation: what that misses
}

// GreenColour is that of malt before any heat, EBC (calibrated to the palest malts
// in trade, 2.0 to 2.5 EBC).
const GreenColour = 2.0

// Green is malt before any heat, modified so far, 0 to 1.
func Green(modified float64) State {
	return State{Diastatic: 1, Alpha: 1, Precursor: 1, Colour: GreenColour, Modified: modified}
}

const (
	hour   = 3600.0
	minute = 60.0
)

// Step takes the malt on by dt seconds, during which its temperature goes from t0
// to t1 °C and its moisture from w0 to w1 (wet basis, 0 to 1), each in a straight
// line; stewed tells that it lies with the flaps shut. Colour is formed at the rate of
// chalky malt times modification/0.85, and with it goes what is left of what stewing made: for each EBC a
// share of 1.45 of it, and 19.5 EBC come of all of it. Colour tends to 1500 EBC. Rates are
// taken by the rule of Simpson, so a step should change the temperature by a few kelvin at most.
// Outside −20 to 260 °C or 0 to 1 it returns a *[air.RangeError] and leaves the state as it was.
func (s *State) Step(dt, t0, t1, w0, w1 float64, stewed bool) error {
	for _, t := range [...]float64{t0, t1} {
		if err := air.Within("temperature of the malt", t, "°C", -20, 260); err != nil {
			return err
		}
	}
	for _, w := range [...]float64{w0, w1} {
		if err := air.Within("moisture, wet basis", w, air.Share, 0, 1); err != nil {
			return err
		}
	}
	if err := air.Within("step", dt, "s", 0, 30*86400); err != nil {
		return err
	}
	s.Diastatic *= powers.Exp(-simpson(diastaticLoss, dt, t0, t1, w0, w1))
	s.Alpha *= powers.Exp(-simpson(alphaLoss, dt, t0, t1, w0, w1))
	s.Precursor *= powers.Exp(-simpson(PrecursorRate, dt, t0, t1, w0, w1))
	usual.Step(s, dt, t0, t1, w0, w1, stewed)
	return nil
}

// simpson is the integral of a rate over dt seconds, temperature and moisture in straight lines.
func simpson(rate func(t, w float64) float64, dt, t0, t1, w0, w1 float64) float64 {
	return dt * (rate(t0, w0) + 4*rate((t0+t1)/2, (w0+w1)/2) + rate(t1, w1)) / 6
}

// Mean is the mean of several portions of equal weight; of none it is the zero State.
func Mean(list []State) State {
	var m State
	for _, s := range list {
		n := float64(len(list))
		m.Diastatic += s.Diastatic / n
		m.Alpha += s.Alpha / n
		m.Precursor += s.Precursor / n
		m.Colour += s.Colour / n
		m.Modified += s.Modified / n
		m.Stewed += s.Stewed / n
		m.Used += s.Used / n
		m.Faster += s.Faster / n
	}
	return m
}
