package visits

import (
	"math"
	"time"

	"maltwright/lang/model"
)

// Patience is how much earlier or later than it is due anything may be done, s
// (common practice).
const Patience = 3600.0

// halfHour is from one start that is tried to the next, s.
const halfHour = 1800

// Reading is what the clock and the calendar on the wall show.
type Reading struct {
	Second int       // of the day
	Day    time.Time // its midnight in UTC, whatever the zone; the zero time where no date is known
}

// Clock gives what is shown so many seconds after the first soak.
type Clock func(after float64) Reading

// Daily is the clock of a first soak at a second of some day, where no clock is ever
// put forward or back.
func Daily(start int) Clock {
	return func(after float64) Reading {
		s := (start + int(math.Floor(after))) % int(day)
		return Reading{Second: (s + int(day)) % int(day)}
	}
}

// From is the clock of a first soak at a time, by the rules of its time zone.
func From(start time.Time) Clock {
	return func(after float64) Reading {
		at := start.Add(time.Duration(math.Floor(after)) * time.Second)
		h, m, s := at.Clock()
		return Reading{h*3600 + m*60 + s, midnight(at)}
	}
}

// midnight is that of the day of a time, in UTC.
func midnight(at time.Time) time.Time {
	y, m, d := at.Date()
	return time.Date(y, m, d, 0, 0, 0, 0, time.UTC)
}

// at is the clock that shows a second of the day at a time, and goes on from there.
func (c Clock) at(when float64, second int) Clock {
	return func(after float64) Reading {
		shown := c(when)
		late := second + int(math.Floor(after-when))
		days := int(math.Floor(float64(late) / day))
		shown.Second = late - days*int(day)
		if !shown.Day.IsZero() {
			shown.Day = shown.Day.AddDate(0, 0, days)
		}
		return shown
	}
}

// Awake tells whether somebody is awake, and works on that day, so many seconds after the
// first soak.
func (c Clock) Awake(awake model.Hours, after float64) bool {
	at := c(after)
	return awake.Up(at.Second) && !awake.AwayOn(at.Day)
}

// Away tells whether nobody works on the day that it is then.
func (c Clock) Away(awake model.Hours, after float64) bool { return awake.AwayOn(c(after).Day) }

// Night tells whether nobody is awake when something is due, nor was or will be
// within the patience, nor as long as it may wait.
func (c Clock) Night(awake model.Hours, at, waits float64) bool {
	for _, shift := range []float64{0, -Patience, Patience} {
		if c.Awake(awake, at+shift) {
			return false
		}
	}
	for shift := Patience; shift <= min(waits, day); shift += halfHour {
		if c.Awake(awake, at+shift) {
			return false
		}
	}
	return true
}

// Dated is a Task or a Visit.
type Dated interface {
	due() (at, waits float64)
	wall() *int
}

// Shown is the clock by which something is due: what stands at the clock is due then,
// whenever the batch begins.
func Shown[T Dated](x T, c Clock) Clock {
	if second := x.wall(); second != nil {
		at, _ := x.due()
		return c.at(at, *second)
	}
	return c
}

// Missed gives those of the list that fall in the night.
func Missed[T Dated](list []T, c Clock, awake model.Hours) []T {
	var out []T
	for _, x := range list {
		if at, waits := x.due(); Shown(x, c).Night(awake, at, waits) {
			out = append(out, x)
		}
	}
	return out
}

// Start is an hour of the day at which the first soak may begin, and what it misses.
type Start[T Dated] struct {
	At     int // s of the day
	Missed []T
}

// Best tries each half hour at which somebody is awake, and gives the first of those
// that miss the fewest of the list, and of those that miss the most. The clock of a
// first soak at a second of the day is given by clock.
func Best[T Dated](list []T, awake model.Hours, clock func(start int) Clock) (best, worst Start[T]) {
	return BestBy(awake, func(start int) []T { return Missed(list, clock(start), awake) })
}

// BestBy is Best of a list that goes by the start too: missed gives what a first soak at a
// second of the day misses.
func BestBy[T Dated](awake model.Hours, missed func(start int) []T) (best, worst Start[T]) {
	found, from := false, 0
	if len(awake.Awake) > 0 {
		from = awake.Awake[0].From
	}
	for step := 0; step < int(day); step += halfHour {
		s := Start[T]{At: (from + step) % int(day)}
		if !awake.Up(s.At) {
			continue
		}
		s.Missed = missed(s.At)
		if !found || len(s.Missed) < len(best.Missed) {
			best = s
		}
		if !found || len(s.Missed) > len(worst.Missed) {
			worst = s
		}
		found = true
	}
	return best, worst
}

// On gives the time at which a clock shows a second of the day that t lies in.
func On(t time.Time, second int) time.Time {
	y, m, d := t.Date()
	return time.Date(y, m, d, 0, 0, second, 0, t.Location())
}
