package air

import (
	"fmt"
	"math"
)

// RangeError is the refusal of a value outside the interval for which an
// equation holds. Values are never moved into the interval instead.
type RangeError struct {
	Quantity  string  // what the value is
	Value     float64 // the value refused, in Unit
	Unit      string  // unit of Value, Low and High; empty for a ratio
	Low, High float64 // the closed interval accepted
}

// Error gives the quantity, the value, its unit and the interval, in the units that
// people measure in (see figure).
func (e *RangeError) Error() string {
	if math.IsNaN(e.Value) || math.IsInf(e.Value, 0) {
		return e.Quantity + " could not be reckoned"
	}
	value, low, high := figured(e.Value, e.Unit), figured(e.Low, e.Unit), figured(e.High, e.Unit)
	outside := "outside"
	if value == low || value == high { // as far as its digits tell
		outside = "just outside"
	}
	from := low.String()
	if low.unit == high.unit || low.number == "0" {
		from = low.number
	}
	return fmt.Sprintf("%s %s is %s %s to %s", e.Quantity, value, outside, from, high)
}

// Within returns nil when low ≤ value ≤ high, and a *[RangeError] when it is
// not, or when value is not a number.
func Within(quantity string, value float64, unit string, low, high float64) error {
	if value >= low && value <= high {
		return nil
	}
	return &RangeError{Quantity: quantity, Value: value, Unit: unit, Low: low, High: high}
}

// Share is the unit of a share of 1, which is shown in per cent.
const Share = "of 1"
