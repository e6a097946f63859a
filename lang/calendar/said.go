package calendar

import (
	"cmp"
	"fmt"
	"slices"
	"strings"
	"time"

	"maltwright/lang/quantity"
)

// The years that are read: those of which the rules of clocks tell, and for which every
// format has a way to write.
const FirstYear, LastYear = 1900, 2999

// Reader reads times of a command line, as people say them.
type Reader struct {
	Now   time.Time // in the zone of the clock on the wall
	Back  bool      // what leaves its day open is the last such time, and not the next
	Dated bool      // a time of day needs its day with it
	Order Order     // which of the day and the month comes first where it cannot be told otherwise
}

// Order is that of the day and the month in a date.
type Order int

// The orders of day and month.
const (
	Unknown Order = iota
	DayFirst
	MonthFirst
)

// Meaning is what a text may mean.
type Meaning struct {
	At     time.Time
	Filled bool // something of it is not in the text, so that it is to be told what was understood
}

// String is the time as it is told: Fri 2026-03-06 18:00.
func (m Meaning) String() string { return m.At.Format("Mon 2006-01-02 15:04") }

// Error says what a text lacks to be a time. It goes on behind the text in quotes.
type Error struct{ Says string }

func (e *Error) Error() string { return strings.TrimPrefix(e.Says, ": ") }

// Slack is how far the other way a time may lie that leaves its day open: who types 14:00 at
// 13:55 of a reading has rounded, and does not mean yesterday.
const Slack = 30 * time.Minute

// One reads a text that means one time. The error is an *Error; where the text may mean
// several times it lists them.
func (r Reader) One(text string) (Meaning, error) { return only(r.Read(text)) }

// Read gives the times that a text may mean, at least one. The error is an *Error.
func (r Reader) Read(text string) ([]Meaning, error) {
	text = strings.Join(strings.Fields(text), " ")
	if at, ok := r.relative(text); ok {
		return r.within([]Meaning{{at, true}})
	}
	text, zone := offset(text)
	s, err := r.said(text)
	switch {
	case err != nil:
		return nil, err
	case len(s.clock.Seconds) == 0 && s.clocked:
		return nil, wrong(" is no time: no clock shows %s", s.clockText)
	case !s.clocked && s.day == nil:
		return nil, noTime
	case !s.clocked:
		return nil, r.dayAlone(s)
	case s.clock.Bare:
		return nil, bare(s)
	case r.Dated && s.day == nil:
		return nil, wrong(" is a time of day; write its date too, as 2026-03-06T%s", Shown(s.clock.Seconds[0]))
	}
	list, err := r.joined(s, zone)
	if err != nil {
		return nil, err
	}
	return r.within(list)
}

// Day reads a text that is a day, as a date: midnight in UTC.
func (r Reader) Day(text string) (Meaning, error) {
	s, err := r.said(strings.Join(strings.Fields(text), " "))
	switch {
	case err != nil || s.day == nil:
		return Meaning{}, wrong(" is no date; write it as 2026-03-06")
	case s.clocked:
		return Meaning{}, wrong(" has a time of day; a date alone is asked for, as 2026-03-06")
	}
	var list []Meaning
	for _, d := range s.day(r, 0) {
		list = append(list, Meaning{d, s.filled})
	}
	list, err = r.within(list)
	if err == nil && len(list) > 1 {
		return Meaning{}, several(list, time.DateOnly)
	}
	m, err := only(list, err)
	return m, err
}

func only(list []Meaning, err error) (Meaning, error) {
	switch {
	case err != nil:
		return Meaning{}, err
	case len(list) > 1:
		return Meaning{}, several(list, "2006-01-02T15:04")
	}
	return list[0], nil
}

func several(list []Meaning, layout string) error {
	var all []string
	for _, m := range list {
		all = append(all, m.At.Format(layout))
	}
	return wrong(" may be %s; write the one that is meant", strings.Join(all, " or "))
}

func wrong(format string, args ...any) *Error { return &Error{fmt.Sprintf(format, args...)} }

var noTime = wrong(" is no time; write it as 2026-03-06T07:00")

func (r Reader) within(list []Meaning) ([]Meaning, error) {
	if len(list) == 0 {
		return nil, noTime
	}
	for _, m := range list {
		if y := m.At.Year(); y < FirstYear || y > LastYear {
			return nil, wrong(": the year must lie in %d to %d", FirstYear, LastYear)
		}
	}
	return list, nil
}

// relative reads now, in 2 h and 2 h ago.
func (r Reader) relative(text string) (time.Time, bool) {
	low := strings.ToLower(text)
	if low == "now" {
		return r.Now, true
	}
	long, sign := "", 1
	if rest, ok := strings.CutPrefix(low, "in "); ok {
		long = rest
	} else if rest, ok := strings.CutSuffix(low, " ago"); ok {
		long, sign = rest, -1
	}
	for _, w := range [][2]string{{"half an hour", "30 min"}, {"an ", "1 "}, {"a ", "1 "}} {
		if rest, ok := strings.CutPrefix(long, w[0]); ok {
			long = w[1] + rest
			break
		}
	}
	q, err := quantity.Parse(long)
	const longest = 100 * 365 * 24 * hour
	if err != nil || q.Dimension != quantity.Time || q.SI < 0 || q.SI > longest {
		return time.Time{}, false
	}
	const day = 24 * hour
	if whole := int(q.SI) / day; float64(whole*day) == q.SI && !strings.Contains(long, "h") { // the same hour of another day, whatever the clocks do
		return r.Now.AddDate(0, 0, sign*whole), true
	}
	return r.Now.Add(time.Duration(sign) * time.Duration(q.SI*float64(time.Second))), true
}

// offset cuts a zone from the end of a text, Z or +01:00.
func offset(text string) (rest string, zone *time.Location) {
	for _, form := range []string{"Z07:00", "-07:00", "Z0700", "-0700"} {
		for _, n := range []int{len("Z"), len("+0100"), len("+01:00")} {
			at := len(text) - n
			if at < 1 || !isDigit(text[at-1]) || !strings.ContainsRune(text[:at], ':') {
				continue
			}
			if t, err := time.Parse(form, text[at:]); err == nil {
				return text[:at], t.Location()
			}
		}
	}
	return text, nil
}

// joined puts the days and the times of day together.
func (r Reader) joined(s said, zone *time.Location) (list []Meaning, err error) {
	for _, second := range s.clock.Seconds {
		days := s.day
		if days == nil {
			days = openDay(1)
		}
		for _, d := range days(r, second) {
			in := cmp.Or(zone, r.Now.Location())
			at := onClock(d, second, in)
			if zone == nil {
				if err := shownOnce(at, d, second); err != nil {
					return nil, err
				}
			}
			if !slices.ContainsFunc(list, func(m Meaning) bool { return m.At.Equal(at) }) {
				list = append(list, Meaning{at, s.filled || s.day == nil})
			}
		}
	}
	return list, nil
}

// onClock is a time of day of a day in a zone.
func onClock(d time.Time, second int, zone *time.Location) time.Time {
	return time.Date(d.Year(), d.Month(), d.Day(), second/hour, second/60%60, second%60, 0, zone)
}

// wallClock is what a clock on the wall shows, with its date.
const wallClock = "2006-01-02 15:04:05"

// shownOnce refuses a time that no clock shows, for the clocks are put forward over it, and
// one that comes again when they are put back.
func shownOnce(at, d time.Time, second int) error {
	if at.Format(wallClock) != onClock(d, second, time.UTC).Format(wallClock) {
		return wrong(": the clocks are put forward then, and none shows this time")
	}
	for _, shift := range []time.Duration{-2 * time.Hour, -time.Hour, -30 * time.Minute, 30 * time.Minute, time.Hour, 2 * time.Hour} {
		if at.Add(shift).Format(wallClock) == at.Format(wallClock) {
			return wrong(": the clocks are put back then, and this time comes twice; name its offset, such as %s", at.Format("2006-01-02T15:04Z07:00"))
		}
	}
	return nil
}

// dayAlone says that a day has no time of day.
func (r Reader) dayAlone(s said) error {
	list := s.day(r, 0)
	if len(list) == 0 {
		return noTime
	}
	return wrong(" is a day; write the time of day too, as %sT07:00", list[0].Format(time.DateOnly))
}

// bare says that an hour says neither its minutes nor its half of the day.
func bare(s said) error {
	var all []string
	for _, second := range s.clock.Seconds {
		all = append(all, Shown(second))
	}
	return wrong(": write the minutes or am or pm behind %s too, as %s", s.clockText, strings.Join(all, " or "))
}

// Looks tells whether a text is made of dates and times of day alone, or says how far a time
// lies from now, whether it then means one time or not.
func Looks(text string) bool {
	text = strings.Join(strings.Fields(text), " ")
	r := Reader{Now: time.Unix(0, 0).UTC()}
	if _, ok := r.relative(text); ok {
		return true
	}
	text, _ = offset(text)
	s, err := r.said(text)
	return err == nil && (s.clocked || s.day != nil)
}
