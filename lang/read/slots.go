package read

import (
	"errors"
	"fmt"
	"slices"
	"strings"

	"maltwright/lang/quantity"
	"maltwright/lang/syntax"
	"maltwright/lang/value"
	"maltwright/lang/vocabulary"
)

// slotReader reads the first of the terms into a slot. It gives the terms that
// are left and the value, nil where the terms do not begin with one; ok is false
// where it found something wrong and has said so.
type slotReader func(*statementReader, *vocabulary.Slot, []syntax.Term) (rest []syntax.Term, v *given, ok bool)

// slotReaderOf gives the reader of a kind of slot. The table stands in a function
// because the readers refer back to it.
func slotReaderOf(kind vocabulary.Kind) slotReader {
	return [...]slotReader{
		vocabulary.Amount: readAmount, vocabulary.Condition: readCondition, vocabulary.Name: readText,
		vocabulary.Text: readText, vocabulary.Choice: readChoice, vocabulary.Literal: readChoice,
		vocabulary.Clock: readClock, vocabulary.Date: readDate,
		vocabulary.Moment: readMoment, vocabulary.Hour: readHour,
	}[kind]
}

func readText(r *statementReader, _ *vocabulary.Slot, terms []syntax.Term) ([]syntax.Term, *given, bool) {
	if len(terms) == 0 {
		return terms, nil, true
	}
	t, ok := terms[0].(syntax.Text)
	if !ok {
		return terms, nil, true
	}
	return terms[1:], &given{place: r.at(t.Span), word: t.Value}, true
}

func readChoice(r *statementReader, slot *vocabulary.Slot, terms []syntax.Term) ([]syntax.Term, *given, bool) {
	if len(terms) == 0 {
		return terms, nil, true
	}
	w, ok := terms[0].(syntax.Word)
	if !ok || len(slot.Words) > 0 && !slices.Contains(slot.Words, w.Text) {
		return terms, nil, true
	}
	r.chosen = w.Text
	return terms[1:], &given{place: r.at(w.Span), word: w.Text}, true
}

// readAmount reads a quantity or range, with the place of a temperature and a
// bound before it.
func readAmount(r *statementReader, slot *vocabulary.Slot, terms []syntax.Term) ([]syntax.Term, *given, bool) {
	f, rest, ok := value.FigureOf(terms, slot.Places)
	if !ok {
		return rest, nil, true
	}
	if f.Bound != nil && !slot.Bound {
		r.note(boundUnexpected.At(r.at(f.Bound.Span), fmt.Sprintf("%s takes a plain value, without %q", slot.Label, f.Bound.Text)))
		return terms, nil, false
	}
	a, ok := f.Value.(syntax.Amount)
	if !ok {
		return terms, nil, true
	}
	if hint := fractionInFront(a, rest); hint != "" && !slices.Contains(slot.Dims, quantity.Number) {
		n := missingUnit.At(r.at(a.Span), fmt.Sprintf("%s has no unit, and %s follows", r.at(a.Span).Text(), r.at(rest[0].Range()).Text()))
		n.Hint = hint
		r.note(n)
		return terms, nil, false
	}
	v := &given{place: r.at(f.Span), amount: r.at(a.Span), op: f.OpOf(), where: f.Where}
	if !r.amount(v, a, slot) {
		return terms, nil, false
	}
	r.oneBound(v.op, a, v.rng)
	return rest, v, true
}

// fractionInFront says what to do about a fraction in front of the number that it may
// belong to, 1/2 3 lb; "" where there is none.
func fractionInFront(a syntax.Amount, rest []syntax.Term) string {
	if len(rest) == 0 || a.High != nil || a.Low.Parts[0].Unit.Text != "" {
		return ""
	}
	next, ok := rest[0].(syntax.Amount)
	if !ok || next.High != nil || next.Low.Parts[0].Unit.Text == "" {
		return ""
	}
	_, err := quantity.Make(append(a.Low.Written(), next.Low.Written()...)...)
	bad := (*quantity.Error)(nil)
	if errors.As(err, &bad) && strings.Contains(quantity.Spell(a.Low.Parts[0].Number.Text), "/") {
		return bad.Hint
	}
	return ""
}

func quoted(words []string) string {
	out := ""
	for i, w := range words {
		switch {
		case i > 0 && i == len(words)-1:
			out += " or "
		case i > 0:
			out += ", "
		}
		out += w
	}
	return out
}
