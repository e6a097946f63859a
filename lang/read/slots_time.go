package read

import (
	"fmt"
	"strings"
	"unicode"

	"maltwright/lang/syntax"
	"maltwright/lang/value"
	"maltwright/lang/vocabulary"
)

func readClock(r *statementReader, _ *vocabulary.Slot, terms []syntax.Term) ([]syntax.Term, *given, bool) {
	if len(terms) == 0 {
		return terms, nil, true
	}
	m, ok := terms[0].(syntax.Moment)
	if !ok || m.To == nil || m.From.Date.Text != "" || m.To.Date.Text != "" {
		return terms, nil, true
	}
	span, bad := value.SpanOfDay(m)
	if bad != nil {
		r.noClock(bad.Clock)
		return terms, nil, false
	}
	return terms[1:], &given{place: r.at(m.Span), clock: span}, true
}

// noClock notes a time that no clock shows. Of an hour alone it is already known that am
// or pm is missing.
func (r *statementReader) noClock(clock syntax.Word) {
	if strings.ContainsFunc(clock.Text, func(c rune) bool { return c == ':' || unicode.IsLetter(c) }) {
		r.note(badTime.At(r.at(clock.Span), fmt.Sprintf("%s is no time of day", clock.Text)))
	}
}

// readHour reads a time of day of any day.
func readHour(r *statementReader, _ *vocabulary.Slot, terms []syntax.Term) ([]syntax.Term, *given, bool) {
	if len(terms) == 0 {
		return terms, nil, true
	}
	m, ok := terms[0].(syntax.Moment)
	if !ok || m.To != nil || m.From.Date.Text != "" {
		return terms, nil, true
	}
	second, ok := value.Second(m.From.Clock)
	if !ok {
		r.noClock(m.From.Clock)
		return terms, nil, false
	}
	return terms[1:], &given{place: r.at(m.Span), clock: [2]int{second}}, true
}

func readDate(r *statementReader, slot *vocabulary.Slot, terms []syntax.Term) ([]syntax.Term, *given, bool) {
	if len(terms) == 0 {
		return terms, nil, true
	}
	m, ok := terms[0].(syntax.Moment)
	if !ok || m.From.Date.Text == "" || m.From.Clock.Text != "" || m.To != nil && !slot.Range {
		return terms, nil, true
	}
	v := &given{place: r.at(m.Span), word: m.From.Date.Text, last: m.From.Date.Text}
	if m.To != nil {
		v.last = m.To.Date.Text
	}
	if m.To != nil && (m.To.Date.Text == "" || m.To.Clock.Text != "") {
		return terms, nil, true
	}
	for _, date := range []string{v.word, v.last} {
		if _, ok := value.Date(syntax.Word{Text: date}); !ok {
			r.note(badTime.At(v.place, fmt.Sprintf("%s is no date", date)))
			return terms, nil, false
		}
	}
	return terms[1:], v, true
}

// readMoment reads a time of day, with its date or without.
func readMoment(r *statementReader, slot *vocabulary.Slot, terms []syntax.Term) ([]syntax.Term, *given, bool) {
	if len(terms) == 0 {
		return terms, nil, true
	}
	m, ok := terms[0].(syntax.Moment)
	if !ok || m.To != nil || m.From.Clock.Text == "" {
		return terms, nil, true
	}
	if value.Between(m.From) {
		f := badTime.At(r.at(m.Span), fmt.Sprintf("midnight of %s may be where the day begins or where it ends", m.From.Date.Text))
		f.Hint = "write 00:00 with the date of the day that begins then"
		r.note(f)
		return terms, nil, false
	}
	v := &given{place: r.at(m.Span), word: m.From.Date.Text}
	second, ok := value.Second(m.From.Clock)
	if !ok {
		r.noClock(m.From.Clock)
		return terms, nil, false
	}
	if _, ok := value.Date(m.From.Date); !ok && v.word != "" {
		r.note(badTime.At(r.at(m.From.Date.Span), fmt.Sprintf("%s is no date", v.word)))
		return terms, nil, false
	}
	v.clock[0] = second
	return terms[1:], v, true
}
