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
	withered, soft   = 0.25, 0.55 // of green malt
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
	g := r.batch.Process.Grain
	what, least, most := "raw grain", boneDry, soaking
	if g.Grown() {
		what, least, most = "green malt", withered, soft
	}
	said := g != nil && g.Moisture != nil
	f := sampleDoubtful.At(s.Dry.Place, fmt.Sprintf("the sample gives the %s %.3g %% moisture", what, 100*w))
	switch near := said && math.Abs(w-g.Moisture.SI) <= apart; {
	case near: // of a lot that is out of the ordinary its own line is told
		return s
	case w < least:
		f.Message += ", which is bone dry"
	case w > most:
		f.Message += ", which is soaking wet"
	case said:
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
		k := slices.IndexFunc(list[:i], func(x model.Reading) bool { return same(x, list[i]) })
		if k < 0 {
			continue
		}
		f := writtenTwice.At(list[i].Place(), "the same is written above")
		f.Related = []finding.Related{{Place: list[k].Place(), Message: "here"}}
		r.slip(i, f)
	}
	r.contradict()
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
	for i, x := range list {
		k := slices.IndexFunc(list[:i], func(y model.Reading) bool { return model.Clean(y) && model.OfBag(y) == model.OfBag(x) })
		if !model.Clean(x) || k < 0 || r.aside[i] || r.aside[k] || list[k].When().IsZero() || x.When().IsZero() || x.When().Sub(list[k].When().Time).Seconds() > onceClean {
			continue
		}
		f := writtenTwice.At(x.Place(), fmt.Sprintf("the clean malt was weighed above too, %s; the yield goes by this line, %s", weightWords(list[k]), weightWords(x)))
		f.Severity = finding.Note
		f.Related = []finding.Related{{Place: list[k].Place(), Message: "here"}}
		r.note(f)
	}
}

// changedTwice finds a step that is changed twice, each time to another time, or to
// another heat.
func (r *record) changedTwice() {
	list := r.batch.Changes
	for i := range list {
		k := slices.IndexFunc(list[:i], func(c model.Change) bool { return sameStep(&c.Step, &list[i].Step) && c.Alike(&list[i]) })
		if k < 0 {
			continue
		}
		f := writtenTwice.At(list[i].Place, fmt.Sprintf("%s was changed above already, to %s", stepWords(&list[i].Step), list[k].Said()))
		f.Related = []finding.Related{{Place: list[k].Place, Message: "here"}}
		r.note(f)
	}
}

func sameStep(a, b *model.StepName) bool { return a.Kind.Text == b.Kind.Text && a.Number == b.Number }

// same tells whether two lines are of the same look: one step, or one time, and the same
// value.
func same(a, b model.Reading) bool {
	after, of := model.After(a), model.After(b)
	switch {
	case (after == nil) != (of == nil):
		return false
	case after != nil && !sameStep(after, of):
		return false
	case after == nil && !model.Clean(a) && !a.When().Equal(b.When().Time):
		return false
	}
	return sameValue(a, b)
}

// sameValue tells whether two lines show the same of the same thing.
func sameValue(a, b model.Reading) bool {
	switch a := a.(type) {
	case *model.Weighed:
		b, ok := b.(*model.Weighed)
		return ok && a.OfBag == b.OfBag && a.Clean == b.Clean && a.Weight.SI == b.Weight.SI && (a.In == nil) == (b.In == nil)
	case *model.Read:
		b, ok := b.(*model.Read)
		return ok && a.Temperature.Where == b.Temperature.Where && a.Temperature.Low.SI == b.Temperature.Low.SI
	case *model.Counted:
		b, ok := b.(*model.Counted)
		return ok && a.What.Text == b.What.Text && slices.EqualFunc(a.Kernels, b.Kernels, func(x, y model.Quantity) bool { return x.SI == y.SI })
	case *model.Felt:
		b, ok := b.(*model.Felt)
		return ok && a.Rub.Text == b.Rub.Text
	}
	return model.Is[*model.Turned](b)
}

// unweighed notes malt that came off the kiln and was never weighed.
func (r *record) unweighed() {
	list := r.batch.Readings
	if r.batch.Process != nil && r.batch.Process.Grain.Kilned() {
		return // it has no rootlets, and every weight is without
	}
	if len(list) == 0 || slices.ContainsFunc(list, func(x model.Reading) bool { return model.Clean(x) }) {
		return
	}
	last := list[len(list)-1]
	if model.After(last) == nil || r.goesOn(model.After(last)) {
		return
	}
	switch model.After(last).Kind.Text {
	case string(model.CoolStep), string(model.DeculmStage):
		f := maltNotWeighed.At(last.Place(), "the malt is off the kiln and was not weighed without its rootlets")
		f.Severity = finding.Caution
		r.unweighedMalt(f)
	case string(model.CureStep), string(model.RoastStep):
		r.unweighedMalt(maltNotWeighed.At(last.Place(), "the record ends with the "+model.After(last).Kind.Text+", and the malt is not weighed without its rootlets"))
	}
}

// goesOn tells whether a step was not on the last of several kilns. A step without a number is
// taken for the first of them.
func (r *record) goesOn(name *model.StepName) bool {
	n := r.batch.Process.KilnOf(name.Kind.Text, name.Number)
	return n > 0 && n < r.batch.Process.Count(model.KilnStage)
}

// unweighedMalt notes it with the weight that is forecast, in the units of the process.
func (r *record) unweighedMalt(f finding.Finding) {
	if r.plan != nil && r.plan.Totals.Malt > 0 {
		f.Hint = fmt.Sprintf("rub the rootlets off and weigh it, such as: weighed %.2f kg clean malt", r.plan.Totals.Malt)
	}
	f.Hint = r.batch.Process.Units().Retold(f.Hint)
	r.note(f)
}
