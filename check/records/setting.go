package records

import (
	"fmt"
	"math"

	"maltwright/lang/finding"
	"maltwright/lang/model"
	"maltwright/lang/vocabulary"
)

// How surely a reading falls into a step, s: the kiln needs its time to come to a heat,
// and a step is written down as ended when somebody comes by.
const (
	warmsUp   = 40 * 60
	comesBy   = 15 * 60
	sinceLast = 30 * 60 // behind the end of the step before
)

// offSetting finds a reading of the air onto the malt, or of an oven, that is far from
// what the kiln is held at, in a step of which the record itself tells when it was.
func (r *record) offSetting(h *held, i int) {
	o := &h.trial.Observations[i]
	x := o.Reading
	read := model.Thermometer(x)
	if r.aside[h.seats[i]] || read == nil || x.When().IsZero() || read.Where != vocabulary.PlaceAirOn && read.Where != vocabulary.PlaceOven {
		return
	}
	for _, end := range r.batch.Readings {
		s := r.heldUntil(end)
		if s == nil || s.At.Where != read.Where || !r.surelyIn(x, end, s.For.SI) {
			continue
		}
		low, high := s.At.Low.SI-zeroC, s.At.High.SI-zeroC
		if e := o.Expect(h.centre, 0); !math.IsNaN(e) { // the heater may not come to it
			low, high = min(low, e), max(high, e)
		}
		if math.Abs(beyond(o, low, high)) <= far {
			return
		}
		said, place := words(x)
		f := readingDoubtful.At(place, fmt.Sprintf("%s: the %s was then under way, and it is held at %s", said, stepWords(model.After(end)), s.At.Place.Text()))
		if slip := r.slipOf(h, i); slip != "" {
			f.Hint = slip
		}
		f.Related = []finding.Related{{Place: end.Place(), Message: "the line that ends it"}}
		r.slip(h.seats[i], f)
		return
	}
}

// heldUntil gives the step that a line ends, where it is held at one heat for a time that
// is given, and nothing of it was changed; or nil.
func (r *record) heldUntil(x model.Reading) *model.Heated {
	after := model.After(x)
	if after == nil || x.When().IsZero() {
		return nil
	}
	k := r.at(after)
	if k < 0 {
		return nil
	}
	s := model.HeatedOf(r.steps[k].step)
	if s == nil || s.For == nil || s.At == nil || s.From != nil {
		return nil
	}
	for _, c := range r.batch.Changes {
		if c.Step.Kind.Text == after.Kind.Text {
			return nil
		}
	}
	return s
}

// surelyIn tells whether a reading falls into the step of so many seconds that a line ends,
// well behind its beginning and behind the end of the step before it.
func (r *record) surelyIn(x, end model.Reading, lasts float64) bool {
	before := end.When().Sub(x.When().Time).Seconds()
	if before < comesBy || before > lasts-warmsUp {
		return false
	}
	for _, y := range r.batch.Readings {
		if model.After(y) != nil && y != end && !y.When().IsZero() && y.When().Before(end.When().Time) && x.When().Sub(y.When().Time).Seconds() < sinceLast {
			return false
		}
	}
	return true
}
