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
	"maltwright/lang/vocabulary"
)

// readCondition reads tests joined by "and". It takes all the terms.
func readCondition(r *reader, _ *vocabulary.Slot, terms []syntax.Term) ([]syntax.Term, *value, bool) {
	if len(terms) == 0 {
		return terms, nil, true
	}
	whole := terms[0].Range().Join(terms[len(terms)-1].Range())
	c := &model.Condition{Place: r.at(whole)}
	for _, part := range splitAnd(terms) {
		if len(part) == 0 {
			r.note(valueNeeded.At(c.Place, `"and" joins two tests, and one is missing`))
			return terms, nil, false
		}
		t, ok := r.test(part)
		if !ok {
			return terms, nil, false
		}
		c.Tests = append(c.Tests, t)
	}
	return nil, &value{place: c.Place, condition: c}, true
}

func splitAnd(terms []syntax.Term) [][]syntax.Term {
	parts := [][]syntax.Term{nil}
	for _, t := range terms {
		if w, ok := t.(syntax.Word); ok && w.Text == "and" {
			parts = append(parts, nil)
			continue
		}
		last := len(parts) - 1
		parts[last] = append(parts[last], t)
	}
	return parts
}

// test reads one test: a measure, then a bound with its value, or a range.
func (r *reader) test(terms []syntax.Term) (model.Test, bool) {
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
func (r *reader) measure(terms []syntax.Term) (m vocabulary.Measure, rest []syntax.Term, ok bool) {
	first, isWord := terms[0].(syntax.Word)
	if !isWord {
		r.note(unknownWord.At(r.at(terms[0].Range()), "a test begins with what is measured: "+strings.Join(r.measureWords(), ", ")))
		return m, nil, false
	}
	name, used, s := first.Text, 1, first.Span
	if second, two := wordAt(terms, 1); two {
		if _, known := vocabulary.FindMeasure(name + " " + second.Text); known || !r.knows(name) {
			name, used, s = name+" "+second.Text, 2, first.Join(second.Span)
		}
	}
	m, known := vocabulary.FindMeasure(name)
	if known && r.measurable(m) {
		return m, terms[used:], true
	}
	r.unknownMeasure(name, s, known)
	return m, nil, false
}

func wordAt(terms []syntax.Term, i int) (syntax.Word, bool) {
	if i >= len(terms) {
		return syntax.Word{}, false
	}
	w, ok := terms[i].(syntax.Word)
	return w, ok
}

func (r *reader) knows(name string) bool {
	_, ok := vocabulary.FindMeasure(name)
	return ok
}

func (r *reader) unknownMeasure(name string, s source.Span, elsewhere bool) {
	f := unknownWord.At(r.at(s), fmt.Sprintf("%q is nothing that can be measured here", name))
	f.Hint = "known here: " + strings.Join(r.measureWords(), ", ")
	if meant, ok := nearest.Word(name, r.measureWords()); ok && !elsewhere {
		f.Hint = fmt.Sprintf("did you mean %s?", meant)
		f.Fixes = certain(r.at(s), name, r.measureWords())
	}
	r.note(f)
}

// measurable tells whether the measure can be named here: a promise in the
// process, any other in the stages where it can be looked at. The head of a stage
// counts as part of the stage.
func (r *reader) measurable(m vocabulary.Measure) bool {
	scope := r.in
	if r.opens != vocabulary.None {
		scope = r.opens
	}
	return m.Promise && scope == vocabulary.Process || slices.Contains(m.In, scope)
}

func (r *reader) measureWords() []string {
	var words []string
	for _, m := range vocabulary.Measures() {
		if r.measurable(m) {
			words = append(words, m.Word)
		}
	}
	return words
}

// asked reads what is asked of a measure.
func (r *reader) asked(t *model.Test, m vocabulary.Measure, term syntax.Term) bool {
	b, bounded := term.(syntax.Bounded)
	if bounded {
		t.Op, _ = opOf(b.Bound.Text)
		term = b.Value
	}
	if m.Words != nil {
		return r.askedWord(t, m, term)
	}
	a, ok := term.(syntax.Amount)
	if !ok {
		f := wrongDimension.At(r.at(term.Range()), fmt.Sprintf("%s needs a value with its unit, not %s", m.Word, r.at(term.Range()).Text()))
		f.Hint = "such as " + sampleTest(m)
		r.note(f)
		return false
	}
	rng, ok := r.rangeOf(a, m.Dims)
	if !ok {
		return false
	}
	if !bounded && a.High == nil {
		f := boundMissing.At(t.Place, fmt.Sprintf("%s does not say whether it is the least or the most", t.Place.Text()))
		f.Hint = fmt.Sprintf("write %s at least %s, or %s at most %s", m.Word, r.at(a.Span).Text(), m.Word, r.at(a.Span).Text())
		r.note(f)
		return false
	}
	if !bounded {
		t.Op = quantity.Is
	}
	t.Bound = &model.Bound{Bound: quantity.Bound{Op: t.Op, Range: rng}, Place: r.at(a.Span)}
	r.oneBound(bounding(t.Op, bounded), a, rng)
	return r.upright(&value{rng: rng, amount: r.at(a.Span), op: bounding(t.Op, bounded)})
}

// oneBound reports two values behind a bound that takes one. The value is kept as it
// counts, so that nothing else seems to be missing.
func (r *reader) oneBound(op *quantity.Op, a syntax.Amount, rng quantity.Range) {
	if op == nil || *op == quantity.Is || a.High == nil || rng.Low.SI >= rng.High.SI {
		return // a range that is upside down is told of as such
	}
	f := rangeUnexpected.At(r.at(a.Span), fmt.Sprintf("%q takes one value, and %s are two", *op, r.at(a.Span).Text()))
	f.Hint = fmt.Sprintf("write %s %s or %s %s, or the range alone", *op, rng.Low, *op, rng.High)
	r.note(f)
}

// bounding is the bound that stands in front of a value, or nil.
func bounding(op quantity.Op, stands bool) *quantity.Op {
	if !stands {
		return nil
	}
	return &op
}

func (r *reader) askedWord(t *model.Test, m vocabulary.Measure, term syntax.Term) bool {
	w, ok := term.(syntax.Word)
	if !ok || !slices.Contains(m.Words, w.Text) {
		r.needed(&vocabulary.Slot{Kind: vocabulary.Choice, Label: m.Word, Words: m.Words}, []syntax.Term{term}, syntax.Word{Text: m.Word})
		return false
	}
	t.Word = w.Text
	return true
}

func sampleTest(m vocabulary.Measure) string {
	switch {
	case m.Words != nil:
		return m.Word + " is " + m.Words[len(m.Words)-1]
	case m.Dims[0] == quantity.Share:
		return m.Word + " at most 10 %"
	case m.Dims[0] == quantity.Number:
		return m.Word + " at least 3/4"
	}
	return m.Word + " at most " + sample(m.Dims[0], "12")
}

// upright reports a range that is upside down.
func (r *reader) upright(v *value) bool {
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
func (v *value) turned() (hint string, repair []finding.Edit) {
	if v.op != nil {
		return fmt.Sprintf("write %q with one value, or the range alone", *v.op), nil
	}
	turned := quantity.Range{Low: v.rng.High, High: v.rng.Low}.String()
	return "write " + turned, []finding.Edit{{Place: v.amount, New: turned}}
}
