package read

import (
	"fmt"
	"slices"
	"strings"

	"maltwright/lang/finding"
	"maltwright/lang/model"
	"maltwright/lang/nearest"
	"maltwright/lang/quantity"
	"maltwright/lang/source"
	"maltwright/lang/syntax"
	"maltwright/lang/value"
	"maltwright/lang/vocabulary"
)

// readCondition reads tests joined by "and". It takes all the terms.
func readCondition(r *statementReader, _ *vocabulary.Slot, terms []syntax.Term) ([]syntax.Term, *given, bool) {
	if len(terms) == 0 {
		return terms, nil, true
	}
	whole := terms[0].Range().Join(terms[len(terms)-1].Range())
	c := &model.Condition{Place: r.at(whole)}
	for _, part := range value.Joined(terms) {
		if len(part) == 0 {
			r.note(valueNeeded.At(c.Place, fmt.Sprintf("%q joins two tests, and one is missing", vocabulary.And)))
			return terms, nil, false
		}
		t, ok := r.test(part)
		if !ok {
			return terms, nil, false
		}
		c.Tests = append(c.Tests, t)
	}
	return nil, &given{place: c.Place, condition: c}, true
}

// test reads one test: a measure, then a bound with its value, or a range.
func (r *statementReader) test(terms []syntax.Term) (model.Test, bool) {
	t := model.Test{Place: r.at(terms[0].Range().Join(terms[len(terms)-1].Range()))}
	m, rest, ok := r.measure(terms)
	if !ok {
		return t, false
	}
	t.Measure = m.Word
	switch {
	case m.Bare && len(rest) == 0:
		return t, true
	case m.Bare:
		r.tooMany(rest, syntax.Word{Text: m.Word})
		return t, false
	case len(rest) == 0:
		r.note(valueNeeded.At(t.Place, fmt.Sprintf("%s needs a bound, such as %s", m.Word, sampleTest(m))))
		return t, false
	case len(rest) > 1:
		r.tooMany(rest[1:], syntax.Word{Text: m.Word})
		return t, false
	}
	return t, r.asked(&t, m, rest[0])
}

// measure reads the one or two words that name a measure.
func (r *statementReader) measure(terms []syntax.Term) (m vocabulary.Measure, rest []syntax.Term, ok bool) {
	named, isWord := value.MeasuredBy(terms)
	switch {
	case !isWord:
		r.note(unknownWord.At(r.at(terms[0].Range()), "a test begins with what is measured: "+strings.Join(r.measureWords(), ", ")))
	case named.Measure != nil && r.measurable(*named.Measure):
		return *named.Measure, named.Rest, true
	default:
		r.unknownMeasure(named.Name, named.Span, named.Measure != nil)
	}
	return m, nil, false
}

func (r *statementReader) unknownMeasure(name string, s source.Span, elsewhere bool) {
	f := unknownWord.At(r.at(s), fmt.Sprintf("%q is nothing that can be measured here", name))
	f.Hint = "known here: " + strings.Join(r.measureWords(), ", ")
	if meant, _, ok := vocabulary.Synonym(name, r.measureWords()); ok {
		f.Ask(r.at(s), meant)
	} else if meant, ok := nearest.Word(name, r.measureWords()); ok && !elsewhere {
		f.AskOnly(r.at(s), meant, certain(name, r.measureWords()))
	}
	r.note(f)
}

// measurable tells whether the measure can be named here: a promise in the
// process, any other in the stages where it can be looked at. The head of a stage
// counts as part of the stage.
func (r *statementReader) measurable(m vocabulary.Measure) bool {
	scope := r.in
	if r.opens != vocabulary.None {
		scope = r.opens
	}
	return m.Promise && scope == vocabulary.Process || slices.Contains(m.In, scope)
}

func (r *statementReader) measureWords() []string {
	var words []string
	for _, m := range vocabulary.Measures() {
		if r.measurable(m) {
			words = append(words, m.Word)
		}
	}
	return words
}

// asked reads what is asked of a measure.
func (r *statementReader) asked(t *model.Test, m vocabulary.Measure, term syntax.Term) bool {
	f, _, _ := value.FigureOf([]syntax.Term{term}, nil)
	bound := f.OpOf()
	t.Op = f.Op
	if m.Words != nil {
		return r.askedWord(t, m, f.Value)
	}
	a, ok := f.Value.(syntax.Amount)
	if !ok {
		place := r.at(f.Value.Range())
		n := wrongDimension.At(place, fmt.Sprintf("%s needs a value with its unit, not %s", m.Word, place.Text()))
		n.Hint = fmt.Sprintf("its form: %s at least|at most|above|below <%s>", m.Word, dimensionWords(m.Dims))
		r.note(n)
		return false
	}
	rng, ok := r.rangeOf(a, &vocabulary.Slot{Dims: m.Dims})
	if !ok {
		return false
	}
	if bound == nil && a.High == nil {
		n := boundMissing.At(t.Place, fmt.Sprintf("%s does not say at least or at most", t.Place.Text()))
		figure := r.at(a.Span).Text()
		n.Write(t.Place, r.bounded(m, figure)...)
		r.note(n)
		return false
	}
	if bound == nil {
		t.Op = quantity.Is
	}
	t.Bound = &model.Bound{Bound: quantity.Bound{Op: t.Op, Range: rng}, Place: r.at(a.Span)}
	r.oneBound(bound, a, rng)
	return r.upright(&given{rng: rng, amount: r.at(a.Span), op: bound})
}

// bounded writes a test of a measure with the bound that it lacks: with the one that can be
// waited for in this stage, or with either.
func (r *statementReader) bounded(m vocabulary.Measure, figure string) (texts []string) {
	scope := r.in
	if r.opens != vocabulary.None {
		scope = r.opens
	}
	ops := []quantity.Op{quantity.AtLeast, quantity.AtMost}
	if up, sure := m.GoesUp(scope); sure && (r.clause == clauseUntil || r.verb == clauseUntil || r.verb == vocabulary.VerbGate) {
		ops = []quantity.Op{wayOf(up)}
	}
	for _, op := range ops {
		texts = append(texts, fmt.Sprintf("%s %s %s", m.Word, op, figure))
	}
	return texts
}

// oneBound reports two values behind a bound that takes one. The value is kept as it
// counts, so that nothing else seems to be missing.
func (r *statementReader) oneBound(op *quantity.Op, a syntax.Amount, rng quantity.Range) {
	if op == nil || *op == quantity.Is || a.High == nil || rng.Low.SI >= rng.High.SI {
		return // a range that is upside down is told of as such
	}
	f := rangeUnexpected.At(r.at(a.Span), fmt.Sprintf("%q takes one value, and %s are two", *op, r.at(a.Span).Text()))
	f.Hint = fmt.Sprintf("write %s %s or %s %s, or the range alone", *op, rng.Low, *op, rng.High)
	r.note(f)
}

func (r *statementReader) askedWord(t *model.Test, m vocabulary.Measure, term syntax.Term) bool {
	w, ok := term.(syntax.Word)
	if !ok || !slices.Contains(m.Words, w.Text) {
		r.needed(&vocabulary.Slot{Kind: vocabulary.Choice, Label: m.Word, Words: m.Words}, false, []syntax.Term{term}, syntax.Word{Text: m.Word})
		return false
	}
	t.Word = w.Text
	return true
}

func sampleTest(m vocabulary.Measure) string {
	op, figure := quantity.AtMost, ""
	if len(m.Rises) > 0 && len(m.Falls) == 0 {
		op = quantity.AtLeast
	}
	switch {
	case m.Words != nil:
		op, figure = quantity.Is, m.Words[len(m.Words)-1]
	case m.Dims[0] == quantity.Share:
		figure = "10 %"
	case m.Dims[0] == quantity.Number:
		op, figure = quantity.AtLeast, "3/4"
	default:
		figure = sample(m.Dims[0], "12")
	}
	return fmt.Sprintf("%s %s %s", m.Word, op, figure)
}

// upright reports a range that is upside down.
func (r *statementReader) upright(v *given) bool {
	if v.rng.Low.SI <= v.rng.High.SI {
		return true
	}
	f := rangeUpsideDown.At(v.amount, fmt.Sprintf("%s runs from the higher to the lower", v.amount.Text()))
	f.Hint, f.Fixes = v.turned()
	r.note(f)
	return false
}

// turned is what to write for a range that is upside down. Which end a bound with a
// range was meant for cannot be told.
func (v *given) turned() (hint string, repair []finding.Edit) {
	if v.op != nil {
		return fmt.Sprintf("write %q with one value, or the range alone", *v.op), nil
	}
	turned := quantity.Range{Low: v.rng.High, High: v.rng.Low}.String()
	return "write " + turned, []finding.Edit{{Place: v.amount, New: turned}}
}
