package outlook

import (
	"maltwright/lang/model"
	"maltwright/sim/ensemble"
	"maltwright/sim/forecast"
)

// Trouble is something that a forecast met, to be put into words.
type Trouble struct{ Of forecast.Trouble }

// Told marks it as put into words.
func (Trouble) Told() {}

// Caution is something that can hurt somebody, to be put into words.
type Caution forecast.Caution

// Told marks it as put into words.
func (Caution) Told() {}

// Assumption is something that was taken for granted, or used of what a house has learnt:
// what it is of, its value with a unit, and where that comes from.
type Assumption struct{ What, Value, Why Taken }

// Taken is one part of the words of an assumption.
type Taken struct {
	Of   forecast.Assumption
	Part Part
}

// Told marks it as put into words.
func (Taken) Told() {}

// Open is something that a process leaves open, Learn what to do to know it.
type (
	Open  ensemble.Open
	Learn ensemble.Open
)

// Told marks it as put into words.
func (Open) Told() {}

// Told marks it as put into words.
func (Learn) Told() {}

// Ends is a corner of the bands of a site.
type Ends []ensemble.End

// Told marks it as put into words.
func (Ends) Told() {}

// Unkept is a gate of a stage or, without one, a promise that does not hold.
type Unkept struct{ Stage, Text string }

// Told marks it as put into words.
func (Unkept) Told() {}

// Part is a part of the words of an assumption.
type Part int

// The parts.
const (
	What Part = iota
	Value
	Why
)

func AssumptionOf(a forecast.Assumption) Assumption {
	return Assumption{Taken{a, What}, Taken{a, Value}, Taken{a, Why}}
}

// CautionsOf lists those of a process.
func CautionsOf(p *model.Process) []Caution {
	out := []Caution{}
	for _, c := range forecast.Cautions(p) {
		out = append(out, Caution(c))
	}
	return out
}
