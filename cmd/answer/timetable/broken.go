package timetable

import (
	"math"
	"slices"
	"time"

	"maltwright/cmd/answer/outlook"
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
	at, last := breakOf(f)
	var out []visits.Visit
	for _, v := range list {
		v.Tasks = slices.DeleteFunc(slices.Clone(v.Tasks), func(t visits.Task) bool {
			ofLast := last != nil && t.Place == last.Place && (last.End > last.Start || ends[t.Kind])
			return t.At > at || t.At == at && ofLast
		})
		if len(v.Tasks) > 0 {
			out = append(out, v)
		}
	}
	return out
}

// ends are the tasks with which something is over.
var ends = map[visits.Kind]bool{visits.Drain: true, visits.EndRest: true, visits.EndFloor: true, visits.Gate: true, visits.Unload: true, visits.Rested: true}

// breakOf is when a forecast broke off, and the step in which it did, nil where that is at the
// beginning of a stage. One that did not breaks off never.
func breakOf(f *forecast.Forecast) (at float64, last *forecast.Step) {
	list := forecast.Troubles[forecast.Unable](f)
	if len(list) == 0 {
		return math.Inf(1), nil
	}
	at = list[0].At
	for _, st := range f.Stages {
		for i := range st.Steps {
			if s := &st.Steps[i]; s.EndedBy == forecast.BrokenOff {
				at, last = min(at, s.End), s
			}
		}
	}
	return at, last
}
