package value

import (
	"strings"
	"time"

	"maltwright/lang/calendar"
	"maltwright/lang/syntax"
	"maltwright/lang/vocabulary"
)

// endOfDay may end a span of the day: it is the midnight that follows.
const endOfDay = "24:00"

// Second reads a time of day, in seconds from midnight: 7:30, 07:30, 07:30:15, 7 am, noon, 7h30.
// It is false for one that no clock shows, and for one that may be of the morning or the evening.
func Second(clock syntax.Word) (second int, ok bool) {
	c, ok := calendar.ReadClock(clock.Text)
	if !ok || c.Bare || len(c.Seconds) != 1 {
		return 0, false
	}
	return c.Seconds[0], true
}

// Between tells whether a stamp is the midnight of a date, which may be the one at its
// beginning or the one at its end.
func Between(s syntax.Stamp) bool {
	return s.Date.Text != "" && strings.HasSuffix(strings.ToLower(s.Clock.Text), vocabulary.Midnight)
}

// SpanOfDay reads a span of the day, in seconds from midnight; it may run over midnight.
// Where an end is no time of day it gives that end as bad.
func SpanOfDay(m syntax.Moment) (span [2]int, bad *syntax.Stamp) {
	from, ok := Second(m.From.Clock)
	if !ok {
		return span, &m.From
	}
	if ClockText(*m.To, true) == endOfDay {
		return [2]int{from, 24 * 3600}, nil
	}
	to, ok := Second(m.To.Clock)
	if !ok {
		return span, m.To
	}
	return [2]int{from, to}, nil
}

// Date reads a date, 2026-03-06 or 6 March 2026. It is false for one that no calendar has, and
// for one that may be of several days.
func Date(date syntax.Word) (time.Time, bool) {
	d, ok := calendar.ReadDate(date.Text)
	days := d.Days()
	if !ok || len(days) != 1 {
		return time.Time{}, false
	}
	return days[0], true
}

// ClockText writes the time of day of a stamp in its canonical spelling: of 24 hours, with
// two digits for the hour. A midnight that ends a span is the end of its day. What is
// none, or may be one of two, stays as it is.
func ClockText(s syntax.Stamp, ends bool) string {
	text := s.Clock.Text
	of24, ok := calendar.Of24(text)
	switch {
	case !ok || Between(s):
		return text
	case strings.Trim(text, "0123456789:") == "": // 7:30:00 says its seconds
		if text[1] == ':' {
			return "0" + text
		}
		return text
	case of24 == midnight && ends:
		return endOfDay
	}
	return of24
}

// midnight is that at which a day begins.
const midnight = "00:00"
