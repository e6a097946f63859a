package timetable

import (
	"slices"
	"time"

	"maltwright/cmd/answer/outlook"
	"maltwright/lang/model"
	"maltwright/sim/forecast"
	"maltwright/sim/visits"
)

// UntilBroken is the timetable of a forecast that broke off, as far as that came, of a batch that
// begins at a time: it has no end, and seeks no other start.
func UntilBroken(f *forecast.Forecast, when time.Time) Result {
	r := Result{Head: outlook.HeadOf(f.Process), Start: when, Visits: []Visit{}, Asked: outlook.AskedOf(f)}
	list := BeforeBreak(f, visits.Gather(visits.List(f)))
	for _, v := range list {
		r.Visits = append(r.Visits, VisitOf(v, when, outlook.BagOf(f.Process)))
	}
	if s := f.Process.Site; s != nil && s.Said() {
		r.mark(list, visits.From(when), s.Hours)
	}
	return r
}

// BeforeBreak leaves out of the visits of a forecast what is done at the end of a step that it did
// not see the end of, and all behind that.
func BeforeBreak(f *forecast.Forecast, list []visits.Visit) []visits.Visit {
	at, in, broke := breakOf(f)
	if !broke {
		return list
	}
	var out []visits.Visit
	for _, v := range list {
		v.Tasks = slices.DeleteFunc(slices.Clone(v.Tasks), func(t visits.Task) bool {
			return t.At > at || t.At == at && t.Stage == in
		})
		if len(v.Tasks) > 0 {
			out = append(out, v)
		}
	}
	return out
}

// breakOf is when a forecast broke off, and in the middle of which stage, "" where it was at the beginning of one.
func breakOf(f *forecast.Forecast) (at float64, in model.StageKind, broke bool) {
	list := forecast.Troubles[forecast.Unable](f)
	if len(list) == 0 {
		return 0, "", false
	}
	at = list[0].At
	for _, st := range f.Stages {
		for _, s := range st.Steps {
			if s.EndedBy == forecast.BrokenOff && s.End > s.Start {
				at, in = min(at, s.End), st.Kind
			}
		}
	}
	return at, in, true
}
