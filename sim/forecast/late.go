package forecast

import (
	"maltwright/lang/model"
	"maltwright/sim/kiln"
)

// A roast is over within the hour that a kiln may take to come to its heat untold, so of one it is
// told as it ends.

// lateBy is by how much a roast must miss its heat to be told, K: less is how near it is set.
const lateBy = 5.0

// late is a roast that ends before it is as hot as is asked; ok is false of any other step.
func (r *run) late(m *kilnModel, st *model.Kilning, s asked) (t KilnShort, ok bool) {
	roast := r.now.kind == string(model.RoastStep) || m.rise.to > roastsAbove
	if !roast || m.target == kiln.Fresh || m.target == kiln.AsComes || m.beyond && m.target != kiln.AirOn && m.target != kiln.Oven {
		return t, false
	}
	v := m.bed.View()
	asked, got := m.rise.to, m.gives(v)
	if asked-got <= lateBy || !r.ranOut() || goesOn(st, s, asked) {
		return t, false
	}
	return KilnShort{r.meets(s.place), m.target, asked, got, v.Limit, setTo(s), m.short.seconds, true, false}, true
}

// goesOn tells whether a later step of the stage asks for as much heat, up to which this one may lag.
func goesOn(st *model.Kilning, s asked, asked float64) bool {
	past := false
	for _, later := range st.Steps {
		if past && later.Kind() != model.CoolStep && setHot(later) >= asked-shortBy {
			return true
		}
		past = past || later.Place() == s.place
	}
	return false
}

// ranOut tells whether the last step ended by its time, and not by what it waits for.
func (r *run) ranOut() bool {
	steps := r.f.Stages[len(r.f.Stages)-1].Steps
	return len(steps) > 0 && (steps[len(steps)-1].EndedBy == ByTime || steps[len(steps)-1].EndedBy == ByGuard)
}
