package process

import (
	"errors"
	"fmt"
	"slices"

	"maltwright/lang/finding"
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
	v.place = r.at(first.Join(a.Span))
	if !r.amount(v, a, slot) {
		return terms, nil, false
	}
	return terms[1:], v, true
}

// amount makes the range of a value and checks it against the slot.
func (r *reader) amount(v *value, a syntax.Amount, slot *vocabulary.Slot) bool {
	rng, ok := r.rangeOf(a, slot.Dims)
	if !ok {
		return false
	}
	v.rng = rng
	switch {
	case a.High != nil && !slot.Range:
		r.note(rangeUnexpected.At(r.at(a.Span), fmt.Sprintf("%s is one value, not a range", slot.Label)))
		return false
	case slot.Placed && v.where == "" && rng.Low.Dimension == quantity.Temperature:
		f := placeMissing.At(r.at(a.Span), fmt.Sprintf("%s does not say where it is taken", r.at(a.Span).Text()))
		f.Hint = fmt.Sprintf("write one of %s in front of it", quoted(slot.Places))
		r.note(f)
		return false
	}
	return true
}

// rangeOf makes a range of an amount, each end in one of the dimensions. The unit
// of the second value serves the first where that has none, as in 43 to 45 %.
func (r *reader) rangeOf(a syntax.Amount, dims []quantity.Dimension) (quantity.Range, bool) {
	low := a.Low
	if a.High != nil && len(low.Parts) == 1 && low.Parts[0].Unit.Text == "" {
		if n := len(a.High.Parts); n == 1 {
			low.Parts = slices.Clone(low.Parts)
			low.Parts[0].Unit.Text = a.High.Parts[n-1].Unit.Text
		}
	}
	lo, ok := r.quantityOf(low, dims)
	if !ok {
		return quantity.Range{}, false
	}
	rng := quantity.Range{Low: lo, High: lo}
	if a.High == nil {
		return rng, true
	}
	rng.High, ok = r.quantityOf(*a.High, dims)
	return rng, ok
}

// quantityOf makes a quantity in one of the dimensions.
func (r *reader) quantityOf(q syntax.Quantity, dims []quantity.Dimension) (quantity.Quantity, bool) {
	parts := make([]quantity.Part, len(q.Parts))
	for i, p := range q.Parts {
		parts[i] = quantity.Part{Number: p.Number.Text, Unit: p.Unit.Text}
	}
	read := quantity.Make
	if slices.Contains(dims, quantity.TemperatureDifference) {
		read = quantity.Difference
	}
	made, err := read(parts...)
	if err != nil {
		r.badQuantity(q, err)
		return made, false
	}
	for _, d := range dims {
		if as, err := made.As(d); err == nil {
			return as, true
		}
	}
	place := r.at(q.Span)
	if made.Dimension == quantity.Number {
		f := missingUnit.At(place, fmt.Sprintf("%s has no unit, and %s is wanted here", place.Text(), withArticle(dimensionWords(dims))))
		f.Hint = "write the unit behind it, such as " + sample(dims[0], place.Text())
		r.note(f)
		return made, false
	}
	r.note(wrongDimension.At(place, fmt.Sprintf("%s is %s, and %s is wanted here", place.Text(), withArticle(made.Dimension.String()), withArticle(dimensionWords(dims)))))
	return made, false
}

// usualUnit is the unit that a maltster is likely to mean, where the first of the
// dimension is not.
var usualUnit = map[quantity.Dimension]string{quantity.Time: "h", quantity.Mass: "kg", quantity.Volume: "l",
	quantity.Length: "m", quantity.Area: "m2", quantity.Power: "kW", quantity.Energy: "kWh", quantity.TemperatureDifference: "°C"}

// sample writes a number with a unit of the dimension.
func sample(d quantity.Dimension, number string) string {
	if unit := usualUnit[d]; unit != "" {
		return number + " " + unit
	}
	for _, u := range quantity.Units() {
		if u.Dimension == d {
			return number + " " + u.Name
		}
	}
	return number
}

func (r *reader) badQuantity(q syntax.Quantity, err error) {
	var bad *quantity.Error
	if !errors.As(err, &bad) {
		r.note(badNumber.At(r.at(q.Span), err.Error()))
		return
	}
	part := q.Parts[min(max(bad.Part, 0), len(q.Parts)-1)]
	rule, where := badNumber, part.Span
	if bad.Kind == quantity.UnknownUnit {
		rule, where = unknownUnit, part.Unit.Span
	}
	f := rule.At(r.at(where), bad.Message)
	if bad.Hint != "" {
		f.Hint = bad.Hint
	}
	if bad.Fix != "" {
		f.Fixes = []finding.Edit{{Place: r.at(where), New: bad.Fix}}
	}
	r.note(f)
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
