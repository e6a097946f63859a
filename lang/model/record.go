package model

import (
	"slices"
	"time"

	"maltwright/lang/quantity"
	"maltwright/lang/source"
)

// Taken is the charge of a batch that stands in its own record, in the place of that of
// its process.
type Taken struct {
	Place  source.Place
	Weight *Quantity
	Grain  *Grain
	Other  *Quantity // the charge of the process; nil where that has none
}

// Pin says by which text of its process a batch was begun.
type Pin struct {
	Place    source.Place
	Print    Word // the fingerprint of that text
	Revision Word // of git, in which it stands; empty where none does
}

// Remark is something that was noticed, in words.
type Remark struct {
	Seen
	Text Word
}

// Tested is what a laboratory found in the finished malt.
type Tested struct {
	Seen
	What   Word // moisture, extract ...
	Found  Quantity
	Method Word // empty where it is not said
}

// Lines are all that was seen and has a time or a step: readings, remarks and analyses.
func (t *Batch) Lines() []Dated {
	var list []Dated
	for _, x := range t.Readings {
		list = append(list, x)
	}
	for i := range t.Remarks {
		list = append(list, &t.Remarks[i])
	}
	for i := range t.Tested {
		list = append(list, &t.Tested[i])
	}
	return list
}

// Dated is a line of a record that says when it was.
type Dated interface {
	Place() source.Place
	When() Instant
}

// TestOf gives the last analysis of a kind of the finished malt, nil where there is none.
func (t *Batch) TestOf(what string) *Tested {
	for i := len(t.Tested) - 1; i >= 0; i-- {
		if t.Tested[i].What.Text == what && !(what == testedMoisture && t.Unfinished(&t.Tested[i])) {
			return &t.Tested[i]
		}
	}
	return nil
}

// Unfinished tells whether an analysis was made before the malt was: a later line says that
// a step before the cooling had ended.
func (t *Batch) Unfinished(x *Tested) bool {
	return slices.ContainsFunc(t.Readings, func(y Reading) bool {
		after := After(y)
		return after != nil && after.Kind.Text != string(CoolStep) && after.Kind.Text != string(DeculmStage) && y.When().After(x.When().Time)
	})
}

// MadeBy says by which process the batch is made. Where it has a charge of its own it is
// made by a copy of the process with that charge.
func (t *Batch) MadeBy(p *Process) {
	t.Process = p
	if p == nil || t.From == nil {
		return
	}
	own := *p
	t.From.Other = p.Charge
	if t.From.Weight != nil {
		own.Charge = t.From.Weight
	}
	if t.From.Grain != nil {
		own.Grain, own.Lots = t.From.Grain, t.Lots
	}
	t.Process = &own
}

// OwnCharge tells whether the batch has another charge than its process.
func (t *Batch) OwnCharge() bool {
	return t.From != nil && t.From.Weight != nil && (t.From.Other == nil || t.From.Other.SI != t.From.Weight.SI)
}

// Came is how much of the lot came in, in the unit of its first delivery; false where
// nothing says it.
func (g *Grain) Came() (in Quantity, ok bool) {
	if len(g.Delivered) == 0 {
		return in, false
	}
	in = g.Delivered[0].Weight
	if len(g.Delivered) == 1 {
		return in, true
	}
	sum := 0.0
	for _, d := range g.Delivered {
		sum += d.Weight.SI
	}
	if more, err := quantity.In(sum, in.Unit()); err == nil {
		in.Quantity = more
	} else {
		in.SI = sum
	}
	return in, true
}

// CameBy is how much of the lot had come in by the day of a time, kg. Of a delivery without
// a date, and at a time that is not known, it is taken that it was there.
func (g *Grain) CameBy(at time.Time) (kg float64) {
	for _, d := range g.Delivered {
		if CameBy(d.On.Text, at) {
			kg += d.Weight.SI
		}
	}
	return kg
}

// CameBy tells whether what came in on a date, as written, was there at a time.
func CameBy(on string, at time.Time) bool {
	return on == "" || at.IsZero() || on <= at.Format(time.DateOnly)
}

// Delivery is grain of a lot that came in.
type Delivery struct {
	Place  source.Place
	Weight Quantity
	From   Word
	On     Word // the date as written
	As     Word // the number of the delivery
}
