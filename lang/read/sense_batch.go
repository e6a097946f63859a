package read

import (
	"fmt"
	"math"

	"maltwright/lang/finding"
	"maltwright/lang/model"
	"maltwright/lang/quantity"
)

// batchSense looks at a record as a whole: its weights beside what went in, and the
// steps it names beside those of its process.
func (b *builder) batchSense(t *model.Batch) {
	for _, x := range t.Readings {
		if !t.Began.IsZero() && !x.When().IsZero() && x.When().Before(t.Began.Time) { // began stands below it
			b.note(beforeBegan(t, x.When()))
		}
		w, ok := x.(*model.Weighed)
		if !ok {
			continue
		}
		b.weightSense(t, w)
		if w.After != nil {
			b.stepSense(t, *w.After)
		}
	}
	for _, c := range t.Changes {
		b.stepSense(t, c.Step)
	}
	if t.Process != nil {
		b.bagSense(t.Bag, t.Process.Charge)
		b.ownCharge(t)
	}
	b.tareSense(t)
}

// tareSense reports a tare beside weights that say in what the grain was weighed: of
// those the tare is not taken off, and of all others it is.
func (b *builder) tareSense(t *model.Batch) {
	if t.Tare == nil || t.BagTare() != nil {
		return
	}
	for _, x := range t.Readings {
		w, ok := x.(*model.Weighed)
		if !ok || w.In == nil || w.OfBag {
			continue
		}
		f := tareBesideIn.At(t.Tare.Place, fmt.Sprintf("the tare of %s is not taken off weights that say in what the grain was weighed, such as in %q", t.Tare, w.In.Name))
		f.Related = []finding.Related{{Place: w.Place(), Message: "the first of them"}}
		b.note(f)
		return
	}
}

// weightSense reports a weight that the batch, or the bag, cannot have.
func (b *builder) weightSense(t *model.Batch, x *model.Weighed) {
	net, raw, can := t.Net(x)
	what := "the batch"
	if x.OfBag {
		if what = "the bag"; raw == nil && !t.Broken {
			f := missingStatement.At(x.Place(), "the bag is weighed, but its raw grain is not written")
			f.Hint = "add a line above such as: bag 100 g at the start"
			b.note(f)
		}
	}
	if can {
		return
	}
	f := outOfRange.At(x.Weight.Place, fmt.Sprintf("%s weighs %s%s, which %s of raw grain cannot: it would be %s times as heavy, outside %.1f to %.1f",
		what, x.Weight, withEmpty(t, x), raw, times(net/raw.SI), model.Lightest, model.Heaviest))
	f.Hint = "look at the number and its unit, and whether it includes the tare"
	along := x.Weight.SI - net
	onlySlip(&f, x.Weight.Place, x.Weight.Quantity, func(si float64) bool { return t.CanWeigh(x, si-along) })
	if !x.OfBag && net < lostGrain*raw.SI && t.RawBag() != nil {
		bag := "bag " + x.Weight.String()
		f.Hint = fmt.Sprintf("if the bag was weighed, write: weighed %s", bag)
		f.Offers = slipOffers(x.Weight.Place, quantity.Range{Low: x.Weight.Quantity, High: x.Weight.Quantity}, bag)
	}
	if x.In != nil {
		f.Hint = fmt.Sprintf("look at the number and its unit, and whether it includes %[1]q; where the grain was weighed without it, take in %[1]q out", x.In.Name)
		f.Offers = nil
		f.Related = append(f.Related, finding.Related{Place: x.In.Weighs.Place, Message: "what it weighs when it is empty"})
	}
	b.note(f)
}

// lostGrain is the share of its raw weight below which a batch was not what was weighed.
const lostGrain = 0.1

// times writes how many times as heavy something is, to two figures however little.
func times(ratio float64) string {
	if ratio > 0 && ratio < 0.1 {
		return quantity.Fixed(ratio, 1-int(math.Floor(math.Log10(ratio))))
	}
	return quantity.About(ratio, "")
}

// withEmpty says what is weighed along; "" where nothing is.
func withEmpty(t *model.Batch, x *model.Weighed) (text string) {
	if tare := t.TareOf(x); tare != nil {
		text = fmt.Sprintf(" with a tare of %s", tare)
	}
	switch {
	case x.In == nil:
		return text
	case text == "":
		return fmt.Sprintf(" with %q of %s", x.In.Name, x.In.Weighs)
	}
	return text + fmt.Sprintf(" and %q of %s", x.In.Name, x.In.Weighs)
}

// stepSense reports a step that the process of the batch does not have.
func (b *builder) stepSense(t *model.Batch, s model.StepName) {
	if t.Process == nil || t.Process.Broken {
		return
	}
	most := stepsOf(t.Process, s.Kind.Text)
	if most > 0 && s.Number <= most {
		return
	}
	message := fmt.Sprintf("%q has no %s", t.Process.Name, s.Kind.Text)
	switch {
	case most == 1:
		message = fmt.Sprintf("%q has one %s, and this is of number %d", t.Process.Name, s.Kind.Text, s.Number)
	case most > 0:
		message = fmt.Sprintf("%q has at most %d steps of the kind %s, and this is of number %d", t.Process.Name, most, s.Kind.Text, s.Number)
	}
	f := unknownName.At(s.Place, message)
	f.Hint = "see the steps of the process with forecast"
	b.note(f)
}

// stepsOf counts the steps of a kind, through repeats, at the most.
func stepsOf(p *model.Process, kind string) int {
	n := 0
	for _, st := range p.Stages {
		if string(st.Kind()) == kind {
			n++
		}
		n += countSteps(model.StepsOf(st), kind, 1)
	}
	return n
}

// mostTimes bounds the product of nested repeats; no batch has so many steps.
const mostTimes = 1000

func countSteps(steps []model.Step, kind string, times int) int {
	n := 0
	for _, s := range steps {
		if string(s.Kind()) == kind {
			n += times
		}
		if r, ok := s.(*model.Repeat); ok {
			more := mostTimes
			if r.Times != nil {
				more = int(min(max(r.Times.Range.High.SI, 0), mostTimes))
			}
			n += countSteps(r.Steps, kind, min(times*more, mostTimes))
		}
	}
	return n
}
