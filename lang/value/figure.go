package value

import (
	"slices"

	"maltwright/lang/quantity"
	"maltwright/lang/source"
	"maltwright/lang/syntax"
	"maltwright/lang/vocabulary"
)

// Figure is a value and what stands in front of it: air-on 50 to 60 °C, at most 3.
type Figure struct {
	Where string       // the place of a temperature, "" where none is said
	Bound *syntax.Word // as written, nil where none is
	Op    quantity.Op  // of the bound
	Value syntax.Term
	Span  source.Span // the whole of it
}

// FigureOf takes the first figure of the terms, in which one of the places may be said,
// and gives the terms behind it. It is false where the terms end before a value.
func FigureOf(terms []syntax.Term, places []string) (f Figure, rest []syntax.Term, ok bool) {
	if len(terms) == 0 {
		return f, terms, false
	}
	f.Span = terms[0].Range()
	if w, is := terms[0].(syntax.Word); is && slices.Contains(places, w.Text) {
		f.Where = w.Text
		if terms = terms[1:]; len(terms) == 0 {
			return f, terms, false
		}
	}
	f.Value = terms[0]
	if b, is := terms[0].(syntax.Bounded); is {
		f.Bound, f.Value = &b.Bound, b.Value
		f.Op, _ = vocabulary.BoundOp(b.Bound.Text) // the lexer knows no others
	}
	f.Span = f.Span.Join(terms[0].Range())
	return f, terms[1:], true
}

// OpOf is the bound of the figure, nil where none is written.
func (f *Figure) OpOf() *quantity.Op {
	if f.Bound == nil {
		return nil
	}
	return &f.Op
}
