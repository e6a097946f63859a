package model

import (
	"time"

	"maltwright/lang/source"
)

// Batch is the record of one batch.
type Batch struct {
	Name     string
	Place    source.Place
	Scope    source.Place // the whole of it
	Process  *Process     // nil where the record names none that is known
	Began    Instant      // zero where it is not said
	Sample   *Sample
	Bag      *Quantity // raw grain in the marked bag; nil where the record does not say: see RawBag
	Tare     *Quantity // of the bag where there is one, otherwise of the vessel
	BagsTare bool      // it is that of the bag
	Readings []Reading // as they are written, which is the order of the clock
	Changes  []Change
	Broken   bool // some of it did not read

	From    *Taken  // its own charge; nil where it is that of the process
	Lots    []Taken // of which that is mixed; none where it is of one lot
	Pinned  *Pin
	Today   *Process // as it stands, where the batch goes by the text that it was begun by; else nil
	Since   []string // what is otherwise in it, a line each
	Remarks []Remark
	Tested  []Tested
}

// Instant is a time of the clock on the wall, in the zone of this computer, and
// where it is written.
type Instant struct {
	time.Time
	Place source.Place
}

// Sample is a sample of the raw grain and what it weighs when it is dry.
type Sample struct{ Wet, Dry Quantity }

// StepName names a step as the forecast does: the soaks of a steep are counted
// through all its repeats.
type StepName struct {
	Kind   Word
	Number int // from 1; 0 where it is not said
	Place  source.Place
}

// A batch can weigh between these parts of its raw weight. Grain of 12 % moisture
// that takes up water until it holds 60 %, more than grain can, weighs 2.2 times as
// much; malt without rootlets and without any water keeps more than 0.6 of it.
const (
	Lightest = 0.5
	Heaviest = 2.5

	LightestOfGreen = 0.3 // of green malt, half of which and more is water
)

// RawBag is the raw grain in the marked bag, as the record says or else its process; nil
// where there is no bag.
func (t *Batch) RawBag() *Quantity {
	if t.Bag == nil && t.Process != nil {
		return t.Process.Bag
	}
	return t.Bag
}

// BagTare is the tare of the bag, nil where the record has none or it is that of a vessel.
func (t *Batch) BagTare() *Quantity {
	if t.BagsTare {
		return t.Tare
	}
	return nil
}

// TareOf is the tare that a weighing holds, nil where it holds none. One that says in
// what the grain was weighed holds none but that of the bag.
func (t *Batch) TareOf(x *Weighed) *Quantity {
	switch of := t.BagTare(); {
	case x.OfBag:
		return of
	case of == nil && x.In == nil:
		return t.Tare
	}
	return nil
}

// Empty is what stood on the scale beside the grain of a weighing, kg: the tare, and what
// it was weighed in.
func (t *Batch) Empty(x *Weighed) (kg float64) {
	if tare := t.TareOf(x); tare != nil {
		kg = tare.SI
	}
	if x.In != nil && x.In.Weighs != nil {
		kg += x.In.Weighs.SI
	}
	return kg
}

// ScaleOf is the scale of a weighing: the one that it names, or the only one of the
// house, if the line says what stood on it or the scale takes so much; nil where it is not known.
func (t *Batch) ScaleOf(x *Weighed) *Scale {
	if x.On != nil || t.Process == nil || t.Process.House == nil || len(t.Process.House.Scales) != 1 {
		return x.On
	}
	if s := t.Process.House.Scales[0]; x.In != nil || s.Takes(x.Weight.SI) {
		return s
	}
	return nil
}

// Net gives what the grain of a weighing weighs by itself, kg, and the raw
// grain that it was, nil where that is not said. It is false for a weight that the
// grain cannot have: below a half of the raw grain, or above 2.5 times as much.
func (t *Batch) Net(x *Weighed) (net float64, raw *Quantity, can bool) {
	net = x.Weight.SI - t.Empty(x)
	raw, can = t.bounds(x, net)
	return net, raw, can
}

// CanWeigh tells whether the grain of a weighing can weigh so much by itself, kg, as Net does.
func (t *Batch) CanWeigh(x *Weighed, net float64) bool {
	_, can := t.bounds(x, net)
	return can
}

func (t *Batch) bounds(x *Weighed, net float64) (raw *Quantity, can bool) {
	switch {
	case x.OfBag:
		raw = t.RawBag()
	case t.Process != nil:
		raw = t.Process.Charge
	}
	least := Lightest
	if t.Process != nil && t.Process.Grain.Grown() {
		least = LightestOfGreen
	}
	return raw, raw == nil || net >= least*raw.SI && net <= Heaviest*raw.SI
}
