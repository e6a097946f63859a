package records

import (
	"fmt"

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
	for i := range list {
		x := &list[i]
		switch {
		case r.aside[i] || x.At.IsZero() || x.Kind == model.Turned && r.stirred():
		case x.After != nil:
			if left < 0 && r.leaves(x.After.Kind.Text) {
				left = i
			}
		case left < 0 || shows(x) != growing || shows(&list[left]) == growing && x.At.Sub(list[left].At.Time).Seconds() < carried:
		case told:
			r.aside[i] = true
		default:
			f := recordOutOfOrder.At(x.Place, fmt.Sprintf("this is of %s, and by a line above %s was over", shownWords[growing], stepWords(list[left].After)))
			f.Related = []finding.Related{{Place: list[left].Place, Message: "the line above"}}
			r.slip(i, f)
			told = true
		}
	}
}

// stirred tells whether the process has the malt stirred on the kiln.
func (r *record) stirred() bool {
	kiln := r.batch.Process.Stage(model.KilnStage)
	return kiln != nil && kiln.Turn != nil
}

// leaves tells whether the piece leaves its floor when a step of the kind ends.
func (r *record) leaves(kind string) bool {
	return endsGrowth(kind) && (kind != string(model.Germinate) || r.batch.Process.Stage(model.Wither) == nil)
}

// steepIsOver tells whether by the plan the steep is over at the time of a reading.
func (r *record) steepIsOver(i int) bool {
	x := &r.batch.Readings[i]
	return r.plan != nil && !x.At.IsZero() && r.since(x.At) > r.plan.Totals.SteepOut
}
