package tell

import (
	"maltwright/lang/quantity"
	"maltwright/sim/forecast"
)

func evenTurns(a forecast.EvenTurns, _ quantity.System) Assumed {
	return Assumed{"turns at " + a.Written, "every " + a.Every.String(), "the first so long after the piece is spread; with the time of the first soak they stand at the clock"}
}
