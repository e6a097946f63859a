package tell

import (
	"fmt"

	"maltwright/lang/quantity"
	"maltwright/sim/forecast"
)

// beyond says where the model ends.
func beyond(_ forecast.Beyond, units quantity.System) string {
	return fmt.Sprintf("the malt comes above %s, where the model ends: its moisture and weight, what comes of it and what the heat does to it are not forecast from there on. Times are as written; go by nose, by ear and by the cut corn",
		units.Degrees(forecast.EndsAt, 0))
}
