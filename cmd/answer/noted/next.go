package noted

import (
	"slices"

	"maltwright/cmd/answer/outlook"
	"maltwright/cmd/answer/timetable"
	"maltwright/lang/model"
	"maltwright/sim/grain"
	"maltwright/sim/visits"
)

// Visit is what is to be done at a time.
type Visit struct {
	timetable.Visit
	Ended string // the step that is over then, "" where none is
}

const (
	justNow = 60.0  // s, how near to now something is taken to be done by now
	atOnce  = 600.0 // s, how near to the end of a step what begins with it
)

// begins are the tasks that a step begins with: the others end one, or come again.
var begins = []visits.Kind{visits.Fill, visits.Spread, visits.Change, visits.Load, visits.Heat, visits.Cool, visits.Deculm, visits.Put}

// next finds what begins with the reading, and what is due behind it.
func (r *Result) next(h *holding) {
	now := h.trial.Now
	var due, later []visits.Task
	ended := h.line != nil && endsStep(h.line) && now-h.line.When().Sub(h.trial.Batch.Began.Time).Seconds() < atOnce
	for _, k := range visits.List(h.best) {
		switch {
		case k.At > now+justNow:
			later = append(later, k)
		case ended && k.At > now-atOnce && slices.Contains(begins, k.Kind):
			due = append(due, k)
		}
	}
	r.Due, r.Next = h.first(due), h.first(later)
	r.Over = r.Next == nil && r.Due == nil && !h.best.BrokenOff()
	r.Failed = r.Next == nil && r.Due == nil && h.best.BrokenOff()
}

func endsStep(line model.Dated) bool {
	x, ok := line.(model.Reading)
	return ok && (model.After(x) != nil || model.Clean(x))
}

// first is the first visit of a list of tasks, nil of none.
func (h *holding) first(list []visits.Task) *Visit {
	all := visits.Gather(list)
	if len(all) == 0 {
		return nil
	}
	v := visitOf(h.trial.Batch, all[0])
	return &v
}

func visitOf(b *model.Batch, of visits.Visit) Visit {
	v := Visit{Visit: timetable.VisitOf(of, b.Began.Time, outlook.BagOfBatch(b))}
	for _, k := range of.Tasks {
		if k.Ends != "" {
			v.Ended = k.Ends
		}
	}
	return v
}

func rubAt(modification float64) *string {
	text := grain.RubAt(min(max(modification, 0), 1)).String()
	return &text
}
