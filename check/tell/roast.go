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

func drumAir(a forecast.DrumAir, units quantity.System) Assumed {
	return Assumed{"air through " + orElse(a.Called, "the drum"), units.Airflow(a.Flow), "the kiln does not say; a vent of " + eachWeight(a.Each, "m3/h", "cfm", units) + " of what comes into it"}
}

func drumFull(t forecast.DrumFull, units quantity.System) string {
	if t.Malt > t.Holds {
		return fmt.Sprintf("%s of malt take %s, and the drum holds %s", units.Weight(t.Weight), units.Room(t.Malt), units.Room(t.Holds))
	}
	return fmt.Sprintf("%s of malt fill %s of the drum, and above a half it does not tumble freely", units.Weight(t.Weight), percent(t.Malt/t.Holds))
}

// quenched says what water on hot malt does.
func quenched(t forecast.Quenched, units quantity.System) string {
	if t.Beyond {
		return fmt.Sprintf("%s of water fall on malt that is hotter than is forecast: up to %s of steam come off it at once", t.Water, units.Volume(t.SteamMost()))
	}
	return fmt.Sprintf("%s of water fall on malt of %s: %s of it boil off as %s of steam, which leaves it at %s and %s moisture",
		t.Water, units.Degrees(t.Before, 0), units.Weight(t.Steam), units.Volume(t.Volume), units.Degrees(t.After, 0), quantity.Fixed(100*t.Moisture, 1)+" %")
}
