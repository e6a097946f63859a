package read

import (
	"errors"
	"fmt"
	"slices"
	"strings"

	"maltwright/lang/finding"
	"maltwright/lang/quantity"
	"maltwright/lang/source"
	"maltwright/lang/syntax"
	"maltwright/lang/value"
	"maltwright/lang/vocabulary"
)

// amount makes the range of a value and checks it against the slot.
func (r *statementReader) amount(v *given, a syntax.Amount, slot *vocabulary.Slot) bool {
	rng, ok := r.rangeOf(a, slot)
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
		texts := make([]string, len(slot.Places))
		for i, p := range slot.Places {
			texts[i] = p + " " + r.at(a.Span).Text()
		}
		list := r.home.fitting(texts)
		f.Write(r.at(a.Span), list...)
		f.Hint = "say where the thermometer stands: " + finding.Readings(list...)
		r.note(f)
		return false
	}
	return true
}

// rangeOf makes a range of an amount, both ends in one of the dimensions.
func (r *statementReader) rangeOf(a syntax.Amount, slot *vocabulary.Slot) (quantity.Range, bool) {
	rng, err := value.Range(a, slot.Dims)
	if bad := (*value.Error)(nil); errors.As(err, &bad) {
		r.noRange(bad, a, slot)
		return rng, false
	}
	return rng, true
}

// noRange reports an amount that is no range of the dimensions.
func (r *statementReader) noRange(e *value.Error, a syntax.Amount, slot *vocabulary.Slot) {
	dims := slot.Dims
	place := r.at(e.End.Span)
	switch {
	case e.Kind == value.Unread:
		r.badQuantity(e.End, e.Err, dims)
	case e.Kind == value.Mixed:
		r.note(wrongDimension.At(place, fmt.Sprintf("%s is %s, and the range begins with %s", place.Text(),
			withArticle(e.Made.Dimension.String()), withArticle(e.Low.Dimension.String()))))
	case e.Made.Dimension == quantity.Number:
		r.noUnit(e, a, slot)
	default:
		f := wrongDimension.At(place, fmt.Sprintf("%s is %s, and %s is wanted here", place.Text(), withArticle(e.Made.Dimension.String()), withArticle(dimensionWords(dims))))
		f.Hint = orElse(r.unitsOf(dims), f.Hint)
		number, plain := numberOf(e.Made)
		switch one := []quantity.Dimension{e.Made.Dimension}; {
		case one[0] == quantity.Length && slices.Contains(dims, quantity.Pressure):
			f.Ask(place, place.Text()+" of water")
		case plain && unitForgot(e.Made.Unit(), dims) != "" && a.High == nil:
			f.Ask(place, number+" "+unitForgot(e.Made.Unit(), dims))
		case one[0] == quantity.Mass && slices.Equal(dims, []quantity.Dimension{quantity.Volume}) && r.in == vocabulary.KilnFacts:
			f.Hint = "it needs a volume: a kilogram of malt takes about 2 l, and a drum is filled to a half"
		}
		r.note(f)
	}
}

// unitForgot is the unit of which a part was forgotten, by what is wanted: m2 of m, m3/h of m3.
func unitForgot(unit string, dims []quantity.Dimension) string {
	for _, rest := range []string{"2", "/h", "/min"} {
		if u, ok := quantity.Lookup(unit + rest); ok && slices.Contains(dims, u.Dimension) {
			return u.Name
		}
	}
	other := map[string]string{"m": "min", "kWh": "kW", "ft3": "cfm"}[unit]
	if u, ok := quantity.Lookup(other); ok && slices.Contains(dims, u.Dimension) {
		return other
	}
	return ""
}

// unitsOf says in which units a value of the dimensions is written.
func (r *statementReader) unitsOf(dims []quantity.Dimension) string {
	var units []string
	if slices.Equal(dims, []quantity.Dimension{quantity.Time}) { // which is meant cannot be told by the place
		return "a time is written in min, h, days or weeks"
	}
	for _, d := range dims {
		units = append(units, r.unitsLikely(d, "", r.verb)...)
	}
	if len(units) == 0 || units[0] == "" {
		return ""
	}
	return fmt.Sprintf("%s is written in %s", withArticle(dimensionWords(dims)), strings.Join(units[:min(len(units), mostOffered)], " or "))
}

// unitMatters says of a value of the dimension why it needs its unit.
var unitMatters = map[quantity.Dimension]string{
	quantity.Share:                 "12 % and 12 of 100 kernels are the same, and 12 % dry basis is another moisture: the % says which is meant",
	quantity.Temperature:           "the same number is one thing in °C and another in °F",
	quantity.TemperatureDifference: "the same number is one thing in °C and another in °F",
	quantity.Time:                  "the same number is one thing in hours and another in days",
	quantity.Mass:                  "the same number is one thing in kg and another in lb",
	quantity.Volume:                "the same number is one thing in litres and another in gallons",
	quantity.Length:                "the same number is one thing in cm and another in inches",
	quantity.Area:                  "the same number is one thing in m2 and another in ft2",
	quantity.Power:                 "the same number is one thing in W and another in kW",
}

// noUnit reports a number without its unit.
func (r *statementReader) noUnit(e *value.Error, a syntax.Amount, slot *vocabulary.Slot) {
	place := r.at(e.End.Span)
	dims := slot.Dims
	if of, ok := vocabulary.FindAnalysis(r.chosen); ok && r.in == vocabulary.Batch {
		dims = of.Dims()
	}
	f := missingUnit.At(place, fmt.Sprintf("%s has no unit, and %s is wanted here", place.Text(), withArticle(dimensionWords(dims))))
	if why := unitMatters[dims[0]]; why != "" {
		f.Why = why
	}
	switch unit := e.Low.Unit(); {
	case unit != "":
		f.Write(place, place.Text()+" "+unit)
	case dims[0] == quantity.Share || slices.Contains(dims, quantity.Share) && r.chosen == vocabulary.WithReturns:
		r.share(&f, a)
	default:
		var texts []string
		for _, d := range dims {
			for _, unit := range r.unitsThatFit(d, a, slot) {
				if text := place.Text() + " " + unit; len(texts) < mostOffered {
					texts = append(texts, text)
				}
			}
		}
		f.Write(place, texts...)
	}
	r.note(f)
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

func (r *statementReader) badQuantity(q syntax.Quantity, err error, dims []quantity.Dimension) {
	var bad *quantity.Error
	if !errors.As(err, &bad) {
		r.note(badNumber.At(r.at(q.Span), err.Error()))
		return
	}
	i, parts := min(max(bad.Part, 0), len(q.Parts)-1), q.Written()
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
	if number := q.Parts[i].Number.Text; bad.Kind == quantity.DecimalComma && bad.Fix == "" && strings.HasPrefix(bad.Hint, "write "+strings.Replace(number, ",", ".", 1)+" or ") {
		f.Write(r.at(mended), strings.Replace(number, ",", ".", 1), strings.ReplaceAll(number, ",", ""))
	}
	if bad.Kind == quantity.UnknownUnit && quantity.OfMark(q.Parts[i].Unit.Text) == "" {
		r.unitMeant(&f, r.at(mended), bad, dims)
	}
	if units := r.unitsLikely(quantity.Temperature, "", ""); slices.Contains(quantity.Degrees(), q.Parts[i].Unit.Text) && slices.Contains(dims, quantity.Temperature) {
		f.Write(r.at(mended), units...)
	}
	if len(bad.Either) > 0 {
		f.Write(r.at(mended), bad.Either...)
	}
	fix := bad.Fix
	if len(f.Offers) > 0 || bad.Kind == quantity.UnknownUnit && f.Hint != bad.Hint {
		fix = ""
	}
	if mark := q.Parts[i].Unit; quantity.OfMark(mark.Text) != "" {
		if slices.Contains(dims, quantity.Time) {
			fix = quantity.TimeOfMark(mark.Text)
			parts[i].Unit = fix
		}
		f.Hint, fix = fmt.Sprintf("write %s %s", q.Parts[i].Number.Text, fix), " "+fix
		if i+1 < len(q.Parts) && q.Parts[i+1].Number.Start == mark.End {
			fix += " " // the ft of 6'2" is not to become ft2
		}
	}
	if fix != "" && mends(parts, i, dims) {
		f.Fixes = []finding.Edit{{Place: r.at(mended), New: fix}}
	} else if fix != "" && len(f.Offers) == 0 {
		r.notAlone(&f, q.Parts[i], parts, i, dims)
	}
	r.note(f)
}

// notAlone says what to write of a part that its one repair does not put right: its unit may be
// none either, as in 0,3 Liter.
func (r *statementReader) notAlone(f *finding.Finding, was syntax.Part, parts []quantity.Part, i int, dims []quantity.Dimension) {
	_, err := quantity.Make(parts[i])
	var bad *quantity.Error
	if errors.As(err, &bad) && bad.Kind == quantity.UnknownUnit && bad.Fix != "" {
		if parts[i].Unit = bad.Fix; mends(parts, i, dims) {
			f.Repair(r.at(was.Number.Span.Join(was.Unit.Span)), parts[i].Number+" "+parts[i].Unit)
			return
		}
	}
	if said, ok := strings.CutPrefix(f.Hint, "write "); ok && f.Rule == badNumber.Name {
		f.Hint = "the number is " + said
		return
	}
	f.Hint = orElse(r.unitsOf(dims), f.Hint)
}

// unitMeant offers the units that may be meant by a spelling, of those that are wanted here. One
// of another kind is none of them; then it says in which units such a value is written.
func (r *statementReader) unitMeant(f *finding.Finding, place source.Place, bad *quantity.Error, dims []quantity.Dimension) {
	units := slices.DeleteFunc(slices.Clone(bad.Units), func(unit string) bool {
		u, ok := quantity.Lookup(unit)
		return !ok || !slices.Contains(dims, u.Dimension) && !(slices.Contains(dims, quantity.TemperatureDifference) && u.Dimension == quantity.Temperature)
	})
	switch said := bad.Hint; {
	case len(units) == 0 && len(bad.Units) == 0 && !strings.HasPrefix(said, "units are"):
	case len(units) == 0:
		f.Hint = orElse(r.unitsOf(dims), said)
	case bad.Fix != "" && units[0] == bad.Fix:
	case strings.HasPrefix(said, "did you mean"):
		f.Ask(place, units...)
	default:
		f.Write(place, units...)
		if _, more, ok := strings.Cut(said, "; "); ok && len(units) > 1 {
			f.Hint += ": " + more
		}
	}
}

// mends tells whether the parts, of which the i-th was put right, are what is wanted,
// or a later one is to blame.
func mends(parts []quantity.Part, i int, dims []quantity.Dimension) bool {
	made, err := value.Made(parts, dims)
	var bad *quantity.Error
	if errors.As(err, &bad) {
		return bad.Part > i
	}
	_, ok := value.Fit(made, dims)
	return ok
}
