package read

import (
	"fmt"
	"time"

	"maltwright/lang/syntax"
	"maltwright/lang/vocabulary"
)

func readClock(r *reader, _ *vocabulary.Slot, terms []syntax.Term) ([]syntax.Term, *value, bool) {
	if len(terms) == 0 {
		return terms, nil, true
	}
	m, ok := terms[0].(syntax.Moment)
	if !ok || m.To == nil || m.From.Date.Text != "" || m.To.Date.Text != "" {
		return terms, nil, true
	}
	v := &value{place: r.at(m.Span)}
	for i, s := range []syntax.Stamp{m.From, *m.To} {
		second, err := clockSeconds(s.Clock.Text)
		if i == 1 && s.Clock.Text == endOfDay {
			second, err = 24*3600, nil
		}
		if err != nil {
			r.note(badTime.At(r.at(s.Span), fmt.Sprintf("%s is no time of day", s.Clock.Text)))
			return terms, nil, false
		}
		v.clock[i] = second
	}
	return terms[1:], v, true
}

// endOfDay may end a span of the day: it is the midnight that follows.
const endOfDay = "24:00"

func clockSeconds(text string) (int, error) {
	t, err := time.Parse("15:04", text)
	if err != nil {
		t, err = time.Parse("15:04:05", text)
	}
	return t.Hour()*3600 + t.Minute()*60 + t.Second(), err
}

func readDate(r *reader, _ *vocabulary.Slot, terms []syntax.Term) ([]syntax.Term, *value, bool) {
	if len(terms) == 0 {
		return terms, nil, true
	}
	m, ok := terms[0].(syntax.Moment)
	if !ok || m.To != nil || m.From.Date.Text == "" || m.From.Clock.Text != "" {
		return terms, nil, true
	}
	if _, err := time.Parse(time.DateOnly, m.From.Date.Text); err != nil {
		r.note(badTime.At(r.at(m.Span), fmt.Sprintf("%s is no date", m.From.Date.Text)))
		return terms, nil, false
	}
	return terms[1:], &value{place: r.at(m.Span), word: m.From.Date.Text}, true
}

// readMoment reads a time of day, with its date or without.
func readMoment(r *reader, slot *vocabulary.Slot, terms []syntax.Term) ([]syntax.Term, *value, bool) {
	if len(terms) == 0 {
		return terms, nil, true
	}
	m, ok := terms[0].(syntax.Moment)
	if !ok || m.To != nil || m.From.Clock.Text == "" {
		return terms, nil, true
	}
	v := &value{place: r.at(m.Span), word: m.From.Date.Text}
	second, err := clockSeconds(m.From.Clock.Text)
	if err != nil {
		r.note(badTime.At(r.at(m.From.Clock.Span), fmt.Sprintf("%s is no time of day", m.From.Clock.Text)))
		return terms, nil, false
	}
	if _, err := time.Parse(time.DateOnly, v.word); err != nil && v.word != "" {
		r.note(badTime.At(r.at(m.From.Date.Span), fmt.Sprintf("%s is no date", v.word)))
		return terms, nil, false
	}
	v.clock[0] = second
	return terms[1:], v, true
}
