package records

import (
	"fmt"
	"slices"

	"maltwright/lang/finding"
	"maltwright/lang/model"
)

// carried is how long behind the end of its stage a piece may still lie on its floor, s.
const carried = hour

// offTheFloor finds what is said of the growing piece behind the line by which it had left
// its floor. Where the process has the malt stirred on the kiln it is that which is
// written as turned. It is told once: the others follow from it.
func (r *record) offTheFloor() {
	list, left, told := r.batch.Readings, -1, false
	for i, x := range list {
		switch {
		case r.aside[i] || x.When().IsZero() || model.Is[*model.Turned](x) && r.stirred():
		case model.After(x) != nil:
			if left < 0 && r.leaves(model.After(x)) {
				left = i
			}
		case left < 0 || r.shows(x) != growing || r.shows(list[left]) == growing && x.When().Sub(list[left].When().Time).Seconds() < carried:
		case told:
			r.aside[i] = true
		default:
			f := recordOutOfOrder.At(x.Place(), fmt.Sprintf("this line is of %s, and a line above says that %s was over", shownWords[growing], stepWords(model.After(list[left]))))
			f.Related = []finding.Related{{Place: list[left].Place(), Message: "the line above"}}
			r.slip(i, f)
			told = true
		}
	}
}

// stirred tells whether the process has the malt stirred on the kiln.
func (r *record) stirred() bool {
	return slices.ContainsFunc(model.Every[*model.Kilning](r.batch.Process), func(st *model.Kilning) bool { return st.Stir != nil })
}

// leaves tells whether the piece leaves its last floor when a step ends.
func (r *record) leaves(step *model.StepName) bool {
	kind := step.Kind.Text
	if n := r.batch.Process.Count(model.StageKind(kind)); n > 1 && step.Number < n {
		return false // another of its kind follows, or may
	}
	return endsGrowth(kind) && (kind != string(model.GerminateStage) || model.First[*model.Withering](r.batch.Process) == nil)
}

// steepIsOver tells whether by the plan the steep is over at the time of a reading.
func (r *record) steepIsOver(i int) bool {
	x := r.batch.Readings[i]
	return r.plan != nil && !x.When().IsZero() && r.since(x.When()) > r.plan.Totals.SteepOut
}
