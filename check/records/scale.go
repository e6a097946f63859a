package records

import (
	"fmt"
	"math"

	"maltwright/lang/finding"
	"maltwright/lang/model"
	"maltwright/lang/quantity"
)

// scales holds each weight against the scale that it was read on.
func (r *record) scales() {
	for i, x := range r.batch.Readings {
		w, ok := x.(*model.Weighed)
		if !ok {
			continue
		}
		s := r.batch.ScaleOf(w)
		switch {
		case s == nil || w.In == nil && w.On == nil: // drained grain may have been weighed in two goes
		case !s.Takes(w.Weight.SI):
			r.slip(i, beyondScale(w, s))
		case finer(w, s):
			f := readingDoubtful.At(w.Weight.Place, fmt.Sprintf("%s is finer than scale %q shows: its division is %s", w.Weight, s.Name, s.Division))
			f.Severity, f.Hint = finding.Note, "look at the number, and whether it was read on that scale"
			f.Related = []finding.Related{{Place: s.Place, Message: "the scale"}}
			r.note(f)
		}
	}
}

func beyondScale(w *model.Weighed, s *model.Scale) finding.Finding {
	f := readingDoubtful.At(w.Weight.Place, fmt.Sprintf("%s is more than scale %q can weigh, %s", weightWords(w), s.Name, s.Holds))
	f.Hint = "look at the number, and at what the scale holds; write a batch that was weighed in two goes without in and on, as drained grain"
	f.Related = []finding.Related{{Place: s.Place, Message: "the scale"}}
	return f
}

// finer tells whether a weight in the units of its scale lies between two of its marks.
func finer(w *model.Weighed, s *model.Scale) bool {
	if s.Division == nil || s.Division.SI <= 0 || (quantity.British(w.Weight.Unit()) != "") != (quantity.British(s.Division.Unit()) != "") {
		return false
	}
	marks := w.Weight.SI / s.Division.SI
	return math.Abs(marks-math.Round(marks)) > offMark
}

// offMark is by how much of a division a weight may miss its mark by the rounding of units.
const offMark = 0.01
