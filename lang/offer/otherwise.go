package offer

import (
	"fmt"
	"slices"
	"strings"

	"maltwright/lang/quantity"
	"maltwright/lang/source"
	"maltwright/lang/syntax"
)

func moistureOf(dims []quantity.Dimension) bool {
	return slices.Contains(dims, quantity.DryShare)
}

// amountAt is the amount at a piece, with both of its ends where it is a range.
func (l *list) amountAt(at syntax.Lexeme) (whole source.Span, a syntax.Amount, ok bool) {
	line := pieces(l.file, lineAt(l.file, at.Start))
	i := slices.IndexFunc(line, func(p syntax.Lexeme) bool { return p.Start == at.Start })
	if i < 0 {
		return whole, a, false
	}
	from, to := run(line, i)
	if to+1 < len(line) && line[to+1].Kind == syntax.ToLexeme {
		_, to = run(line, to+2)
	} else if from >= 2 && line[from-1].Kind == syntax.ToLexeme {
		from, _ = run(line, from-2)
	}
	whole = line[from].Span.Join(line[min(to, len(line)-1)].Span)
	a, ok = amountOf(l.file.Text(whole))
	return whole, a, ok
}

// run is the quantity of which the i-th piece is a part: numbers and their units in turn.
func run(line []syntax.Lexeme, i int) (from, to int) {
	from, to = i, i
	follows := func(a, b int) bool {
		return a >= 0 && b < len(line) && (line[a].Kind == syntax.NumberLexeme && line[b].Kind == syntax.UnitLexeme || line[a].Kind == syntax.UnitLexeme && line[b].Kind == syntax.NumberLexeme)
	}
	for follows(from-1, from) {
		from--
	}
	for follows(to, to+1) {
		to++
	}
	return from, to
}

// otherwise gives a value in the other units in which people say it.
func otherwise(r quantity.Range, a syntax.Amount, moisture bool) (list []string) {
	written := map[string]bool{}
	for _, q := range []*syntax.Quantity{&a.Low, a.High} {
		if q != nil {
			for _, p := range q.Parts {
				if u, ok := quantity.Lookup(p.Unit.Text); ok {
					written[u.Name] = true
				}
			}
		}
	}
	var says []string
	for _, unit := range others(r) {
		if !written[unit] {
			if text, ok := in(r, unit); ok {
				says = append(says, text)
			}
		}
	}
	if len(says) > 0 {
		list = append(list, "= "+strings.Join(says, " = "))
	}
	if moisture {
		list = append(list, wetAndDry(r)...)
	}
	return list
}

// others are the units in which values of a size are said.
func others(r quantity.Range) []string {
	si := max(r.Low.SI, r.High.SI)
	switch r.Low.Dimension {
	case quantity.Temperature:
		return []string{"°C", "°F"}
	case quantity.Mass:
		if si < 1 {
			return []string{"g", "oz"}
		}
		return []string{"kg", "lb"}
	case quantity.Volume:
		if si < 1e-3 {
			return []string{"ml"}
		}
		return []string{"l", "gal-us", "gal-imp"}
	case quantity.Length:
		if si < 1 {
			return []string{"cm", "inch"}
		}
		return []string{"m", "ft"}
	case quantity.Area:
		return []string{"m2", "ft2"}
	case quantity.Flow:
		if si < 1e-3 {
			return []string{"l/min"}
		}
		return []string{"m3/h", "cfm"}
	case quantity.Power:
		return []string{"kW", "Btu/h"}
	case quantity.Pressure:
		return []string{"Pa", "inches of water"}
	case quantity.Colour:
		return []string{"EBC", "Lovibond"}
	case quantity.DiastaticPower:
		return []string{"°WK", "°Lintner"}
	case quantity.TemperatureRate:
		return []string{"°C/h", "°F/h"}
	case quantity.Time:
		if si >= 36*3600 {
			return []string{"h", "days"}
		}
	}
	return nil
}

// in writes a range in a unit.
func in(r quantity.Range, unit string) (string, bool) {
	low, err := quantity.In(r.Low.SI, unit)
	high, other := quantity.In(r.High.SI, unit)
	return quantity.Range{Low: low, High: high}.String(), err == nil && other == nil
}

// wetAndDry gives a moisture on the other basis, and as water for each kg of dry matter.
func wetAndDry(r quantity.Range) []string {
	var dry [2]float64
	unit, other := "% dry basis", r
	for i, q := range []quantity.Quantity{r.Low, r.High} {
		wet, err := q.As(quantity.Share)
		if err != nil || wet.SI >= 1 || wet.SI < 0 {
			return nil
		}
		dry[i] = wet.SI / (1 - wet.SI)
		is := dry[i]
		if q.WrittenAs() == quantity.DryShare {
			unit, is = "%", wet.SI
		}
		if i == 0 {
			other.Low.SI = is
		}
		other.High.SI = is
	}
	water := quantity.Fixed(dry[0], 2)
	text, ok := in(other, unit)
	if !ok {
		return nil
	}
	if !r.Single() {
		water += " to " + quantity.Fixed(dry[1], 2)
	}
	return []string{fmt.Sprintf("= %s = %s kg of water for each kg of dry matter", text, water)}
}
