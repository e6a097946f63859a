package value

import (
	"maltwright/lang/source"
	"maltwright/lang/syntax"
	"maltwright/lang/vocabulary"
)

// Joined parts terms at each "and": the tests of a condition, or the values of a clause
// that takes several. A part is empty where nothing stands.
func Joined(terms []syntax.Term) [][]syntax.Term {
	parts := [][]syntax.Term{nil}
	for _, t := range terms {
		if w, ok := t.(syntax.Word); ok && w.Text == vocabulary.And {
			parts = append(parts, nil)
			continue
		}
		last := len(parts) - 1
		parts[last] = append(parts[last], t)
	}
	return parts
}

// Measured is what the first words of a test name.
type Measured struct {
	Name string
	Span source.Span
	Rest []syntax.Term // what is asked of it
	// Measure is what is known of the name, nil where it is none of a measure.
	Measure *vocabulary.Measure
}

// MeasuredBy takes the one or two words with which a test begins. Two are taken where
// they name a measure, or where the first alone does not. It is false where the test does
// not begin with a word.
func MeasuredBy(test []syntax.Term) (m Measured, ok bool) {
	first, ok := wordAt(test, 0)
	if !ok {
		return m, false
	}
	m = Measured{Name: first.Text, Span: first.Span, Rest: test[1:], Measure: measure(first.Text)}
	if second, ok := wordAt(test, 1); ok {
		both := first.Text + " " + second.Text
		if of := measure(both); of != nil || m.Measure == nil {
			m = Measured{Name: both, Span: first.Join(second.Span), Rest: test[2:], Measure: of}
		}
	}
	return m, true
}

func measure(name string) *vocabulary.Measure {
	if m, ok := vocabulary.FindMeasure(name); ok {
		return &m
	}
	return nil
}

func wordAt(terms []syntax.Term, i int) (syntax.Word, bool) {
	if i >= len(terms) {
		return syntax.Word{}, false
	}
	w, ok := terms[i].(syntax.Word)
	return w, ok
}
