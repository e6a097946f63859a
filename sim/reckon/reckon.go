// Package reckon does the sums a maltster does by hand beside the scale: the
// moisture of an oven sample, the weight to wait for, the yield, and what a count
// of germinated corns is worth.
//
// # How it works
//
// Each reckoning is a function of quantities and gives a result of its own type:
// the values in SI, and an Answer for showing them. The answer holds the figures in
// the unit the maltster used, the working line by line with its numbers, and notes
// on what was taken for granted. Everything rests on one thing: water comes and
// goes, dry matter only goes, so a weight divides into
//
//	weight = dry matter / (1 − moisture)
//
// with the moisture on the wet basis. Input that cannot be is refused with an
// *Error; nothing is put right in silence.
package reckon

import (
	"math"

	"maltwright/lang/quantity"
)

// Answer is a reckoning as it is shown.
type Answer struct {
	Figures []Figure // the result first, then what it rests on
	Working []Line
	Notes   []string // what was taken for granted
}

// Figure is one value of an answer.
type Figure struct {
	Key   string  // name for programs, such as dry_matter
	Label string  // name for people
	Value float64 // in Unit, with 10 figures
	Unit  string  // as in the input; "points" is per cent as a difference
	SI    float64 // kg; 1 for shares; kg/kg on the dry basis
	Text  string  // value and unit, rounded to what means something
}

// Line is one step of the working, such as
//
//	dry matter  100 g × (1 − 8 %) = 92 g
type Line struct{ Label, Sum string }

// Error is the refusal of an input: what is wrong, with the value and its unit,
// and what to do.
type Error struct{ Message, Hint string }

func (e *Error) Error() string { return e.Message + "; " + e.Hint }

func (a *Answer) addFigure(key, label string, like quantity.Quantity, si float64) {
	a.Figures = append(a.Figures, newFigure(key, label, like, si))
}

func (a *Answer) addLine(label, sum string) { a.Working = append(a.Working, Line{label, sum}) }

func (a *Answer) note(text string) { a.Notes = append(a.Notes, text) }

// newFigure writes a value in the unit of the quantity.
func newFigure(key, label string, like quantity.Quantity, si float64) Figure {
	f := Figure{Key: key, Label: label, Unit: like.Unit(), SI: tenFigures(si), Text: like.Like(si)}
	u, _ := quantity.Lookup(like.Unit())
	f.Value = tenFigures((si - u.Offset) / u.Factor)
	return f
}

// tenFigures drops the rounding noise of the sum: no scale shows ten figures.
func tenFigures(x float64) float64 {
	if x == 0 {
		return 0
	}
	scale := math.Pow(10, 9-math.Floor(math.Log10(math.Abs(x))))
	return math.Round(x*scale) / scale
}
