package air

import "fmt"

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
	return fmt.Sprintf("%s %.6g%s is outside %.6g to %.6g%s", e.Quantity, e.Value, unit, e.Low, e.High, unit)
}

// Within returns nil when low ≤ value ≤ high, and a *[RangeError] when it is
// not, or when value is not a number.
func Within(quantity string, value float64, unit string, low, high float64) error {
	if value >= low && value <= high {
		return nil
	}
	return &RangeError{Quantity: quantity, Value: value, Unit: unit, Low: low, High: high}
}
