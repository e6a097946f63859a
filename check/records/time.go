package records

import (
	"fmt"
	"math"
	"slices"
	"time"

	"maltwright/lang/finding"
	"maltwright/lang/model"
	"maltwright/lang/quantity"
	"maltwright/lang/source"
)

const (
	slack   = 14 * hour // by which a step may be longer or shorter by the clock
	quicker = 0.3       // times the planned time in which a condition may come about
	slower  = 2.5

	longTimes, longBy = 2.5, 6 * hour // what a step with a time of its own takes before it is told, both
)

// days finds a step whose end is a day off. It tells whether it did: then no hour below
// is to be trusted.
func (r *record) days() (off bool) {
	from, last := -1, 0.0
	var above model.Reading
	for i, x := range r.batch.Readings {
		if model.After(x) == nil || x.When().IsZero() || r.aside[i] {
			continue
		}
		to := r.at(model.After(x))
		if to <= from || r.steps[to].stage == model.DeculmStage || r.steps[to].kind == string(model.CoolStep) {
			continue
		}
		at := r.since(x.When())
		if least, most := r.takes(from, to); at-last < least-slack || at-last > most+slack {
			r.dayOff(i, at-last, least, most, above)
			return true
		} else if least == most && !r.mayWait(to) && at-last > longTimes*least && at-last > least+longBy {
			r.drawnOut(i, at-last, least, above)
		}
		from, last, above = to, at, x
	}
	return false
}

// takes is how long the steps behind one, up to another, may take.
func (r *record) takes(from, to int) (least, most float64) {
	for i := from + 1; i <= to; i++ {
		s := r.steps[i]
		took := s.end - s.start
		if s.stage == model.SteepStage && r.steps[to].stage != model.SteepStage && s.step != nil && r.repeated(s.step) {
			most += took // it may have been enough without it
			continue
		}
		guard, waits := s.waits()
		switch {
		case !waits:
			least, most = least+took, most+took
		case guard != nil && guard.Latest != nil && guard.Earliest != nil:
			least, most = least+min(guard.Earliest.SI, took), most+max(guard.Latest.SI, took)
		default:
			least, most = least+quicker*took, most+slower*took
		}
	}
	return least, most
}

// repeated tells whether a step stands in a repeat, which may end before it.
func (r *record) repeated(step model.Step) bool {
	var seek func(list []model.Step, inside bool) bool
	seek = func(list []model.Step, inside bool) bool {
		return slices.ContainsFunc(list, func(s model.Step) bool {
			return s == step && inside || seek(model.Inner(s), inside || s.Kind() == model.RepeatStep)
		})
	}
	return slices.ContainsFunc(model.Every[*model.Steep](r.batch.Process), func(st *model.Steep) bool { return seek(st.Steps, false) })
}

// waits tells whether a step ends by a condition, and between which times.
func (s planned) waits() (*model.Guard, bool) {
	var whole model.Ending
	if s.whole != nil {
		whole = s.whole.Ends()
	}
	switch {
	case whole.Until != nil && (s.stage == model.GerminateStage || s.step == nil):
		return whole.Allow, true
	case s.step != nil && (s.step.Ends().Until != nil || model.Asked(s.step) != nil):
		return s.step.Ends().Allow, true
	}
	return nil, false
}

func (r *record) dayOff(i int, took, least, most float64, above model.Reading) {
	x := r.batch.Readings[i]
	since, place := r.counted(above)
	gives := hours(least)
	if most > least+hour {
		gives += " to " + hours(most)
	}
	f := timeDoubtful.At(x.When().Place, fmt.Sprintf("%s ended %s after %s by this time, and the process gives it %s", stepWords(model.After(x)), hours(took), since, gives))
	if n := math.Round((took - (least+most)/2) / day); n != 0 && took-n*day >= least-slack/2 && took-n*day <= most+slack/2 {
		f.Hint = fmt.Sprintf("it would fit with the date %s; look at both dates", days(n))
	}
	if took > most && model.After(x).Kind.Text == string(model.SoakStep) {
		f.Why += "; " + stifles
	}
	f.Related = []finding.Related{{Place: place, Message: "the time counts from here"}}
	r.slip(i, f)
}

// stifles is what comes of steps that truly took so long.
const stifles = "grain left so long in water drowns"

// drawnOut tells of steps with a time of their own that took several times as long: grain was
// left in the water or on the kiln, or the hour is of the other half of the day. What is read
// below it is still to be trusted.
func (r *record) drawnOut(i int, took, gives float64, above model.Reading) {
	x := r.batch.Readings[i]
	since, place := r.counted(above)
	f := timeDoubtful.At(x.When().Place, fmt.Sprintf("%s ended %s after %s by this time, and the process gives it %s", stepWords(model.After(x)), hours(took), since, hours(gives)))
	f.Why = stifles + ", and malt left so long on the kiln loses its enzymes and takes colour; every figure of the record takes its lines as they are written"
	f.Hint = "look at the hour of both lines; if both are right, write changed with the time that the step took"
	if short := took - halfDay; math.Abs(short-gives) <= max(hour, gives/4) {
		f.Hint = fmt.Sprintf("it would fit 12 h earlier, at %s: look whether the hour is in the morning or in the evening; if both lines are right, write changed with the time that the step took", x.When().Add(-12*time.Hour).Format("2006-01-02 15:04"))
	}
	f.Related = []finding.Related{{Place: place, Message: "the time counts from here"}}
	r.slip(i, f)
}

const halfDay = 12 * hour

// mayWait tells whether a gate before a step may hold it up: one behind a step that does not
// itself wait for a condition.
func (r *record) mayWait(to int) bool {
	s := r.steps[to]
	if s.whole == nil || s.step == nil {
		return false
	}
	list := model.StepsOf(s.whole)
	k := slices.Index(list, s.step)
	return k > 0 && model.Asked(list[k-1]) != nil && (k == 1 || list[k-2].Ends().Until == nil)
}

// counted is from where the time of a step is counted: the step above, or the beginning.
func (r *record) counted(above model.Reading) (since string, place source.Place) {
	if above != nil {
		return stepWords(model.After(above)), above.Place()
	}
	return "the beginning", r.batch.Began.Place
}

func days(n float64) string {
	way := "earlier"
	if n < 0 {
		way = "later"
	}
	if math.Abs(n) == 1 {
		return "a day " + way
	}
	return fmt.Sprintf("%.0f days %s", math.Abs(n), way)
}

// hours writes a length of time as it is shown of a batch.
func hours(s float64) string { return quantity.Lasting(s) }
