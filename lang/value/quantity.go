// Package value turns the terms of a statement into values: a word and some numbers into
// a quantity, a range of them, a bound, a temperature with its place, a test, a time.
// Each reading of a term stands here once, for those who read meaning, lay out, compare
// and merge.
//
// What a term means can depend on the slot that it stands in: 0.8 °C is a temperature, or
// a difference of two. So the functions take what is wanted there. They say what is wrong
// as a typed error; the sentences about it are those of package read.
package value

import (
	"slices"

	"maltwright/lang/quantity"
	"maltwright/lang/syntax"
)

// Quantity makes a quantity as it is read where one of the dimensions is wanted. It may
// yet be of none of them, which Fit tells. Quantity returns the errors of quantity.Make.
func Quantity(q syntax.Quantity, wanted []quantity.Dimension) (quantity.Quantity, error) {
	return Made(q.Written(), wanted)
}

// Made is Quantity of parts that may have been put right.
func Made(parts []quantity.Part, wanted []quantity.Dimension) (quantity.Quantity, error) {
	if slices.Contains(wanted, quantity.TemperatureDifference) {
		return quantity.Difference(parts...)
	}
	return quantity.Make(parts...)
}

// Fit gives a quantity in the first of the dimensions that it can be read in.
func Fit(made quantity.Quantity, wanted []quantity.Dimension) (quantity.Quantity, bool) {
	for _, d := range wanted {
		if as, err := made.As(d); err == nil {
			return as, true
		}
	}
	return made, false
}
