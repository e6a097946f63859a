package tell

import (
	"fmt"
	"math"

	"maltwright/lang/model"
	"maltwright/lang/quantity"
	"maltwright/sim/forecast"
)

// beyond says where the model ends.
func beyond(t forecast.Beyond, units quantity.System) string {
	what, mean := "the malt comes", ""
	if t.Share > 0 && t.Share < allOfBed {
		what, mean = fmt.Sprintf("the malt next to the heat, %s of the bed, comes", percent(t.Share)), fmt.Sprintf(". The bed is then at %s on average", units.Degrees(t.Mean, 0))
	}
	return fmt.Sprintf("%s above %s, where the model ends: moisture, weight, yield and quality are not forecast from there on. Times are as written; go by smell, by sound and by the cut kernel",
		what, units.Degrees(forecast.EndsAt, 0)) + mean
}

// allOfBed is as good as all of a bed.
const allOfBed = 0.95

func drumAir(a forecast.DrumAir, units quantity.System) Assumed {
	return Assumed{"air through " + orElse(a.Called, "the drum"), units.Airflow(a.Flow), "the kiln does not say; a vent of " + eachWeight(a.Each, "m3/h", "cfm", units) + " of what comes into it"}
}

func drumFull(t forecast.DrumFull, units quantity.System) string {
	if t.Malt > t.Holds {
		return fmt.Sprintf("%s of malt takes %s, and the drum holds %s", units.Weight(t.Weight), units.Room(t.Malt), units.Room(t.Holds))
	}
	return fmt.Sprintf("%s of malt fills %s of the drum, and above a half it does not tumble freely", units.Weight(t.Weight), percent(t.Malt/t.Holds))
}

// quenched says what water on hot malt does. Of malt beyond the model its heat alone is reckoned,
// so the figures are coarse.
func quenched(t forecast.Quenched, units quantity.System) string {
	on := fmt.Sprintf("%s of water falls on malt of %s: ", t.Water, units.Degrees(t.Before, 0))
	moisture := quantity.Fixed(100*t.Moisture, 1) + " % moisture"
	switch {
	case t.Steam < LeastSteam:
		return on + fmt.Sprintf("none of it boils off, and it leaves the malt at %s and %s", units.Degrees(t.After, 0), moisture)
	case !t.Beyond:
		return on + fmt.Sprintf("%s of it boils off as %s of steam, which leaves the malt at %s and %s", units.Weight(t.Steam), units.Volume(t.Volume), units.Degrees(t.After, 0), moisture)
	case t.Lacks():
		return on + fmt.Sprintf("by the heat of the malt all of it boils off, as %s of steam, and leaves the malt at about %s", units.Volume(t.Volume), units.Degrees(10*math.Round(t.After/10), 0))
	}
	return on + fmt.Sprintf("by the heat of the malt about %s of it boils off, as %s of steam, and the rest leaves the malt at about %.0f %% moisture", units.Room(t.Steam/1000), units.Volume(t.Volume), 100*t.Moisture)
}

// LeastSteam is the steam, kg, below which as good as no water boils off.
const LeastSteam = 0.001

// muchWater says how much more water is poured than malt takes.
func muchWater(e forecast.MuchWater, units quantity.System) string {
	water := 1000 * model.WaterVolume(e.Water.Quantity)
	times, digits := water/e.Malt, 0
	if times < 10 {
		digits = 1
	}
	said := fmt.Sprintf("%s of water on %s of malt is %.*f times the malt", e.Water, units.Weight(e.Malt), digits, times)
	if e.Enough < LeastSteam {
		return said + fmt.Sprintf("; malt of %s needs none", units.Degrees(e.Before, 0))
	}
	return said + fmt.Sprintf("; about %s ends the roast of malt at %s", units.Room(e.Enough/1000), units.Degrees(e.Before, 0))
}

func drumShell(a forecast.DrumShell, units quantity.System) Assumed {
	return Assumed{"shell of " + orElse(a.Called, "the drum"), units.Area(a.Area) + ", bare",
		"the kiln does not say what its walls are; at " + units.Degrees(a.At, 0) + " it loses " + quantity.Say(a.Loses, "kW") + " to the room"}
}
