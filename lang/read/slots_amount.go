package read

import (
	"errors"
	"fmt"
	"slices"

	"maltwright/lang/finding"
	"maltwright/lang/quantity"
	"maltwright/lang/syntax"
	"maltwright/lang/vocabulary"
)

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

// rangeOf makes a range of an amount, both ends in one of the dimensions.
func (r *reader) rangeOf(a syntax.Amount, dims []quantity.Dimension) (quantity.Range, bool) {
	lo, ok := r.quantityOf(a.LowEnd(), dims, "")
	if !ok {
		return quantity.Range{}, false
	}
	rng := quantity.Range{Low: lo, High: lo}
	if a.High == nil {
		return rng, true
	}
	if rng.High, ok = r.quantityOf(*a.High, dims, lo.Unit()); !ok {
		return rng, false
	}
	if rng.High.Dimension != lo.Dimension {
		place := r.at(a.High.Span)
		r.note(wrongDimension.At(place, fmt.Sprintf("%s is %s, and the range begins with %s", place.Text(),
			withArticle(rng.High.Dimension.String()), withArticle(lo.Dimension.String()))))
		return rng, false
	}
	return rng, true
}

// quantityOf makes a quantity in one of the dimensions. The unit is that of the other end
// of its range, "" where there is none.
func (r *reader) quantityOf(q syntax.Quantity, dims []quantity.Dimension, unit string) (quantity.Quantity, bool) {
	made, err := makeOf(partsOf(q), dims)
	if err != nil {
		r.badQuantity(q, err, dims)
		return made, false
	}
	if as, ok := asOne(made, dims); ok {
		return as, true
	}
	place := r.at(q.Span)
	if made.Dimension == quantity.Number {
		f := missingUnit.At(place, fmt.Sprintf("%s has no unit, and %s is wanted here", place.Text(), withArticle(dimensionWords(dims))))
		f.Hint = "write the unit behind it, such as "
		if unit != "" {
			f.Hint += place.Text() + " " + unit
		} else {
			f.Hint += place.Text() + " " + unitLikely(dims[0], place.File)
		}
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

func partsOf(q syntax.Quantity) []quantity.Part {
	parts := make([]quantity.Part, len(q.Parts))
	for i, p := range q.Parts {
		parts[i] = quantity.Part{Number: p.Number.Text, Unit: p.Unit.Text}
	}
	return parts
}

// makeOf makes a quantity where one of the dimensions is wanted.
func makeOf(parts []quantity.Part, dims []quantity.Dimension) (quantity.Quantity, error) {
	if slices.Contains(dims, quantity.TemperatureDifference) {
		return quantity.Difference(parts...)
	}
	return quantity.Make(parts...)
}

// asOne gives the quantity in the first of the dimensions that it can be read in.
func asOne(made quantity.Quantity, dims []quantity.Dimension) (quantity.Quantity, bool) {
	for _, d := range dims {
		if as, err := made.As(d); err == nil {
			return as, true
		}
	}
	return made, false
}

func (r *reader) badQuantity(q syntax.Quantity, err error, dims []quantity.Dimension) {
	var bad *quantity.Error
	if !errors.As(err, &bad) {
		r.note(badNumber.At(r.at(q.Span), err.Error()))
		return
	}
	i, parts := min(max(bad.Part, 0), len(q.Parts)-1), partsOf(q)
	rule, where, mended := badNumber, q.Parts[i].Span, q.Parts[i].Number.Span
	if bad.Kind == quantity.UnknownUnit {
		rule, where, mended = unknownUnit, q.Parts[i].Unit.Span, q.Parts[i].Unit.Span
		parts[i].Unit = bad.Fix
	} else {
		parts[i].Number = bad.Fix
	}
	f := rule.At(r.at(where), bad.Message)
	if bad.Hint != "" {
		f.Hint = bad.Hint
	}
	if bad.Fix != "" && mends(parts, i, dims) {
		f.Fixes = []finding.Edit{{Place: r.at(mended), New: bad.Fix}}
	}
	r.note(f)
}

// mends tells whether the parts, of which the i-th was put right, are what is wanted,
// or a later one is to blame.
func mends(parts []quantity.Part, i int, dims []quantity.Dimension) bool {
	made, err := makeOf(parts, dims)
	var bad *quantity.Error
	if errors.As(err, &bad) {
		return bad.Part > i
	}
	_, ok := asOne(made, dims)
	return ok
}
