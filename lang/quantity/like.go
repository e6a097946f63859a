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

// printedNumber is the number as written, spelt as the language prints it.
func (p written) printedNumber() string { return Spell(p.number) }

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
// 2.3 kg is "5 lb 1.1 oz". What cannot be written so, above 1e12 or not finite, is
// "unknown".
func (q Quantity) Like(si float64) string {
	u := q.unit()
	n := q.inUnit(si, u)
	switch {
	case math.IsNaN(n) || math.Abs(n) > largest:
		return "unknown"
	case len(q.more) > 0:
		return q.likeParts(si)
	}
	kept := decimalsOf(q.first.number)
	return written{round(n, max(kept, u.sensible(n)), kept), u}.text()
}

// inUnit converts from SI to the unit, minding that As may have changed the
// dimension since it was written.
func (q *Quantity) inUnit(si float64, u *Unit) float64 {
	switch {
	case q.Dimension == TemperatureDifference:
		return si / u.Factor
	case u.Dimension == DryShare && q.Dimension == Share:
		if si /= 1 - si; si < -1 { // of a share above 1
			return math.NaN()
		}
	case u.Dimension == Share && q.Dimension == DryShare:
		if si /= 1 + si; si > 1 {
			return math.NaN()
		}
	}
	return (si - u.Offset) / u.Factor
}

// likeParts prints 5 lb 4.2 oz: whole larger units, the rest in the last, and no
// noughts at either end.
func (q *Quantity) likeParts(si float64) string {
	parts := append([]written{q.first}, q.more...)
	end := len(parts) - 1
	kept := decimalsOf(parts[end].number)
	places := max(kept, q.Dimension.row().compound)
	counts := shareOut(math.Abs(si), parts, math.Pow10(places))
	from, to := 0, end
	for from < end && counts[from] == 0 {
		from++
	}
	for to > from && counts[to] == 0 {
		to--
	}
	out := make([]string, 0, len(parts))
	for i := from; i <= to; i++ {
		number := round(counts[i], 0, 0)
		if i == end {
			number = round(counts[i], places, kept)
		}
		out = append(out, written{number, parts[i].unit}.text())
	}
	if si < 0 && counts[from] > 0 {
		out[0] = "-" + out[0]
	}
	return strings.Join(out, " ")
}

// shareOut gives how many of each unit make up the value: whole ones, and of the
// last as many as its fineness, in parts of one, allows.
func shareOut(rest float64, parts []written, fineness float64) []float64 {
	counts := make([]float64, len(parts))
	end := len(parts) - 1
	for i, p := range parts[:end] {
		counts[i] = math.Floor(rest/p.unit.Factor + sameValue)
		rest = max(0, rest-counts[i]*p.unit.Factor)
	}
	counts[end] = math.Round(rest/parts[end].unit.Factor*fineness) / fineness
	if counts[end]*parts[end].unit.Factor < parts[end-1].unit.Factor*(1-sameValue) {
		return counts
	}
	// It rounded up to one of the unit before, which may make one of the next.
	counts[end] = 0
	counts[end-1]++
	for i := end - 1; i > 0 && math.Abs(counts[i]*parts[i].unit.Factor/parts[i-1].unit.Factor-1) < sameValue; i-- {
		counts[i] = 0
		counts[i-1]++
	}
	return counts
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
