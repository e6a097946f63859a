package read

import (
	"fmt"
	"slices"

	"maltwright/lang/quantity"
	"maltwright/lang/syntax"
	"maltwright/lang/vocabulary"
)

// slotReader reads the first of the terms into a slot. It gives the terms that
// are left and the value, nil where the terms do not begin with one; ok is false
// where it found something wrong and has said so.
type slotReader func(*reader, *vocabulary.Slot, []syntax.Term) (rest []syntax.Term, v *value, ok bool)

// slotReaderOf gives the reader of a kind of slot. The table stands in a function
// because the readers refer back to it.
func slotReaderOf(kind vocabulary.Kind) slotReader {
	return [...]slotReader{
		vocabulary.Amount: readAmount, vocabulary.Condition: readCondition, vocabulary.Name: readText,
		vocabulary.Text: readText, vocabulary.Choice: readChoice, vocabulary.Literal: readChoice,
		vocabulary.Clock: readClock, vocabulary.Date: readDate,
		vocabulary.Moment: readMoment,
	}[kind]
}

func readText(r *reader, _ *vocabulary.Slot, terms []syntax.Term) ([]syntax.Term, *value, bool) {
	if len(terms) == 0 {
		return terms, nil, true
	}
	t, ok := terms[0].(syntax.Text)
	if !ok {
		return terms, nil, true
	}
	return terms[1:], &value{place: r.at(t.Span), word: t.Value}, true
}

func readChoice(r *reader, slot *vocabulary.Slot, terms []syntax.Term) ([]syntax.Term, *value, bool) {
	if len(terms) == 0 {
		return terms, nil, true
	}
	w, ok := terms[0].(syntax.Word)
	if !ok || len(slot.Words) > 0 && !slices.Contains(slot.Words, w.Text) {
		return terms, nil, true
	}
	return terms[1:], &value{place: r.at(w.Span), word: w.Text}, true
}

// readAmount reads a quantity or range, with the place of a temperature and a
// bound before it.
func readAmount(r *reader, slot *vocabulary.Slot, terms []syntax.Term) ([]syntax.Term, *value, bool) {
	if len(terms) == 0 {
		return terms, nil, true
	}
	v := &value{}
	first := terms[0].Range()
	if w, ok := terms[0].(syntax.Word); ok && slices.Contains(slot.Places, w.Text) {
		v.where = w.Text
		if terms = terms[1:]; len(terms) == 0 {
			return terms, nil, true
		}
	}
	term := terms[0]
	if b, ok := term.(syntax.Bounded); ok {
		op, _ := opOf(b.Bound.Text)
		if !slot.Bound {
			r.note(boundUnexpected.At(r.at(b.Bound.Span), fmt.Sprintf("%s takes a plain value, without %q", slot.Label, b.Bound.Text)))
			return terms, nil, false
		}
		v.op, term = &op, b.Value
	}
	a, ok := term.(syntax.Amount)
	if !ok {
		return terms, nil, true
	}
	v.place, v.amount = r.at(first.Join(a.Span)), r.at(a.Span)
	if !r.amount(v, a, slot) {
		return terms, nil, false
	}
	r.oneBound(v.op, a, v.rng)
	return terms[1:], v, true
}

var ops = map[string]quantity.Op{
	"at least": quantity.AtLeast, ">=": quantity.AtLeast, "≥": quantity.AtLeast, "=>": quantity.AtLeast,
	"at most": quantity.AtMost, "<=": quantity.AtMost, "≤": quantity.AtMost, "=<": quantity.AtMost,
	"is": quantity.Is, "=": quantity.Is, "==": quantity.Is,
	"above": quantity.Above, ">": quantity.Above, "below": quantity.Below, "<": quantity.Below,
}

func opOf(word string) (quantity.Op, bool) {
	op, ok := ops[word]
	return op, ok
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
