package visits

import (
	"maltwright/lang/model"
	"maltwright/sim/forecast"
)

// deculm lists the taking off of the rootlets, which may wait as long as the process
// lets it.
func (l *lister) deculm(st forecast.Stage) {
	s := &st.Steps[0]
	t := l.beginning(s, Deculm, st.Kind)
	if w := l.of.(*model.Deculming).Within; w != nil {
		t.Waits, t.Within = max(0, w.SI-(s.End-s.Start)), w.SI
	}
	l.add(t)
	if l.next == nil {
		l.add(ending(s, Put, st.Kind))
	}
}

// store lists the putting away and the end of the rest, for which nobody gets up.
func (l *lister) store(st forecast.Stage) {
	s := &st.Steps[0]
	t := l.beginning(s, Put, st.Kind)
	t.Where = l.of.(*model.Storing).In.Text
	t.Lasts, t.Waits = s.End-s.Start, day
	l.add(t)
	if s.End > s.Start {
		t = ending(s, Rested, st.Kind)
		t.Waits = day
		l.add(t)
	}
}
