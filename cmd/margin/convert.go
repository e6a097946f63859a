package margin

import (
	"math"
	"slices"
	"strings"

	"maltwright/lang/finding"
	"maltwright/lang/quantity"
	"maltwright/lang/source"
	"maltwright/lang/syntax"
	"maltwright/lang/value"
	"maltwright/lang/vocabulary"
)

// others are the units in which a value is offered that is written in one, by the names that are printed.
var others = func() map[string][]string {
	list := map[string][]string{}
	for from, to := range asWritten {
		if q, err := quantity.Make(quantity.Part{Number: "1", Unit: from}); err == nil {
			list[q.Unit()] = to
		}
	}
	return list
}()

var asWritten = map[string][]string{
	"°C": {"°F"}, "°F": {"°C"}, "K": {"°C"},
	"g": {"oz", "kg"}, "kg": {"lb", "g"}, "t": {"kg", "lb"}, "oz": {"g", "lb"}, "lb": {"kg", "oz"}, "ton-us": {"t", "lb"},
	"ml": {"l"}, "l": {"gal-us", "gal-imp"}, "hl": {"l"}, "m3": {"l"}, "gal-us": {"l"}, "gal-imp": {"l"}, "qt-us": {"l"}, "qt-imp": {"l"}, "pt-us": {"l"}, "pt-imp": {"l"}, "ft3": {"l"},
	"min": {"h"}, "h": {"min", "days"}, "days": {"h", "weeks"}, "weeks": {"days"}, "s": {"min"},
	"mm": {"cm", "inches"}, "cm": {"inches"}, "m": {"ft"}, "inches": {"cm"}, "ft": {"m"},
	"m2": {"ft2"}, "ft2": {"m2"}, "in2": {"cm2"}, "cm2": {"in2"},
	"m3/h": {"cfm"}, "cfm": {"m3/h"}, "l/s": {"m3/h"}, "m3/s": {"m3/h"},
	"kW": {"Btu/h"}, "W": {"kW"}, "Btu/h": {"kW"}, "Pa": {"inches of water"}, "mm of water": {"Pa"}, "inches of water": {"Pa"}, "m/s": {"ft/min"}, "ft/min": {"m/s"},
	"EBC": {"Lovibond"}, "Lovibond": {"EBC"}, "°WK": {"°Lintner"}, "°Lintner": {"°WK"},
}

// convert writes the amount at a stretch in other units.
func (a *actor) convert(at source.Span) (list []Action) {
	n, ok := numberAt(a.tree, at.Start)
	if !ok || at.End > n.in.End || a.isDifference(n.in.Span) {
		return nil
	}
	ends, ok := made(n.in)
	if !ok || a.misplaced(n.in.Span) {
		return nil
	}
	for _, unit := range others[ends[len(ends)-1].Unit()] {
		text, ok := inUnit(ends, unit)
		if !ok {
			continue
		}
		place := source.Place{File: a.tree.File, Span: n.in.Span}
		list = append(list, Action{Deed: Convert, Title: "convert to " + text, Edits: []finding.Edit{{Place: place, New: text}}})
	}
	return list
}

// misplaced tells whether a value is of a kind that is not wanted where it stands, such as a weight for a time.
func (a *actor) misplaced(at source.Span) bool {
	return slices.ContainsFunc(touching(a.tree, a.r, at), func(f finding.Finding) bool { return f.Severity == finding.Fault && ofWords(&f) })
}

// made gives the ends of an amount; false where one does not read, or they are of two kinds.
func made(amount syntax.Amount) (list []quantity.Quantity, ok bool) {
	parts := []syntax.Quantity{amount.LowEnd()}
	if amount.High != nil {
		parts = append(parts, *amount.High)
	}
	for _, p := range parts {
		q, err := value.Quantity(p, nil)
		if err != nil || q.Dimension == quantity.Number || len(list) > 0 && q.Dimension != list[0].Dimension {
			return nil, false
		}
		list = append(list, q)
	}
	return list, true
}

// isDifference tells whether an amount stands where a difference of temperatures may be meant, of which a
// number in °C and one in °F are not converted as a temperature is.
func (a *actor) isDifference(at source.Span) (is bool) {
	var into func(b *syntax.Block, in vocabulary.Block)
	into = func(b *syntax.Block, in vocabulary.Block) {
		for _, s := range b.Statements {
			if at.Start < s.Start || s.End < at.End {
				continue
			}
			if row, ok := vocabulary.Lookup(in, s.Verb.Text); ok {
				dims := vocabulary.Wanted(row.Slots)
				for _, c := range row.Clauses {
					dims = append(dims, vocabulary.Wanted(c.Slots)...)
				}
				is = is || slices.Contains(dims, quantity.TemperatureDifference) && s.Head().Start <= at.Start && at.End <= s.Head().End
			}
			if s.Body != nil {
				into(s.Body, vocabulary.Opens(in, s.Verb.Text))
			}
		}
	}
	into(&a.tree.Top, vocabulary.File)
	return is
}

// inUnit writes an amount in a unit; false where nobody would, as 20 h in days.
func inUnit(ends []quantity.Quantity, unit string) (string, bool) {
	var list []string
	for _, q := range ends {
		text, ok := sameIn(q, unit)
		if !ok {
			return "", false
		}
		list = append(list, text)
	}
	if len(list) == 1 {
		return list[0], true
	}
	number, own, _ := strings.Cut(list[0], " ")
	if _, other, _ := strings.Cut(list[1], " "); own == other && !strings.Contains(own, " ") {
		return number + " to " + list[1], true
	}
	return list[0] + " to " + list[1], true
}

// A value in another unit has as few digits as say the same: to a twentieth of a degree, or to one part in 5,000 of
// anything else. A length of time is written otherwise only where it is exactly that.
const (
	sameDegree = 0.05 + 1e-9 // K
	samePart   = 1.0 / 5000
	sameTime   = 1e-9
	mostDigits = 4
)

func sameIn(q quantity.Quantity, unit string) (string, bool) {
	near := samePart * math.Abs(q.SI)
	digits := mostDigits
	switch q.Dimension {
	case quantity.Temperature:
		near = sameDegree
	case quantity.Time:
		near, digits = sameTime*math.Abs(q.SI), 2
	}
	for places := range digits {
		text, err := quantity.Format(q.SI, unit, places)
		if err != nil {
			return "", false
		}
		if back, err := quantity.Parse(text); err == nil && math.Abs(back.SI-q.SI) <= near {
			return text, true
		}
	}
	return "", false
}
