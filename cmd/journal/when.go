package journal

import (
	"slices"
	"time"

	"maltwright/lang/syntax"
	"maltwright/lang/value"
	"maltwright/lang/vocabulary"
)

// stamp is the time of a line.
type stamp struct{ syntax.Moment }

func (m stamp) text() string {
	if m.From.Date.Text == "" {
		return m.From.Clock.Text
	}
	return m.From.Date.Text + " " + m.From.Clock.Text
}

// stampOf finds the time that a line of a record says; false where it says none, or one that is
// no single time.
func stampOf(s *syntax.Statement) (m stamp, ok bool) {
	row, known := vocabulary.Lookup(vocabulary.Batch, s.Verb.Text)
	if !known {
		return m, false
	}
	at, takes := row.Timed()
	for _, c := range s.Clauses {
		if !takes || c.Word.Text != at.Word || len(c.Terms) != 1 {
			continue
		}
		m.Moment, ok = c.Terms[0].(syntax.Moment)
		return m, ok && m.To == nil && m.From.Clock.Text != ""
	}
	return m, false
}

// Bounds of a time without a date.
const (
	ahead = time.Hour      // how far ahead of the clock of the computer it may be meant: that may be off
	fresh = 72 * time.Hour // how long after its last line a batch is taken to be noted as it goes on
)

// meant tells when a line was: by its date or, of a time alone, at that time behind the last
// line; where nothing was read so late yet, at the latest such time before now. It is
// false for a line that says no time, and for one that no clock shows.
func (m stamp) meant(last, now time.Time) (at time.Time, ok bool) {
	second, ok := value.Second(m.From.Clock)
	if !ok {
		return at, false
	}
	if m.From.Date.Text != "" {
		date, ok := value.Date(m.From.Date)
		return value.Instant(date, second), ok
	}
	if last.IsZero() {
		return at, false
	}
	next, follows := value.Follow(last, second)
	if now.Sub(last) > fresh || now.Before(last) {
		if !follows {
			next = value.Instant(last, second)
		}
		return next, true
	}
	if follows && !next.After(now.Add(ahead)) {
		return next, true
	}
	if at = value.Instant(now, second); at.After(now.Add(ahead)) {
		at = value.Instant(now.AddDate(0, 0, -1), second)
	}
	return at, true
}

func stampText(at time.Time) string {
	if at.Second() != 0 {
		return at.Format(stampLayout + ":05")
	}
	return at.Format(stampLayout)
}

// timesIn lists the times of the lines of a batch in their order; of a line that says none, the
// zero time.
func timesIn(list []*syntax.Statement) []time.Time {
	times, out := value.Times(list), make([]time.Time, len(list))
	for i, s := range list {
		out[i] = times[s]
	}
	return out
}

// lastOf is the last of some times, the zero time of none.
func lastOf(times []time.Time) (last time.Time) {
	for _, t := range times {
		if !t.IsZero() {
			last = t
		}
	}
	return last
}

// sameTimes tells whether the lines of a batch have kept their times, but for those that are left
// out of the one and of the other; -1 for none.
func sameTimes(before, after []time.Time, without, with int) bool {
	if without >= 0 {
		before = slices.Delete(slices.Clone(before), without, without+1)
	}
	if with >= 0 {
		after = slices.Delete(slices.Clone(after), with, with+1)
	}
	return slices.EqualFunc(before, after, time.Time.Equal)
}
