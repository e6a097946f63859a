package tell

import (
	"fmt"

	"maltwright/lang/quantity"
	"maltwright/sim/forecast"
)

func floorArea(a forecast.FloorArea, units quantity.System) Assumed {
	why := "the area that the grain covers one kernel deep"
	if a.Depth > 0 {
		why = fmt.Sprintf("a bed %s deep", units.Depth(a.Depth))
	}
	return Assumed{"area of the " + orElse(a.Called, string(a.Stage)) + " floor", units.Area(a.Area), why}
}

func orElse(text, other string) string {
	if text == "" {
		return other
	}
	return text
}

func bedHeld(forecast.BedHeld, quantity.System) Assumed {
	return Assumed{"what is held", "the bed", "hold does not say whether the bed or the room"}
}

func moistAir(a forecast.MoistAir, _ quantity.System) Assumed {
	return Assumed{"humidity over the growing piece", percent(a.Humidity), "it is kept from drying by a damp cloth or in a box, and opened where it gets wetter; germinate does not say"}
}

func witherAir(a forecast.WitherAir, units quantity.System) Assumed {
	return Assumed{"air over the " + orElse(pieceIn(a.Called), "withering piece"), fmt.Sprintf("%s, %s relative humidity at %s", units.Speed(a.Speed), percent(a.Humidity), units.Degrees(a.Temperature, 0)),
		"a fan or an open door; the site's air, warmed"}
}

func gateWait(a forecast.GateWait, _ quantity.System) Assumed {
	return Assumed{"longest wait at a gate", fmt.Sprintf("%.0f h", a.Most/3600), "a gate without allow waits so long"}
}

func kilnHeater(a forecast.KilnHeater, _ quantity.System) Assumed {
	return Assumed{"heater of " + orElse(a.Called, "the kiln"), "strong enough", "the kiln does not say its power"}
}

func fuelHeat(a forecast.FuelHeat, _ quantity.System) Assumed {
	return Assumed{"fuel of " + orElse(a.Called, "the kiln"), "all of its heat reaches the air", "the kiln does not say its efficiency; a flue takes some of the heat, so it burns more"}
}

func kilnFan(a forecast.KilnFan, _ quantity.System) Assumed {
	return Assumed{"fan of " + orElse(a.Called, "the kiln"), fmt.Sprintf("%.0f Pa beside the bed's own resistance, %s of its power in the air", a.Ducts, percent(a.Efficiency)),
		"the kiln does not say what its fan draws; it counts for that alone"}
}

func nothingRecovered(a forecast.NothingRecovered, _ quantity.System) Assumed {
	return Assumed{"heat recovered from the exhaust of " + orElse(a.Called, "the kiln"), "none", "its exhaust goes to the floor above; heat from that floor's exhaust is left out"}
}

func kilnArea(a forecast.KilnArea, units quantity.System) Assumed {
	why := fmt.Sprintf("%.0f kg of green malt a square metre", a.Load)
	if units.British {
		why = quantity.About(a.Load*quantity.Foot*quantity.Foot, "lb") + " of green malt a square foot"
	}
	return Assumed{"area of " + orElse(a.Called, "the kiln"), units.Area(a.Area), why}
}

func ovenAir(a forecast.OvenAir, units quantity.System) Assumed {
	return Assumed{"air through " + orElse(a.Called, "the oven"), units.Airflow(a.Flow), "what leaks from a household oven; measure how much it loses"}
}

func kilnAir(a forecast.KilnAir, units quantity.System) Assumed {
	if a.Warmed != nil {
		return Assumed{"air through " + orElse(a.Called, "the kiln"), units.AboutAirflow(a.Flow), "the kiln does not say; no more is warmed by its heater to the " + units.Degrees(*a.Warmed, 0) + " that it reaches"}
	}
	return Assumed{"air through " + orElse(a.Called, "the kiln"), units.Airflow(a.Flow), "the kiln does not say; " + eachWeight(a.Each, "m3/h", "cfm", units) + " of green malt"}
}

func kilnFresh(a forecast.KilnFresh, units quantity.System) Assumed {
	return Assumed{"air led back in " + orElse(a.Called, "the kiln"), "none", "the kiln does not say; yet its heater does not warm so much fresh air to the " + units.Degrees(a.Reaches, 0) + " that it reaches"}
}

func kilnFlaps(a forecast.KilnFlaps, _ quantity.System) Assumed {
	return Assumed{"air let through " + orElse(a.Called, "the kiln"), "no more than its heater can warm to the set temperature", "its flaps are shut as far as the heat needs; it has no airflow written"}
}

func deculmTime(a forecast.DeculmTime, _ quantity.System) Assumed {
	return Assumed{"deculming", fmt.Sprintf("%.0f h, right after cooling", a.Takes/3600), "it is done while the rootlets are brittle"}
}

// pieceIn names the piece of one of several stages, "" for that of the only one.
func pieceIn(called string) string {
	if called == "" {
		return ""
	}
	return "piece in " + called
}
