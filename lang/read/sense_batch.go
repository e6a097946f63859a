package read

import (
	"fmt"

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
}

// weightSense reports a weight that the batch, or the bag, cannot have.
func (b *builder) weightSense(t *model.Batch, x *model.Weighed) {
	net, raw, can := t.Net(x)
	what := "the batch"
	if x.OfBag {
		if what = "the bag"; raw == nil && !t.Broken {
			f := missingStatement.At(x.Place(), "the bag is weighed, but what went into it is not said")
			f.Hint = "add a line above such as: bag 100 g at the start"
			b.note(f)
		}
	}
	if can {
		return
	}
	tare := x.Weight.SI - net
	without := ""
	if tare > 0 {
		without = fmt.Sprintf(" with a tare of %s", t.Tare)
	}
	f := outOfRange.At(x.Weight.Place, fmt.Sprintf("%s weighs %s%s, which %s of raw grain cannot: it would be %s times as heavy, outside %.1f to %.1f",
		what, x.Weight, without, raw, quantity.About(net/raw.SI, ""), model.Lightest, model.Heaviest))
	f.Hint = "look at the number and its unit, and whether the tare is in it"
	b.note(f)
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
