package records

import (
	"fmt"
	"math"
	"slices"

	"maltwright/lang/finding"
	"maltwright/lang/process"
)

const (
	boneDry, soaking = 0.06, 0.22 // moisture of raw grain
	apart            = 0.04       // of a sample from what the lot says
)

// sample finds a sample that cannot be of this grain, and gives the one to go by: where
// it is in doubt the lot knows better.
func (r *record) sample() *process.Sample {
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
		k := slices.IndexFunc(list[:i], func(x process.Reading) bool { return same(&x, &list[i]) })
		if k < 0 {
			continue
		}
		f := writtenTwice.At(list[i].Place, "the same is written above")
		f.Related = []finding.Related{{Place: list[k].Place, Message: "here"}}
		r.slip(i, f)
	}
}

// same tells whether two lines are of the same look: one step, or one time, and the same
// value.
func same(a, b *process.Reading) bool {
	switch {
	case a.Kind != b.Kind || a.OfBag != b.OfBag || a.Clean != b.Clean || a.Counted.Text != b.Counted.Text || a.Rub.Text != b.Rub.Text:
		return false
	case (a.After == nil) != (b.After == nil):
		return false
	case a.After != nil && (a.After.Kind.Text != b.After.Kind.Text || a.After.Number != b.After.Number):
		return false
	case a.After == nil && !a.Clean && !a.At.Equal(b.At.Time):
		return false
	case a.Weight != nil:
		return a.Weight.SI == b.Weight.SI
	case a.Temperature != nil:
		return a.Temperature.Where == b.Temperature.Where && a.Temperature.Low.SI == b.Temperature.Low.SI
	}
	return slices.EqualFunc(a.Corns, b.Corns, func(x, y process.Quantity) bool { return x.SI == y.SI })
}

// unweighed notes malt that came off the kiln and was never weighed.
func (r *record) unweighed() {
	list := r.batch.Readings
	if len(list) == 0 || slices.ContainsFunc(list, func(x process.Reading) bool { return x.Clean }) {
		return
	}
	last := &list[len(list)-1]
	if last.After == nil {
		return
	}
	switch last.After.Kind.Text {
	case string(process.Cool), string(process.Deculm):
		f := maltNotWeighed.At(last.Place, "the malt is off the kiln, and was not weighed without its rootlets")
		f.Severity = finding.Caution
		r.note(f)
	case string(process.Cure):
		r.note(maltNotWeighed.At(last.Place, "the record ends with the cure, and the malt is not weighed without its rootlets"))
	}
}
