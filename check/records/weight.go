package records

import (
	"fmt"
	"math"

	"maltwright/lang/finding"
	"maltwright/lang/model"
	"maltwright/lang/vocabulary"
	"maltwright/sim/infer/evidence"
)

const (
	heavier = 0.02  // of a weight, by which malt that only dries cannot gain
	alike   = 0.002 // of a weight, within which two weighings are alike
)

// tooLight finds a weight below the dry matter in it.
func (r *record) tooLight(h *held, i int) {
	o := &h.trial.Observations[i]
	s := o.Sight(h.centre)
	if !o.BelowDry(h.centre) {
		return
	}
	q := model.Weight(o.Reading)
	f := readingImpossible.At(q.Place, fmt.Sprintf("%s is less than the dry matter of the batch, %s", weightWords(o.Reading), about(q.Quantity, s.Dry*o.Scale()+r.tareOf(o))))
	if slip := r.slipOf(h, i); slip != "" {
		f.Hint = slip
	}
	r.slip(h.seats[i], f)
}

// tareOf is what is weighed along, kg.
func (r *record) tareOf(o *evidence.Observation) float64 {
	if model.Weight(o.Reading) == nil {
		return 0
	}
	return model.Weight(o.Reading).SI - o.Value
}

// gained gives a reading before that was lighter, although malt only dries; -1 for none.
func (r *record) gained(h *held, i int) int {
	o := &h.trial.Observations[i]
	s := o.Sight(h.centre)
	if model.Weight(o.Reading) == nil || s == nil || !dries(s.Stage) && !model.Clean(o.Reading) || i == 0 {
		return -1
	}
	for k := i - 1; k >= 0; k-- {
		x := &h.trial.Observations[k]
		if t := x.Sight(h.centre); model.Weight(x.Reading) == nil || model.OfBag(x.Reading) != model.OfBag(o.Reading) || t == nil {
			continue
		} else if !dries(t.Stage) {
			return -1
		}
		if o.Value > x.Value*(1+heavierBy(o.Reading, x.Reading)) {
			return k
		}
		return -1
	}
	return -1
}

// heavierBy is by what share malt may seem to have gained: its rootlets are some hundredths
// of it, so that on the day that it was weighed with them it weighs no more without them.
func heavierBy(x, before model.Reading) float64 {
	if model.Clean(x) && !model.Clean(before) && !x.When().IsZero() && !before.When().IsZero() && x.When().Sub(before.When().Time).Seconds() <= day {
		return alike
	}
	return heavier
}

// heavierAgain finds malt that is heavier without its rootlets than it was with them:
// they are some hundredths of it, and by that much it cannot gain water in a day or two.
// Two weighings may come so close by chance alone: one of them must disagree with all else
// that is written as well.
func (r *record) heavierAgain(h *held, i int) {
	x, ok := h.trial.Observations[i].Reading.(*model.Weighed)
	if !ok || !x.Clean || r.aside[h.seats[i]] {
		return
	}
	k := r.gained(h, i)
	if k < 0 || r.aside[h.seats[k]] || max(h.off[i], -h.off[k]) <= near {
		return
	}
	y := h.trial.Observations[k].Reading
	if !x.When().IsZero() && !y.When().IsZero() && x.When().Sub(y.When().Time).Seconds() > gainsIn {
		return
	}
	f := readingDoubtful.At(x.Weight.Place, fmt.Sprintf("%s without the rootlets is more than the malt weighed with its rootlets, %s", weightWords(x), weightWords(y)))
	f.Related = []finding.Related{{Place: y.Place(), Message: "the batch was lighter here"}}
	r.slip(h.seats[i], f)
}

// gainsIn is how long malt must lie open until it may have gained some hundredths of water, s.
const gainsIn = 3 * day

func dries(k model.StageKind) bool { return k == model.WitherStage || k == model.KilnStage }

const (
	dryPoints = 0.007 // of moisture, within which a weight is that which was wanted
	wetPoints = 0.012 // above what was asked, from where on the malt is too moist
	muchWet   = 0.03  // the same where nothing explains it: scale and loss may be off by so much
)

// dryByCharge finds malt that is as dry as its step asks only if none of the charge's dry
// matter were gone, or that is much too moist for its step to have ended.
// It tells whether the latter is so.
func (r *record) dryByCharge(h *held, i int) (notYet bool) {
	o := &h.trial.Observations[i]
	s := o.Sight(h.centre)
	x, ok := o.Reading.(*model.Weighed)
	if !ok || x.OfBag || x.After == nil || s == nil || !vocabulary.Dries(x.After.Kind.Text) || r.aside[h.seats[i]] {
		return false
	}
	wanted, ok := h.trial.Asked(x.After)
	whole := s.Dry / (1 - s.Lost)
	by, has := 1-whole/o.Value, 1-s.Dry/o.Value
	switch {
	case !ok:
	case math.Abs(by-wanted) < dryPoints && has > wanted+wetPoints && h.off[i] > near:
		r.tooHeavy(h, i, fmt.Sprintf("%s is the weight that %s asks for only if no dry matter was lost; with the loss the malt holds %.1f %%", weightWords(x), stepWords(x.After), 100*has))
	case has > wanted+muchWet && r.hurried(h, x.After):
		r.tooHeavy(h, i, fmt.Sprintf("at %s the malt held %.1f %%, and %s waits for %.3g %%, so it cannot have ended", weightWords(x), 100*has, stepWords(x.After), 100*wanted))
		return true
	}
	return false
}

// tooHeavy tells of a weight by which malt is too moist, and of the slip that would explain it.
func (r *record) tooHeavy(h *held, i int, message string) {
	f := readingDoubtful.At(model.Weight(h.trial.Observations[i].Reading).Place, message)
	if slip := r.slipOf(h, i); slip != "" {
		f.Hint = slip
	}
	r.slip(h.seats[i], f)
}

// hurried tells whether a step of the record took less time than it takes, so that its
// time cannot have ended it.
func (r *record) hurried(h *held, name *model.StepName) bool {
	k := r.at(name)
	if k < 0 {
		return false
	}
	least, _ := r.takes(k-1, k)
	for _, st := range h.centre.Stages {
		for _, s := range st.Steps {
			if string(s.Kind) != r.steps[k].kind && (s.Kind != "" || string(st.Kind) != r.steps[k].kind) {
				continue
			}
			if s.Nth == r.steps[k].number {
				return s.End-s.Start < hurriedShare*least
			}
		}
	}
	return false
}

// hurriedShare is the share of the least time of a step, below which it cannot be over.
const hurriedShare = 0.7
