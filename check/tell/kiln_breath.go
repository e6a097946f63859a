package tell

import (
	"fmt"

	"maltwright/lang/quantity"
	"maltwright/sim/forecast"
)

func heatsItself(t forecast.HeatsItself, units quantity.System) string {
	return fmt.Sprintf("for %s the malt lies wet and almost without air, at %.0f %% moisture, and less heat is carried off than its own breath makes, which would warm it by %s %s a day: it sours and moulds",
		quantity.Lasting(t.Time), 100*t.Moisture, quantity.Rounded(t.Rise*units.Step(), 0), units.Degree())
}

func kilnBreath(a forecast.KilnBreath, _ quantity.System) Assumed {
	return Assumed{"breath of the malt on " + orElse(a.Called, "the kiln"), "left out",
		"a kiln that dries carries off far more; here the malt is warmer, and loses more, than is forecast"}
}
