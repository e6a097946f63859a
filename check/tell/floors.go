package tell

import (
	"fmt"

	"maltwright/lang/quantity"
	"maltwright/sim/forecast"
)

func airOfFloor(a forecast.AirOfFloor, units quantity.System) Assumed {
	return Assumed{"air to " + orElse(a.Called, "the kiln"), fmt.Sprintf("%.0f to %s as it comes", units.Temperature(a.Coolest), units.Degrees(a.Warmest, 0)),
		fmt.Sprintf("the exhaust of %q, where the batch before lies, in the same process %s ahead", a.Floor, quantity.Lasting(a.Cycle))}
}

func floorsApart(t forecast.FloorsApart, units quantity.System) string {
	return fmt.Sprintf("the exhaust of the lower floor and the drying of the upper floor do not agree after %d rounds: they differ by %s and %s g/kg on average",
		t.Rounds, apart(t.Kelvin, units), quantity.Rounded(1000*t.Ratio, 1))
}
