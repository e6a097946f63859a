package outline

import (
	"fmt"
	"slices"
	"time"

	"maltwright/lang/source"
	"maltwright/lang/syntax"
	"maltwright/lang/value"
	"maltwright/lang/vocabulary"
)

// day is a run of lines of a record that are of one day.
type day struct {
	date  time.Time
	lines []*syntax.Statement
}

// daysOf parts the lines of a record by their days. A line without a time is of the day above it; those in
// front of the first day are not in it.
func daysOf(b *syntax.Block) []day {
	var list []day
	times := value.Times(b.Statements)
	for _, s := range b.Statements {
		at, timed := times[s]
		if timed && (len(list) == 0 || !sameDay(list[len(list)-1].date, at)) {
			list = append(list, day{date: at})
		}
		if len(list) > 0 {
			last := &list[len(list)-1]
			last.lines = append(last.lines, s)
		}
	}
	return list
}

func sameDay(a, b time.Time) bool {
	return a.Year() == b.Year() && a.YearDay() == b.YearDay()
}

func (d day) span() source.Span {
	return source.Span{Start: d.lines[0].Start, End: d.lines[len(d.lines)-1].End}
}

// days are the days of a record with what was written on each, and in front of them, where a line is broken
// there, those of which the day is not known.
func days(f *source.File, b *syntax.Block) []Symbol {
	if b == nil {
		return nil
	}
	reading := func(s *syntax.Statement) Symbol {
		return Symbol{Kind: Reading, Of: vocabulary.Batch, Name: s.Verb.Text, Detail: behindVerb(f, s), Whole: s.Span, Word: s.Verb.Span}
	}
	var list []Symbol
	all := daysOf(b)
	front := b.Statements
	if len(all) > 0 {
		front = front[:slices.Index(front, all[0].lines[0])]
	}
	if slices.ContainsFunc(front, func(s *syntax.Statement) bool { return s.Broken }) { // as that which says when it began
		for _, s := range front {
			if !s.Broken {
				list = append(list, reading(s))
			}
		}
	}
	for _, d := range all {
		sym := Symbol{Kind: Day, Of: vocabulary.Batch, Name: d.date.Format(time.DateOnly), Detail: fmt.Sprintf("%d lines", len(d.lines)), Whole: d.span(), Word: d.lines[0].Verb.Span}
		if len(d.lines) == 1 {
			sym.Detail = "1 line"
		}
		for _, s := range d.lines {
			sym.Inside = append(sym.Inside, reading(s))
		}
		list = append(list, sym)
	}
	return list
}
