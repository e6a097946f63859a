package value

import (
	"cmp"
	"fmt"
	"strconv"
	"strings"
	"time"
	"unicode"

	"maltwright/lang/syntax"
	"maltwright/lang/vocabulary"
)

// endOfDay may end a span of the day: it is the midnight that follows.
const endOfDay = "24:00"

// Second reads a time of day, in seconds from midnight: 7:30, 07:30, 07:30:15, 7 am, noon.
// It is false for one that no clock shows.
func Second(clock syntax.Word) (second int, ok bool) {
	text := clock.Text
	if of24, ok := ofTwelve(text); ok {
		text = of24
	}
	t, ok := parseClock(text)
	return t.Hour()*3600 + t.Minute()*60 + t.Second(), ok
}

func parseClock(text string) (time.Time, bool) {
	t, err := time.Parse("15:04", text)
	if err != nil {
		t, err = time.Parse("15:04:05", text)
	}
	return t, err == nil
}

// ofTwelve writes a time of day of a clock of twelve hours as one of twenty-four has it:
// 7:30 pm as 19:30, 12 am as 00:00. It is false for any other.
func ofTwelve(text string) (of24 string, ok bool) {
	at := strings.IndexFunc(text, unicode.IsLetter)
	if at < 0 {
		return "", false
	}
	number, half := strings.Replace(strings.TrimSpace(text[:at]), ".", ":", 1), strings.ReplaceAll(strings.ToLower(text[at:]), ".", "")
	from, known := map[string]int{"am": 0, "pm": 12, vocabulary.Midnight: 0, vocabulary.Noon: 12}[half]
	if number == "" && (half == vocabulary.Noon || half == vocabulary.Midnight) {
		number = "12"
	}
	digits, rest, _ := strings.Cut(number, ":")
	hour, err := strconv.Atoi(digits)
	if !known || err != nil || hour < 1 || hour > 12 || len(half) > len("am") && (hour != 12 || strings.Trim(rest, "0:") != "") {
		return "", false
	}
	of24 = fmt.Sprintf("%02d:%s", hour%12+from, cmp.Or(rest, "00"))
	_, ok = parseClock(of24)
	return of24, ok
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

// Date reads a date, 2026-03-06. It is false for one that no calendar has.
func Date(date syntax.Word) (time.Time, bool) {
	t, err := time.Parse(time.DateOnly, date.Text)
	return t, err == nil
}

// ClockText writes the time of day of a stamp in its canonical spelling: of 24 hours, with
// two digits for the hour. A midnight that ends a span is the end of its day. What is
// none, or may be one of two, stays as it is.
func ClockText(s syntax.Stamp, ends bool) string {
	text := s.Clock.Text
	if of24, ok := ofTwelve(text); ok && !Between(s) {
		if of24 == "00:00" && ends {
			return endOfDay
		}
		return of24
	}
	if len(text) > 1 && text[1] == ':' && !unicode.IsLetter(rune(text[len(text)-1])) && text[len(text)-1] != '.' {
		return "0" + text
	}
	return text
}
