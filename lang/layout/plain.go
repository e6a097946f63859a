package layout

import (
	"math"
	"strconv"
	"strings"

	"maltwright/lang/quantity"
	"maltwright/lang/syntax"
	"maltwright/lang/value"
	"maltwright/lang/vocabulary"
)

// Plain gives what a file says, for programs that compare lines: a statement a
// line, indented by its block, without comments, braces or alignment, with the
// clauses in the order of the vocabulary and each kind of quantity in units that
// depend on its size alone. Two files that say the same, in one order, are the same
// in it.
func Plain(t *syntax.Tree) []byte {
	return plainBlock(nil, &t.Top, vocabulary.File, 0)
}

func plainBlock(out []byte, b *syntax.Block, in vocabulary.Block, depth int) []byte {
	for _, s := range b.Statements {
		s = value.Led(s, in)
		row, ok := vocabulary.Lookup(in, s.Verb.Text)
		if !ok {
			row = &vocabulary.Row{}
		}
		words := append([]string{s.Verb.Text}, plainTerms(s.Terms, row.Slots)...)
		for _, c := range ordered(s, in) {
			var slots []vocabulary.Slot
			if def, ok := row.Clause(c.Word.Text); ok {
				slots = def.Slots
			}
			words = append(append(words, c.Word.Text), plainTerms(c.Terms, slots)...)
		}
		out = append(out, strings.Repeat(indent, depth)+strings.Join(words, " ")+"\n"...)
		if s.Body != nil {
			out = plainBlock(out, s.Body, vocabulary.Opens(in, s.Verb.Text), depth+1)
		}
	}
	return out
}

func plainTerms(list []syntax.Term, slots []vocabulary.Slot) []string {
	out := make([]string, len(list))
	for i, t := range list {
		out[i] = plainTerm(t, vocabulary.Wanted(slots))
	}
	return out
}

func plainTerm(t syntax.Term, wanted []quantity.Dimension) string {
	switch t := t.(type) {
	case syntax.Amount:
		return plainAmount(t, wanted)
	case syntax.Bounded:
		return bound(t.Bound.Text) + " " + plainTerm(t.Value, wanted)
	}
	return Term(t)
}

// plainAmount writes the unit once where both ends come out in the same. A low end that
// has none and takes none stays so: the high end is left in its parts, since with one
// unit it would lend it.
func plainAmount(a syntax.Amount, wanted []quantity.Dimension) string {
	if a.High == nil {
		return plainQuantity(a.Low, wanted)
	}
	from, unit := split(a.LowEnd(), wanted)
	to, other := split(*a.High, wanted)
	switch {
	case unit == other:
		return strings.TrimRight(from+" "+vocabulary.To+" "+to+" "+unit, " ")
	case unit == "" && len(a.High.Parts) > 1:
		return from + " " + vocabulary.To + " " + written(*a.High)
	}
	return strings.TrimRight(from+" "+unit, " ") + " " + vocabulary.To + " " + strings.TrimRight(to+" "+other, " ")
}

// split gives the number and the unit of a quantity as plain writes it; of one in
// parts that has no such unit all is number.
func split(q syntax.Quantity, wanted []quantity.Dimension) (n, unit string) {
	v := made(q, wanted...)
	if v != nil {
		if n, unit, ok := plainSize(v); ok {
			return n, unit
		}
	}
	if len(q.Parts) != 1 {
		return written(q), ""
	}
	unit = q.Parts[0].Unit.Text
	if u, ok := quantity.Lookup(unit); ok {
		unit = u.Name
	}
	return number(q.Parts[0].Number.Text), unit
}

// plainUnit is a unit for sizes from the least on, in SI.
type plainUnit struct {
	unit                string
	factor, zero, least float64
}

// plainUnits are the units of each kind, the largest first. Kinds that are written
// in one way only are left out.
var plainUnits = map[quantity.Dimension][]plainUnit{
	quantity.Temperature:           {{"°C", 1, quantity.ZeroCelsius, 0}},
	quantity.TemperatureDifference: {{"°C", 1, 0, 0}},
	quantity.Time:                  {{"days", 86400, 0, 2 * 86400}, {"h", 3600, 0, 3600}, {"min", 60, 0, 60}, {"s", 1, 0, 0}},
	quantity.Mass:                  {{"kg", 1, 0, 1}, {"g", 1e-3, 0, 0}},
	quantity.Volume:                {{"l", 1e-3, 0, 1e-3}, {"ml", 1e-6, 0, 0}},
	quantity.Length:                {{"m", 1, 0, 1}, {"cm", 1e-2, 0, 0}},
	quantity.Area:                  {{"m2", 1, 0, 0}},
	quantity.Flow:                  {{"m3/h", 1.0 / 3600, 0, 0}},
	quantity.Power:                 {{"kW", 1e3, 0, 0}},
	quantity.Energy:                {{"MJ", 1e6, 0, 0}},
	quantity.Pressure:              {{"Pa", 1, 0, 0}},
	quantity.Speed:                 {{"m/s", 1, 0, 0}},
	quantity.Share:                 {{"%", 1e-2, 0, 0}},
	quantity.DryShare:              {{"% dry basis", 1e-2, 0, 0}},
	quantity.Colour:                {{"EBC", 1, 0, 0}},
	quantity.DiastaticPower:        {{"°WK", 1, 0, 0}},
	quantity.MassFraction:          {{"mg/kg", 1e-6, 0, 1e-7}, {"µg/kg", 1e-9, 0, 0}},
}

// plainFigures is to how many figures two quantities must agree to be the same.
const plainFigures = 9

func plainQuantity(q syntax.Quantity, wanted []quantity.Dimension) string {
	v := made(q, wanted...)
	if v == nil {
		return written(q)
	}
	if n, unit, ok := plainSize(v); ok {
		return n + " " + unit
	}
	return v.String()
}

// plainSize gives the number and the unit of a kind that has such units.
func plainSize(v *quantity.Quantity) (n, unit string, ok bool) {
	for _, u := range plainUnits[v.Dimension] {
		if math.Abs(v.SI) >= u.least*(1-1e-9) {
			size, _ := strconv.ParseFloat(strconv.FormatFloat((v.SI-u.zero)/u.factor, 'g', plainFigures, 64), 64)
			return strconv.FormatFloat(size, 'f', -1, 64), u.unit, true
		}
	}
	return "", "", false
}
