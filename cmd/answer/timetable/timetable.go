package timetable

import (
	"errors"
	"fmt"
	"time"

	"maltwright/cmd/answer"
	"maltwright/cmd/answer/outlook"
	"maltwright/lang/model"
	"maltwright/sim/forecast"
	"maltwright/sim/visits"
)

// ErrBrokenOff says that a forecast came to no end, and so has no timetable.
var ErrBrokenOff = errors.New("no timetable, for the forecast breaks off; maltwright forecast says where")

// Longest is as far as a timetable goes: no malt is kept longer, and so no date is ever
// beyond what a calendar can name.
const (
	year    = 365.25 * 86400
	Longest = answer.Seconds(10 * year)
)

// Of is the timetable of a forecast that begins at a time or, reckoned back, is ready
// then. It returns ErrBrokenOff, and an error where there are no steps or the batch takes
// longer than Longest.
func Of(f *forecast.Forecast, when time.Time, back bool) (Result, error) {
	if f.BrokenOff() {
		return Result{}, ErrBrokenOff
	}
	list := visits.Gather(visits.List(f))
	if len(list) == 0 {
		return Result{}, fmt.Errorf("no timetable, for %q has no steps", f.Process.Name)
	}
	if last := answer.Seconds(list[len(list)-1].At); last > Longest {
		return Result{}, fmt.Errorf("no timetable, for the batch takes %.0f years, its rest in store with it; a timetable goes to %.0f", last/year, Longest/year)
	}
	return of(f, list, when, back), nil
}

// lasts is how long a batch takes, to the minute; one that is no malt ends at the kiln.
func lasts(f *forecast.Forecast) time.Duration {
	total := answer.Seconds(f.Totals.Total)
	if n := outlook.NoMaltOf(f); n != nil {
		total = n.At
	}
	return outlook.Minutes(total)
}

// Begins is when a batch begins that is to be ready at a time.
func Begins(f *forecast.Forecast, ready time.Time) time.Time { return ready.Add(-lasts(f)) }

func of(f *forecast.Forecast, list []visits.Visit, when time.Time, back bool) Result {
	took := lasts(f)
	r := Result{Head: outlook.HeadOf(f.Process), Complete: true, Start: when, Back: back, NoMalt: outlook.NoMaltOf(f), Visits: []Visit{}, Asked: outlook.AskedOf(f)}
	if back {
		r.Start = Begins(f, when)
	}
	r.Ready = r.Start.Add(took)
	for _, v := range list {
		r.Visits = append(r.Visits, VisitOf(v, r.Start, outlook.BagOf(f.Process)))
		for _, t := range v.Tasks {
			if t.Kind == visits.Rested {
				r.Rested = outlook.ClockAt(r.Start, answer.Seconds(t.At))
			}
		}
	}
	if s := f.Process.Site; s != nil && s.Said() {
		r.nights(list, s.Hours)
	}
	return r
}

// Ahead is the timetable of a batch under way: the visits that are yet to come, by a forecast that
// goes by its record. No other start is sought for it.
func Ahead(f *forecast.Forecast, list []visits.Visit, began time.Time) (Result, error) {
	if f.BrokenOff() {
		return Result{}, ErrBrokenOff
	}
	r := of(f, list, began, false)
	r.Night, r.Ahead = nil, true
	return r, nil
}

// mark says of each visit whether it falls in the night, and who is there.
func (r *Result) mark(list []visits.Visit, clock visits.Clock, awake model.Hours) {
	for i, v := range list {
		night := clock.Night(awake, v.At, v.Waits)
		up := !night && clock.Awake(awake, v.At)
		r.Visits[i].Night, r.Visits[i].Awake = &night, &up
		r.Visits[i].There(v, clock, awake)
	}
}

// nights marks the visits and seeks the best hour of the day to begin at.
func (r *Result) nights(list []visits.Visit, awake model.Hours) {
	clock := visits.From(r.Start)
	r.mark(list, clock, awake)
	best, worst := visits.Best(list, awake, func(second int) visits.Clock { return visits.From(r.begunAt(second)) })
	n := &Nights{Given: Start{r.Start, r.Ready, len(visits.Missed(list, clock, awake))}, Best: r.start(best), Worst: r.start(worst)}
	if n.Given.Visits <= n.Best.Visits { // no half hour is better than the time given
		n.Best = n.Given
	}
	r.Night = n
}

func (r *Result) start(s visits.Start[visits.Visit]) Start {
	at := r.begunAt(s.At)
	return Start{at, at.Add(r.Ready.Sub(r.Start)), len(s.Missed)}
}

// begunAt is when the first soak begins at another second of the day: on the same
// day, or on the one before where the malt would come too late for the time asked.
func (r *Result) begunAt(second int) time.Time {
	at := visits.On(r.Start, second)
	if r.Back && at.After(r.Start) {
		return visits.On(r.Start.AddDate(0, 0, -1), second)
	}
	return at
}
