package value

import (
	"time"

	"maltwright/lang/syntax"
)

// endOfDay may end a span of the day: it is the midnight that follows.
const endOfDay = "24:00"

// Second reads a time of day, in seconds from midnight: 7:30, 07:30, 07:30:15. It is
// false for one that no clock shows.
func Second(clock syntax.Word) (second int, ok bool) {
	t, err := time.Parse("15:04", clock.Text)
	if err != nil {
		t, err = time.Parse("15:04:05", clock.Text)
	}
	return t.Hour()*3600 + t.Minute()*60 + t.Second(), err == nil
}

// SpanOfDay reads a span of the day, in seconds from midnight; it may run over midnight.
// Where an end is no time of day it gives that end as bad.
func SpanOfDay(m syntax.Moment) (span [2]int, bad *syntax.Stamp) {
	from, ok := Second(m.From.Clock)
	if !ok {
		return span, &m.From
	}
	if m.To.Clock.Text == endOfDay {
		return [2]int{from, 24 * 3600}, nil
	}
	to, ok := Second(m.To.Clock)
	if !ok {
		return span, m.To
	}
	return [2]int{from, to}, nil
}

// Date reads a date, 2026-03-06. It is false for one that no calendar has.
func Date(date syntax.Word) (time.Time, bool) {
	t, err := time.Parse(time.DateOnly, date.Text)
	return t, err == nil
}

// ClockText writes a time of day in its canonical spelling, with two digits for the hour.
func ClockText(clock syntax.Word) string {
	if len(clock.Text) > 1 && clock.Text[1] == ':' {
		return "0" + clock.Text
	}
	return clock.Text
}
