package quantity

import (
	"math"
	"strconv"
	"strings"
)

// String is the quantity as it was written, digits and all, with the printed
// spelling of its units.
func (q Quantity) String() string {
	if q.first.number == "" {
		return "0"
	}
	text := q.first.text()
	for _, p := range q.more {
		text += " " + p.text()
	}
	return text
}

// Unit is the printed spelling of the first unit, "" for a plain number.
func (q Quantity) Unit() string { return q.unit().Name }

func (p written) text() string {
	number := p.printedNumber()
	if p.unit == nil || p.unit.Name == "" {
		return number
	}
	if p.unit.One != "" && singular(number) {
		return number + " " + p.unit.One
	}
	return number + " " + p.unit.Name
}

// printedNumber is the number as written, with one kind of minus and of space.
func (p written) printedNumber() string {
	number := p.number
	if rest, negative := cutSign(number); negative {
		number = "-" + rest
	}
	if whole, fraction, mixed := strings.Cut(number, " "); mixed {
		number = whole + " " + strings.TrimLeft(fraction, " ")
	}
	return number
}

// singular tells whether the unit behind the number stands in the singular: 1 day,
// 3/4 day, but 1.0 days and 1 1/2 days.
func singular(number string) bool {
	number = strings.TrimPrefix(number, "-")
	if top, bottom, ok := strings.Cut(number, "/"); ok {
		t, okTop := digits(top)
		b, okBottom := digits(bottom)
		return okTop && okBottom && t <= b
	}
	return number == "1"
}

// Like prints a value of q's dimension, given in SI, in the unit or units in which
// q was written: with at least the digits that q has behind its point, else with
// as many as say something. With q = 62 °F, 287 K is "57 °F"; with q = 5 lb 4 oz,
// 2.3 kg is "5 lb 1.1 oz". A value that is not finite is "unknown".
func (q Quantity) Like(si float64) string {
	if math.IsNaN(si) || math.IsInf(si, 0) {
		return "unknown"
	}
	if len(q.more) > 0 {
		return q.likeParts(si)
	}
	u := q.unit()
	n := q.inUnit(si, u)
	kept := decimalsOf(q.first.number)
	return written{round(n, max(kept, u.sensible(n)), kept), u}.text()
}

// inUnit converts from SI to the unit, minding that As may have changed the
// dimension since it was written.
func (q *Quantity) inUnit(si float64, u *Unit) float64 {
	switch {
	case q.Dimension == TemperatureDifference:
		return si / u.Factor
	case u.Dimension == DryShare && q.Dimension == Share && si < 1:
		si /= 1 - si
	case u.Dimension == Share && q.Dimension == DryShare && si > -1:
		si /= 1 + si
	}
	return (si - u.Offset) / u.Factor
}

// likeParts prints 5 lb 4.2 oz: whole larger units, the rest in the last. It
// rounds in the last unit before it shares out, so that the rest never rounds up
// to one of the unit before.
func (q *Quantity) likeParts(si float64) string {
	parts := append([]written{q.first}, q.more...)
	last := parts[len(parts)-1]
	kept := decimalsOf(last.number)
	places := max(kept, q.Dimension.row().compound)
	step := last.unit.Factor / math.Pow10(places)
	rest := math.Round(math.Abs(si) / step)
	sign, out := "", []string(nil)
	if si < 0 && rest > 0 {
		sign = "-"
	}
	for _, p := range parts[:len(parts)-1] {
		size := p.unit.Factor / step
		whole := math.Floor(rest/size + 1e-9)
		rest = max(0, rest-whole*size)
		if whole > 0 || len(out) > 0 {
			out = append(out, written{round(whole, 0, 0), p.unit}.text())
		}
	}
	if rest > 0 || len(out) == 0 {
		out = append(out, written{round(rest/math.Pow10(places), places, kept), last.unit}.text())
	}
	return sign + strings.Join(out, " ")
}

// sensible is the number of digits behind the point that say something of a value
// that was reckoned.
func (u *Unit) sensible(n float64) int {
	if n == 0 {
		return 0
	}
	before := int(math.Floor(math.Log10(math.Abs(n)))) + 1
	return max(0, min(u.Dimension.row().figures-before, u.decimals))
}

// round writes a number with so many digits behind the point, then drops the noughts
// at the end down to the digits to keep. There is no minus sign before nothing.
func round(n float64, places, keep int) string {
	text := strconv.FormatFloat(n, 'f', places, 64)
	if strings.Trim(text, "-0.") == "" {
		text = strings.TrimPrefix(text, "-")
	}
	for places > keep && strings.HasSuffix(text, "0") {
		text, places = text[:len(text)-1], places-1
	}
	return strings.TrimSuffix(text, ".")
}
