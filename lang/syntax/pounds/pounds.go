// Package pounds is for tests: it writes a file in °F, lb, ft and the like that was
// written in °C, kg and m, and means the same with it.
package pounds

import (
	"fmt"
	"slices"
	"strings"

	"maltwright/lang/quantity"
	"maltwright/lang/sorted"
	"maltwright/lang/source"
	"maltwright/lang/syntax"
)

// british has the unit that takes the place of another, and the digits it is given: so
// many that the process stays the same.
var british = map[string]struct {
	unit   string
	places int
}{
	"°C": {"°F", 2}, "K": {"°F", 2}, "°C/h": {"°F/h", 2}, "°C/min": {"°F/min", 2},
	"kg": {"lb", 4}, "t": {"lb", 0}, "g": {"oz", 4}, "mg": {"oz", 6},
	"l": {"gal-us", 3}, "hl": {"gal-us", 2}, "m3": {"ft3", 2},
	"m": {"ft", 2}, "cm": {"in", 3}, "mm": {"in", 3}, "m2": {"ft2", 4}, "cm2": {"ft2", 5},
	"m3/h": {"cfm", 3}, "m3/s": {"cfm", 1}, "l/s": {"cfm", 3}, "l/min": {"cfm", 4},
	"kW": {"Btu/h", 0}, "W": {"Btu/h", 1}, "m/s": {"ft/min", 2},
}

// differences are the statements whose figures are differences of temperatures.
var differences = []string{"thermometer"}

// Written gives the text of a file with its figures in °F, lb and the like. What has no
// such unit, and what stands in comments and quotes, stays as it is.
func Written(text string) string {
	tree, _ := syntax.Parse(source.New("metric.malt", []byte(text)))
	var list []edit
	tree.Top.Walk(func(s *syntax.Statement) {
		difference := slices.Contains(differences, s.Verb.Text)
		for _, terms := range append([][]syntax.Term{s.Terms}, clauses(s)...) {
			for _, t := range terms {
				list = append(list, turned(t, difference)...)
			}
		}
	})
	sorted.Stable(list, func(a, b edit) int { return b.Start - a.Start })
	for _, e := range list {
		text = text[:e.Start] + e.text + text[e.End:]
	}
	return text
}

// edit puts a text in the place of another.
type edit struct {
	source.Span
	text string
}

func clauses(s *syntax.Statement) (list [][]syntax.Term) {
	for _, c := range s.Clauses {
		list = append(list, c.Terms)
	}
	return list
}

// turned lists the edits of a value.
func turned(t syntax.Term, difference bool) []edit {
	switch t := t.(type) {
	case syntax.Bounded:
		return turned(t.Value, difference)
	case syntax.Amount:
		if t.High == nil {
			return ofQuantity(t.Low, "", difference)
		}
		if low := t.Low.Parts; len(low) == 1 && low[0].Unit.Text == "" { // as in 43 to 45 %
			unit := t.High.Parts[0].Unit.Text
			return append(ofQuantity(t.Low, unit, difference), ofQuantity(*t.High, "", difference)...)
		}
		return append(ofQuantity(t.Low, "", difference), ofQuantity(*t.High, "", difference)...)
	}
	return nil
}

// ofQuantity is the edit of one quantity; borrowed is the unit that it takes from
// elsewhere, which is then not written.
func ofQuantity(q syntax.Quantity, borrowed string, difference bool) []edit {
	var parts []quantity.Part
	for _, p := range q.Parts {
		unit := p.Unit.Text
		if borrowed != "" {
			unit = borrowed
		}
		parts = append(parts, quantity.Part{Number: p.Number.Text, Unit: unit})
	}
	value, err := quantity.Make(parts...)
	if difference {
		value, err = quantity.Difference(parts...)
	}
	into, has := british[value.Unit()]
	if err != nil || !has {
		return nil
	}
	out := fahrenheits(value.SI)
	if !difference {
		if out, err = quantity.Format(value.SI, into.unit, into.places); err != nil {
			return nil
		}
	}
	number, _, _ := strings.Cut(out, " ")
	if strings.Contains(number, ".") {
		number = strings.TrimRight(strings.TrimRight(number, "0"), ".")
	}
	if borrowed != "" {
		return []edit{{q.Span, number}}
	}
	return []edit{{q.Span, number + " " + into.unit}}
}

// fahrenheits writes a difference of K.
func fahrenheits(k float64) string { return fmt.Sprintf("%.2f °F", k*9/5) }
