package records

import (
	"fmt"
	"math"
	"slices"

	"maltwright/lang/finding"
	"maltwright/lang/model"
)

const (
	boneDry, soaking = 0.06, 0.22 // moisture of raw grain
	apart            = 0.04       // of a sample from what the lot says
)

// sample finds a sample that cannot be of this grain, and gives the one to go by: where
// it is in doubt the lot knows better.
func (r *record) sample() *model.Sample {
	s := r.batch.Sample
	if s == nil || !(s.Wet.SI > 0) {
		return nil
	}
	w := 1 - s.Dry.SI/s.Wet.SI
	f := sampleDoubtful.At(s.Dry.Place, fmt.Sprintf("by the sample the raw grain holds %.3g %%", 100*w))
	switch g := r.batch.Process.Grain; {
	case w < boneDry:
		f.Message += ", and is bone dry"
	case w > soaking:
		f.Message += ", and is soaking wet"
	case g != nil && g.Moisture != nil && math.Abs(w-g.Moisture.SI) > apart:
		f.Message += fmt.Sprintf(", and the lot says %s", g.Moisture)
		f.Related = []finding.Related{{Place: g.Moisture.Place, Message: "the lot"}}
	default:
		return s
	}
	r.note(f)
	return nil
}

// twice finds a reading that stands there already.
func (r *record) twice() {
	list := r.batch.Readings
	for i := range list {
		k := slices.IndexFunc(list[:i], func(x model.Reading) bool { return same(&x, &list[i]) })
		if k < 0 {
			continue
		}
		f := writtenTwice.At(list[i].Place, "the same is written above")
		f.Related = []finding.Related{{Place: list[k].Place, Message: "here"}}
		r.slip(i, f)
	}
	r.cleanTwice()
	r.changedTwice()
}

// onceClean is how long two weighings of the clean malt are of one and the same, s: later
// it may have taken up water.
const onceClean = day

// cleanTwice notes malt that was weighed twice without its rootlets: the yield goes by the
// last.
func (r *record) cleanTwice() {
	list := r.batch.Readings
	for i := range list {
		x := &list[i]
		k := slices.IndexFunc(list[:i], func(y model.Reading) bool { return y.Clean && y.OfBag == x.OfBag })
		if !x.Clean || k < 0 || r.aside[i] || r.aside[k] || list[k].At.IsZero() || x.At.IsZero() || x.At.Sub(list[k].At.Time).Seconds() > onceClean {
			continue
		}
		f := writtenTwice.At(x.Place, fmt.Sprintf("the clean malt is weighed above already, as %s; the yield goes by this line, %s", list[k].Weight, x.Weight))
		f.Severity = finding.Note
		f.Related = []finding.Related{{Place: list[k].Place, Message: "here"}}
		r.note(f)
	}
}

// changedTwice finds a step that is changed twice, each time to another time, or to
// another heat.
func (r *record) changedTwice() {
	list := r.batch.Changes
	for i := range list {
		k := slices.IndexFunc(list[:i], func(c model.Change) bool { return sameStep(&c.Step, &list[i].Step) && c.To.Where == list[i].To.Where })
		if k < 0 {
			continue
		}
		f := writtenTwice.At(list[i].Place, fmt.Sprintf("%s is changed above already, to %s", stepWords(&list[i].Step), list[k].To.Range.Range))
		f.Related = []finding.Related{{Place: list[k].Place, Message: "here"}}
		r.note(f)
	}
}

func sameStep(a, b *model.StepName) bool { return a.Kind.Text == b.Kind.Text && a.Number == b.Number }

// same tells whether two lines are of the same look: one step, or one time, and the same
// value.
func same(a, b *model.Reading) bool {
	switch {
	case a.Kind != b.Kind || a.OfBag != b.OfBag || a.Clean != b.Clean || a.Counted.Text != b.Counted.Text || a.Rub.Text != b.Rub.Text:
		return false
	case (a.After == nil) != (b.After == nil):
		return false
	case a.After != nil && !sameStep(a.After, b.After):
		return false
	case a.After == nil && !a.Clean && !a.At.Equal(b.At.Time):
		return false
	case a.Weight != nil:
		return a.Weight.SI == b.Weight.SI
	case a.Temperature != nil:
		return a.Temperature.Where == b.Temperature.Where && a.Temperature.Low.SI == b.Temperature.Low.SI
	}
	return slices.EqualFunc(a.Corns, b.Corns, func(x, y model.Quantity) bool { return x.SI == y.SI })
}

// unweighed notes malt that came off the kiln and was never weighed.
func (r *record) unweighed() {
	list := r.batch.Readings
	if len(list) == 0 || slices.ContainsFunc(list, func(x model.Reading) bool { return x.Clean }) {
		return
	}
	last := &list[len(list)-1]
	if last.After == nil {
		return
	}
	switch last.After.Kind.Text {
	case string(model.Cool), string(model.Deculm):
		f := maltNotWeighed.At(last.Place, "the malt is off the kiln, and was not weighed without its rootlets")
		f.Severity = finding.Caution
		r.unweighedMalt(f)
	case string(model.Cure):
		r.unweighedMalt(maltNotWeighed.At(last.Place, "the record ends with the cure, and the malt is not weighed without its rootlets"))
	}
}

// unweighedMalt notes it with an example in the units of the process.
func (r *record) unweighedMalt(f finding.Finding) {
	f.Hint = r.batch.Process.Units().Retold(f.Hint)
	r.note(f)
}
