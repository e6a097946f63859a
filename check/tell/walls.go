package tell

import (
	"fmt"

	"maltwright/lang/quantity"
	"maltwright/sim/forecast"
)

func kilnWalls(a forecast.KilnWalls, units quantity.System) Assumed {
	value := fmt.Sprintf("%s of %s, %s thick", units.AboutArea(a.Area), a.Of, thick(a.Thick, units))
	if a.Wool > 0 {
		value += fmt.Sprintf(", and %s of mineral wool on the side of the room", units.Depth(a.Wool))
	}
	why := "the usual thickness of such walls; they are as warm as the room when the malt comes on"
	switch {
	case a.Shell:
		why = "the shell of the drum, as it usually is; " + why
	case a.Trays:
		why = fmt.Sprintf("a cabinet %s high around trays one above the other; if it is another, write their area behind walls; %s", units.Height(a.Height), why)
	case a.Height > 0:
		why = fmt.Sprintf("four walls %s high around the malt, and a ceiling; %s", units.Height(a.Height), why)
	}
	return Assumed{"walls of " + orElse(a.Called, "the kiln"), value, why}
}

// thick is how thick a wall is: 24 cm, 9 in, 2.5 cm, and of a sheet 1 mm, 0.04 in.
func thick(m float64, units quantity.System) string {
	if in := m / quantity.Inch; units.British && in < 0.1 {
		return fmt.Sprintf("%.2f in", in)
	}
	if !units.British && m >= 0.01 && m < 0.1 {
		return fmt.Sprintf("%.2g cm", 100*m)
	}
	return units.Depth(m)
}

func noWalls(a forecast.NoWalls, _ quantity.System) Assumed {
	if a.Share == 0 {
		return Assumed{"walls of " + orElse(a.Called, "the oven"), "take up and lose no heat",
			"the oven does not say what its walls are, metal or insulated; an oven loses more through them than its air takes, so the energy shown may be a third of what it draws"}
	}
	return Assumed{"walls of " + orElse(a.Called, "the kiln"), "take up and lose no heat",
		fmt.Sprintf("the kiln does not say what its walls are; its heater gets to %s of its power, and walls may well take the rest", percent(a.Share))}
}

func ovenDoor(a forecast.OvenDoor, units quantity.System) Assumed {
	return Assumed{"door of " + orElse(a.Called, "the oven"), units.Depth(a.Height) + " high",
		fmt.Sprintf("usual of a household oven; the gap lets out %s at %s", units.AboutAirflow(a.Flow), units.Degrees(a.At, 0))}
}

func doorIdle(a forecast.DoorIdle, _ quantity.System) Assumed {
	if a.Said {
		return Assumed{"door of " + orElse(a.Called, "the oven"), "lets nothing more out", "an airflow is written too, and holds"}
	}
	return Assumed{"door of " + orElse(a.Called, "the kiln"), "moves no air", "only that of an oven that says draught still does"}
}

func openOven(a forecast.OpenOven, _ quantity.System) Assumed {
	return Assumed{"door of " + orElse(a.Called, "the oven") + " while it cools", "open", "the malt cools as it would on a table; an oven that stays shut takes far longer"}
}

func coolDraught(a forecast.CoolDraught, units quantity.System) Assumed {
	return Assumed{"draught of " + orElse(a.Called, "the kiln") + " while it cools", units.Height(a.Above) + " of air as warm as the malt",
		"the fire that drew its air is out; a small house under and over the malt"}
}
