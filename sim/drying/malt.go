package drying

import (
	"errors"

	"maltwright/sim/air"
)

// Malt is the house's malt of one species, a [Material]. The zero value is
// malt of barley with the published constants.
type Malt struct {
	// Cereal holds the figures of the species; nil means those of barley. It
	// is read only.
	Cereal *Cereal

	// Factor multiplies every drying rate. It is the house's drying factor,
	// what a weighing corrects; nil means 1. Its spread between houses is taken
	// as 0.2 (calibrated).
	Factor *float64

	// Shift moves the equilibrium moisture, kg/kg dry basis, at 20 °C and 60 %
	// relative humidity, and in proportion elsewhere, so that bone-dry air still
	// means bone-dry malt.
	Shift float64

	// Late multiplies the rate of bound water, and that of free water not at
	// all: what the equations miss. nil means 1.
	Late *float64
}

var _ Material = Malt{}

// Check returns a *[air.RangeError] unless Factor and Late are nil or 0.05 to 20, Shift
// is −0.05 to 0.05 and the figures of the cereal mean something.
func (m Malt) Check() error {
	return errors.Join(
		m.figures().check(),
		air.Within("drying factor", m.factor(), "", 0.05, 20),
		air.Within("late drying", m.late(), "", 0.05, 20),
		air.Within("shift of sorption", m.Shift, "kg/kg", -0.05, 0.05),
	)
}

// Packing gives how the malt lies.
func (m Malt) Packing() Packing { return m.figures().Packing }

func (m Malt) figures() *Cereal {
	if m.Cereal == nil {
		return &ofBarley
	}
	return m.Cereal
}

func (m Malt) factor() float64 {
	if m.Factor == nil {
		return 1
	}
	return *m.Factor
}

// sorptionScale is what Shift does to every equilibrium moisture.
func (m Malt) sorptionScale() float64 { return 1 + m.Shift/m.figures().Reference }

// Bound gives the malt with a factor of its own for the rate of bound water, nil
// meaning 1.
func (m Malt) Bound(late *float64) Malt {
	m.Late = late
	return m
}

// With gives the malt with a house's own drying factor, nil meaning 1, and what
// its equilibrium moisture stands above that of the species, kg/kg dry basis,
// at 20 °C and 60 % relative humidity.
func (m Malt) With(factor *float64, shift float64) Malt {
	m.Factor, m.Shift = factor, shift+m.Shift
	return m
}
