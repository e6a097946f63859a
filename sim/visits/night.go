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

// Clock gives the second of the day that a clock on the wall shows so many seconds
// after the first soak.
type Clock func(after float64) int

// Daily is the clock of a first soak at a second of some day, where no clock is ever
// put forward or back.
func Daily(start int) Clock {
	return func(after float64) int {
		s := (start + int(math.Floor(after))) % int(day)
		return (s + int(day)) % int(day)
	}
}

// From is the clock of a first soak at a time, by the rules of its time zone.
func From(start time.Time) Clock {
	return func(after float64) int {
		h, m, s := start.Add(time.Duration(math.Floor(after)) * time.Second).Clock()
		return h*3600 + m*60 + s
	}
}

// Awake tells whether somebody is awake so many seconds after the first soak.
func (c Clock) Awake(awake model.Clock, after float64) bool { return awake.Awake(c(after)) }

// Night tells whether nobody is awake when something is due, nor was or will be
// within the patience, nor as long as it may wait.
func (c Clock) Night(awake model.Clock, at, waits float64) bool {
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
type Dated interface{ due() (at, waits float64) }

// Missed gives those of the list that fall in the night.
func Missed[T Dated](list []T, c Clock, awake model.Clock) []T {
	var out []T
	for _, x := range list {
		if at, waits := x.due(); c.Night(awake, at, waits) {
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
func Best[T Dated](list []T, awake model.Clock, clock func(start int) Clock) (best, worst Start[T]) {
	found := false
	for step := 0; step < int(day); step += halfHour {
		s := Start[T]{At: (awake.From + step) % int(day)}
		if !awake.Awake(s.At) {
			continue
		}
		s.Missed = Missed(list, clock(s.At), awake)
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
