package read

import (
	"fmt"
	"slices"
	"strings"
	"time"

	"maltwright/lang/calendar"
	"maltwright/lang/finding"
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

// noClock notes a time that no clock shows. Of an hour alone it is already known that its
// minutes are missing.
func (r *statementReader) noClock(clock syntax.Word) {
	if c, ok := calendar.ReadClock(clock.Text); ok && c.Bare {
		r.told = true
		return
	}
	f := badTime.At(r.at(clock.Span), fmt.Sprintf("%s is no time of day", clock.Text))
	f.Hint = "a time of day goes from 00:00 to 23:59; the night behind midnight is the next day's"
	r.note(f)
}

// clocksMeant offers the times of day that are meant by figures with hours behind them: 7 h.
func (r *statementReader) clocksMeant(f *finding.Finding, terms []syntax.Term) {
	place := r.at(terms[0].Range())
	c, ok := calendar.ReadClock(place.Text())
	if !ok || len(terms) > 1 || len(c.Seconds) == 0 {
		return
	}
	texts := make([]string, len(c.Seconds))
	for i, second := range c.Seconds {
		texts[i] = calendar.Shown(second)
	}
	f.Write(place, texts...)
}

// ofZone tells of a time that names its offset: a record goes by the clock on the wall, so that it
// reads the same wherever it is read.
func (r *statementReader) ofZone(m syntax.Moment) bool {
	if !strings.ContainsAny(m.From.Clock.Text, "Z+") {
		return false
	}
	place := r.at(m.From.Clock.Span)
	f := badTime.At(place, fmt.Sprintf("%s names an offset, and a record goes by the clock on the wall", m.From.Clock.Text))
	f.Hint = "write the time that the clock on the wall showed, such as 07:00"
	at, err := calendar.Reader{Now: time.Now()}.One(m.From.Date.Text + "T" + m.From.Clock.Text)
	if wall := at.At.Local(); err == nil && wall.Format(time.DateOnly) == m.From.Date.Text {
		f.Write(place, wall.Format("15:04"))
	}
	r.note(f)
	return true
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
	if m.To != nil && r.noDates(m) || m.To == nil && r.noDate(m.From.Date) {
		return terms, nil, false
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
		if !r.ofZone(m) {
			r.noClock(m.From.Clock)
		}
		return terms, nil, false
	}
	if v.word != "" && r.noDate(m.From.Date) {
		return terms, nil, false
	}
	v.clock[0] = second
	return terms[1:], v, true
}

const whyOneDay = "read the other way it would lie months off, and a record must mean the same wherever it is read"

// noDate tells of a date that no calendar has, that has no year, or that may be one of several.
func (r *statementReader) noDate(date syntax.Word) bool {
	if _, ok := value.Date(date); ok {
		return false
	}
	place := r.at(date.Span)
	d, _ := calendar.ReadDate(date.Text)
	days := d.Days()
	f := badTime.At(place, fmt.Sprintf("%s is no date", date.Text))
	switch {
	case d.Yearless():
		f.Message, f.Why, f.Hint = fmt.Sprintf("%s does not say its year", date.Text), whyOneDay, "write its year too, as in 2026-03-06"
		if days = r.daysOfBatch(d); len(days) > 0 {
			f.Write(place, written(days)...)
		}
	case len(days) > 1:
		f.Message, f.Why = fmt.Sprintf("%s may be one of several days: which of its figures is the month?", date.Text), whyOneDay
		f.Write(place, written(days)...)
	}
	r.note(f)
	return true
}

// noDates tells of a span of days of which an end is not settled: both in the order of figures
// that they are then in, and with the year of the other where one has none.
func (r *statementReader) noDates(m syntax.Moment) bool {
	from, _ := calendar.ReadDate(m.From.Date.Text)
	to, _ := calendar.ReadDate(m.To.Date.Text)
	_, first := value.Date(m.From.Date)
	_, last := value.Date(m.To.Date)
	if first && last {
		return false
	}
	place := r.at(m.Span)
	f := badTime.At(place, fmt.Sprintf("%s may be of several days", place.Text()))
	f.Why = whyOneDay
	var texts []string
	for _, order := range []calendar.Order{calendar.DayFirst, calendar.MonthFirst} {
		a, one := from.InOrder(order, to)
		b, other := to.InOrder(order, from)
		text := fmt.Sprintf("%s %s %s", a.Format(time.DateOnly), vocabulary.To, b.Format(time.DateOnly))
		if one && other && !a.After(b) && !slices.Contains(texts, text) {
			texts = append(texts, text)
		}
	}
	if len(texts) == 0 {
		return r.noDate(m.From.Date) || r.noDate(m.To.Date)
	}
	f.Write(place, texts...)
	r.note(f)
	return true
}

// longAfter is how long after the beginning of a batch a line of its record is looked for, d.
const longAfter = 183

// daysOfBatch are the days that a date without a year may be of in the record of a batch:
// none before it began, and none long after.
func (r *statementReader) daysOfBatch(d calendar.Date) (list []time.Time) {
	if r.block == nil || r.in != vocabulary.Batch {
		return nil
	}
	began, ok := value.Began(r.block.Statements)
	if !ok {
		return nil
	}
	first := time.Date(began.Year(), began.Month(), began.Day(), 0, 0, 0, 0, time.UTC)
	for _, year := range []int{began.Year(), began.Year() + 1} {
		for _, day := range d.In(year) {
			if !day.Before(first) && !day.After(first.AddDate(0, 0, longAfter)) {
				list = append(list, day)
			}
		}
	}
	return list
}

func written(days []time.Time) []string {
	list := make([]string, len(days))
	for i, d := range days {
		list[i] = d.Format(time.DateOnly)
	}
	return list
}
