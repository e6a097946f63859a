package model

import "maltwright/lang/source"

// Reading is one thing seen in the course of a batch: one of *Weighed, *Counted, *Felt,
// *Read and *Turned; and a *Tested where a laboratory's figure is held beside the others.
type Reading interface {
	Place() source.Place
	When() Instant // zero where only the step is said
	reading()
}

// Seen is where a reading is written, and when it was made.
type Seen struct {
	Written
	At Instant // zero where only the step is said
	By Word    // who made it; empty where it is not said
}

// When is the time of the reading.
func (s Seen) When() Instant { return s.At }

// Weighed is a weight of the batch, or of its bag.
type Weighed struct {
	Seen
	After  *StepName // the step that had just ended; nil where it is not said
	Weight Quantity
	In     *Holder // what stood on the scale with it; nil where the weight is that of the drained grain
	On     *Scale  // nil where it is not said
	OfBag  bool
	Clean  bool // without rootlets
}

// Counted is a count of kernels: of chit one number, of the acrospire one for each class.
type Counted struct {
	Seen
	What    Word // chit or acrospire
	Kernels []Quantity
	Of      *Quantity // kernels looked at; nil where it is not said
}

// Felt is what a kernel did when it was rubbed out.
type Felt struct {
	Seen
	Rub Word
}

// Read is what a thermometer showed.
type Read struct {
	Seen
	Temperature Temperature
}

// Turned says that the piece was turned.
type Turned struct{ Seen }

func (*Weighed) reading() {}
func (*Counted) reading() {}
func (*Felt) reading()    {}
func (*Read) reading()    {}
func (*Turned) reading()  {}
func (*Tested) reading()  {}

// Chit and Acrospire are what can be counted.
const (
	Chit      = "chit"
	Acrospire = "acrospire"
)

// After is the step that had just ended at a reading, nil where it does not say.
func After(x Reading) *StepName {
	if w, ok := x.(*Weighed); ok {
		return w.After
	}
	return nil
}

// Weight is what a reading weighs, nil for every other reading.
func Weight(x Reading) *Quantity {
	if w, ok := x.(*Weighed); ok {
		return &w.Weight
	}
	return nil
}

// OfBag tells whether it is the bag that was weighed.
func OfBag(x Reading) bool {
	w, ok := x.(*Weighed)
	return ok && w.OfBag
}

// Clean tells whether malt was weighed without its rootlets.
func Clean(x Reading) bool {
	w, ok := x.(*Weighed)
	return ok && w.Clean
}

// CountOf is the count of kernels that a reading is, nil where it is none of what.
func CountOf(x Reading, what string) *Counted {
	if c, ok := x.(*Counted); ok && c.What.Text == what {
		return c
	}
	return nil
}

// Counts is what a reading counts, chit or acrospire, "" where it counts nothing.
func Counts(x Reading) string {
	if c, ok := x.(*Counted); ok {
		return c.What.Text
	}
	return ""
}

// Rub is what a kernel did under the finger, "" for every other reading.
func Rub(x Reading) string {
	if f, ok := x.(*Felt); ok {
		return f.Rub.Text
	}
	return ""
}

// Thermometer is what a thermometer showed, nil for every other reading.
func Thermometer(x Reading) *Temperature {
	if r, ok := x.(*Read); ok {
		return &r.Temperature
	}
	return nil
}
