package tell

import (
	"fmt"

	"maltwright/lang/quantity"
	"maltwright/sim/forecast"
)

func heatsItself(t forecast.HeatsItself, units quantity.System) string {
	return fmt.Sprintf("the malt lies wet and almost without air for %s, at %.0f %% moisture, and its own breath would warm it by %s %s a day, because too little air carries the heat off: it sours and moulds",
		quantity.Lasting(t.Time), 100*t.Moisture, quantity.Rounded(t.Rise*units.Step(), 0), units.Degree())
}

func kilnBreath(a forecast.KilnBreath, _ quantity.System) Assumed {
	return Assumed{"breath of the malt on " + orElse(a.Called, "the kiln"), "left out",
		"a drying kiln carries off far more heat; here the malt gets warmer, and loses more, than the forecast says"}
}
