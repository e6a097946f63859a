package pneumatic

import (
	"errors"

	"maltwright/sim/air"
)

// bedTemperature is what an [air.RangeError] calls that of the bed.
const bedTemperature = "bed temperature"

// Frozen tells whether an error is the refusal of a bed that freezes.
func Frozen(err error) bool {
	var out *air.RangeError
	return errors.As(err, &out) && out.Quantity == bedTemperature && out.Value < out.Low
}
