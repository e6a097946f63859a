package air

import (
	"fmt"
	"math"
	"strconv"
)

// RangeError is the refusal of a value outside the interval for which an
// equation holds. Values are never moved into the interval instead.
type RangeError struct {
	Quantity  string  // what the value is
	Value     float64 // the value refused, in Unit
	Unit      string  // unit of Value, Low and High; empty for a ratio
	Low, High float64 // the closed interval accepted
}

// Error gives the quantity, the value, its unit and the interval.
func (e *RangeError) Error() string {
	unit := e.Unit
	if unit != "" {
		unit = " " + unit
	}
	return fmt.Sprintf("%s %s%s is outside %s to %s%s", e.Quantity, figure(e.Value), unit, figure(e.Low), figure(e.High), unit)
}

// figure writes a value to three figures and never with an exponent; whole numbers
// keep all their digits.
func figure(x float64) string {
	if x == math.Trunc(x) || math.IsInf(x, 0) || math.IsNaN(x) {
		return strconv.FormatFloat(x, 'f', -1, 64)
	}
	scale := math.Pow(10, 2-math.Floor(math.Log10(math.Abs(x))))
	if rounded := math.Round(x*scale) / scale; scale > 0 && !math.IsInf(scale, 0) && rounded != 0 {
		return strconv.FormatFloat(rounded, 'f', -1, 64)
	}
	return strconv.FormatFloat(x, 'g', 3, 64)
}

// Within returns nil when low ≤ value ≤ high, and a *[RangeError] when it is
// not, or when value is not a number.
func Within(quantity string, value float64, unit string, low, high float64) error {
	if value >= low && value <= high {
		return nil
	}
	return &RangeError{Quantity: quantity, Value: value, Unit: unit, Low: low, High: high}
}
