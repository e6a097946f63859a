package tell

import (
	"fmt"
	"math"

	"maltwright/lang/quantity"
	"maltwright/sim/forecast"
)

// Driver names what drives the air of a kiln: its fan.
func Driver(by forecast.Driver) string { return drivers[by] }

// drivers name what drives the air of a kiln.
var drivers = map[forecast.Driver]string{forecast.ByFan: "its fan", forecast.ByChimney: "its chimney", forecast.ByDraught: "its natural draught"}

func drivenAir(a forecast.DrivenAir, units quantity.System) Assumed {
	by := drivers[a.By]
	if a.Flue > 0 {
		by += fmt.Sprintf(", with the draught of its chimney of %s,", units.Height(a.Flue))
	}
	why := fmt.Sprintf("the air that %s drives through green malt %s deep at %s%s, by the resistance of loose barley; ducts, floor and flaps count as 2.5 velocity heads in a twentieth of its area", by, units.Depth(a.Depth), units.Degrees(a.At, 0), through(a.Over))
	switch {
	case a.Most > 0:
		why = fmt.Sprintf("a natural draught pulls %s at most, with a flue of %s to %s, and drives only so much air through green malt %s deep",
			units.Pressure(a.Most), units.Height(10), units.Height(15), units.Depth(a.Depth))
	case a.Warmed != nil:
		why = fmt.Sprintf("%s would drive more through green malt %s deep; somebody shuts it to what its heater warms to the %s that it reaches", drivers[a.By], units.Depth(a.Depth), units.Degrees(*a.Warmed, 0))
	case a.Draws:
		why += "; half of the power of the fan moves the air, and all of it warms the air"
	}
	return Assumed{"air through " + orElse(a.Called, "the kiln") + " once its malt is warm", units.AboutAirflow(a.Flow), why}
}

// through says that the air goes on through the bed of a floor above.
func through(over string) string {
	if over == "" {
		return ""
	}
	return fmt.Sprintf(" and through the bed of %q above it", over)
}

func draughtHeight(a forecast.DraughtHeight, units quantity.System) Assumed {
	what := "warm air that draws in " + orElse(a.Called, "the kiln")
	if a.Over != "" {
		under := "it says no chimney"
		if a.Chimney {
			under = "of the height of its chimney"
		}
		return Assumed{what, fmt.Sprintf("%s below the bed, %s from it to that of %q, and %s above that", units.Height(a.Below), units.Height(a.Between), a.Over, units.Height(a.Above-a.Between)),
			under + "; people stand between two floors, and the air that leaves the upper one draws above it"}
	}
	if a.Chimney {
		return Assumed{what, units.Height(a.Below) + " below the bed", "from the heater or fire to the bed, beside its chimney"}
	}
	return Assumed{what, fmt.Sprintf("%s below the bed and %s above it", units.Height(a.Below), units.Height(a.Above)), "a small house with the heater or fire under its bed; it says no chimney"}
}

func kilnAirShort(t forecast.KilnAirShort, units quantity.System) string {
	return fmt.Sprintf("the step asks for %s of air, and for %s it gets %s on average: all of it would need %s through the malt, and %s gives %s",
		t.Asked, quantity.Lasting(t.Time), quantity.About(t.Got, t.Asked.Unit()), units.Pressure(t.Takes), drivers[t.By], units.Pressure(t.Gives))
}

// driven says why so little air passes the malt.
func driven(d *forecast.Driven, units quantity.System) string {
	dries := "the malt does not dry"
	if !math.IsInf(d.Dries, 0) {
		dries = "it would take " + quantity.Lasting(d.Dries)
		if days := d.Dries / 86400; days > 10 {
			dries = fmt.Sprintf("it would take %.0f days", days)
		}
	}
	bed := "it"
	if d.Over != "" {
		bed = fmt.Sprintf("the malt of %q above", d.Over)
	}
	return fmt.Sprintf(": %s lies %s deep; the %s that would dry it in that time need %s, and %s has %s; %s get through, with which %s",
		bed, units.Depth(d.Depth), units.AboutAirflow(d.Needs), units.Pressure(d.Takes), drivers[d.By], units.Pressure(d.Gives), units.AboutAirflow(d.Passes), dries)
}
