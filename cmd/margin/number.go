package margin

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"maltwright/lang/quantity"
	"maltwright/lang/source"
	"maltwright/lang/syntax"
)

// number is a number of a text with the unit that it has there.
type number struct {
	place source.Span // of the number alone
	text  string
	unit  string // "" for a plain number; of the low end of a range that of the high one
	in    syntax.Amount
	high  bool // it is the high end of a range
}

// numberAt is the number that an offset is at, on its digits or on its unit; false where there is none.
func numberAt(tree *syntax.Tree, offset int) (found number, ok bool) {
	eachAmount(tree, func(a syntax.Amount) {
		if offset < a.Start || a.End < offset {
			return
		}
		for i, q := range ends(a) {
			for _, p := range q.Parts {
				if offset < p.Start || p.End < offset {
					continue
				}
				unit := p.Unit.Text
				if unit == "" && i == 0 && a.High != nil {
					unit = a.High.Parts[0].Unit.Text
				}
				found, ok = number{p.Number.Span, p.Number.Text, unit, a, i == 1}, true
			}
		}
	})
	return found, ok
}

// eachAmount visits every amount of a tree.
func eachAmount(tree *syntax.Tree, visit func(syntax.Amount)) {
	term := func(t syntax.Term) {
		if b, is := t.(syntax.Bounded); is {
			t = b.Value
		}
		if a, is := t.(syntax.Amount); is {
			visit(a)
		}
	}
	tree.Top.Walk(func(s *syntax.Statement) {
		for _, t := range s.Terms {
			term(t)
		}
		for _, c := range s.Clauses {
			for _, t := range c.Terms {
				term(t)
			}
		}
	})
}

func ends(a syntax.Amount) []syntax.Quantity {
	if a.High == nil {
		return []syntax.Quantity{a.Low}
	}
	return []syntax.Quantity{a.Low, *a.High}
}

// value is the number as it counts in its unit.
func (n number) value() (float64, bool) {
	q, err := quantity.Make(quantity.Part{Number: n.text})
	return q.SI, err == nil
}

// whole are the dimensions of which one more or less is told as one of the unit, however much there is of it.
var whole = []quantity.Dimension{quantity.Temperature, quantity.TemperatureDifference, quantity.Share, quantity.DryShare, quantity.Time, quantity.Count}

// step is how much more or less of the number is told of, in its unit: one, but of what is less than two or more than a
// hundred of something, such as 1.2 m2 and 1250 kg, a digit less than it has.
func (n number) step(value float64) float64 {
	size := math.Abs(value)
	d := quantity.Number
	if q, err := quantity.Make(quantity.Part{Number: "1", Unit: n.unit}); err == nil {
		d = q.Dimension
	}
	switch {
	case d == quantity.Temperature || d == quantity.TemperatureDifference || size == 0:
		return 1
	case size >= 2 && (slices.Contains(whole, d) || size < 100):
		return 1
	}
	return math.Pow(10, math.Floor(math.Log10(size/5)))
}

// moved gives the number so much more, with as many digits as it or the step has.
func (n number) moved(value, by float64) string {
	decimals := max(decimalsIn(n.text), decimalsIn(strconv.FormatFloat(math.Abs(by), 'f', -1, 64)))
	text, err := quantity.Format(value+by, "", decimals)
	if err != nil {
		return n.text
	}
	return text
}

func decimalsIn(number string) int {
	if strings.ContainsRune(number, '/') {
		return 2 // 3/4 is 0.75
	}
	for i := range len(number) {
		if number[i] == '.' {
			return len(number) - i - 1
		}
	}
	return 0
}
