package model

import (
	"slices"
	"time"

	"maltwright/lang/source"
)

// Hours are when somebody is there to do a step: by day the union of the shifts, and on no
// day that is away.
type Hours struct {
	Awake []Shift // none where it is not said
	Away  []Days
}

// Shift is a span of the day in which somebody is up.
type Shift struct {
	Clock
	Hands *Quantity // how many; nil where it is not said
}

// Days are days of the calendar, the first and the last with them, each by its midnight in
// UTC whatever the zone.
type Days struct {
	First, Last time.Time
	Place       source.Place
}

// Said tells whether anything is known of when somebody is there.
func (h Hours) Said() bool { return len(h.Awake)+len(h.Away) > 0 }

// Up tells whether somebody is up at a second of a day that is not away. Where no shift is
// said, somebody may be at any.
func (h Hours) Up(second int) bool {
	return len(h.Awake) == 0 || slices.ContainsFunc(h.Awake, func(s Shift) bool { return s.Clock.Awake(second) })
}

// AwayOn tells whether nobody works on a day, given by its midnight in UTC.
func (h Hours) AwayOn(day time.Time) bool {
	return slices.ContainsFunc(h.Away, func(d Days) bool { return !day.Before(d.First) && !day.After(d.Last) })
}

// Hands is how many are up at a second of the day, in all shifts together; known is false
// where one of them does not say, or there is none.
func (h Hours) Hands(second int) (n int, known bool) {
	for _, s := range h.Awake {
		if !s.Clock.Awake(second) {
			continue
		}
		if s.Hands == nil {
			return 0, false
		}
		n, known = n+int(s.Hands.SI), true
	}
	return n, known
}

// minute is the step in which a day is looked through, s.
const minute = 60

// Waking is how long somebody is up in a day, s, to the minute.
func (h Hours) Waking() float64 {
	up := 0
	for second := 0; second < 24*3600; second += minute {
		if h.Up(second) {
			up += minute
		}
	}
	return float64(up)
}
