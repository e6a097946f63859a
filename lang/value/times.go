package value

import (
	"time"

	"maltwright/lang/syntax"
	"maltwright/lang/vocabulary"
)

// Times gives the time of each statement of a batch, as the record is read: a time
// without a date follows that above it. A statement that has none, or whose time cannot
// be told, is not in it.
func Times(batch []*syntax.Statement) map[*syntax.Statement]time.Time {
	out := map[*syntax.Statement]time.Time{}
	var last time.Time
	for _, s := range batch {
		at, ok := timeOf(s, last)
		if ok {
			out[s], last = at, at
		}
	}
	return out
}

// Began gives when a batch began, as its record says.
func Began(batch []*syntax.Statement) (time.Time, bool) {
	for _, s := range batch {
		if row, known := vocabulary.Lookup(vocabulary.Batch, s.Verb.Text); known && len(row.Slots) > 0 && row.Slots[0].Kind == vocabulary.Moment {
			return timeOf(s, time.Time{})
		}
	}
	return time.Time{}, false
}

func timeOf(s *syntax.Statement, before time.Time) (time.Time, bool) {
	m, ok := stampIn(s)
	if !ok {
		return before, false
	}
	second, ok := Second(m.From.Clock)
	if !ok {
		return before, false
	}
	if m.From.Date.Text == "" {
		if before.IsZero() {
			return before, false
		}
		return Follow(before, second)
	}
	date, ok := Date(m.From.Date)
	return Instant(date, second), ok
}

// stampIn finds the moment at which a statement of a batch was, in its at or as that of
// its beginning.
func stampIn(s *syntax.Statement) (m syntax.Moment, ok bool) {
	row, known := vocabulary.Lookup(vocabulary.Batch, s.Verb.Text)
	if !known {
		return m, false
	}
	if len(row.Slots) > 0 && row.Slots[0].Kind == vocabulary.Moment && len(s.Terms) > 0 {
		m, ok = s.Terms[0].(syntax.Moment)
		return m, ok && m.To == nil
	}
	at, takes := row.Timed()
	for _, c := range s.Clauses {
		if takes && c.Word.Text == at.Word && len(c.Terms) > 0 {
			m, ok = c.Terms[0].(syntax.Moment)
			return m, ok && m.To == nil
		}
	}
	return m, false
}
