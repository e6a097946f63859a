package tell

import (
	"fmt"
	"strings"

	"maltwright/lang/model"
	"maltwright/lang/quantity"
	"maltwright/sim/forecast"
)

// Assumed is an assumption in words.
type Assumed struct {
	What  string // air of the room, drying in "tray kiln"
	Value string // with its unit
	Why   string // where it comes from
}

// Assumption says what a forecast took for granted.
func Assumption(a forecast.Assumption, units quantity.System) Assumed {
	if said, ok := assumptions.say(a, units); ok {
		return said
	}
	return Assumed{What: untold(a)}
}

var assumptions = tableOf(
	on[forecast.Assumption](roomAir),
	on[forecast.Assumption](roomHumidity),
	on[forecast.Assumption](drawnWater),
	on[forecast.Assumption](seaLevel),
	on[forecast.Assumption](grainMoisture),
	on[forecast.Assumption](grownBefore),
	on[forecast.Assumption](kernelWeight),
	on[forecast.Assumption](germination),
	on[forecast.Assumption](soakWater),
	on[forecast.Assumption](mixedWater),
	on[forecast.Assumption](sprayed),
	on[forecast.Assumption](evenTurns),
	on[forecast.Assumption](drainedDepth),
	on[forecast.Assumption](blownAir),
	on[forecast.Assumption](floorArea),
	on[forecast.Assumption](bedHeld),
	on[forecast.Assumption](moistAir),
	on[forecast.Assumption](followingAir),
	on[forecast.Assumption](roomAirBlown),
	on[forecast.Assumption](airGoverns),
	on[forecast.Assumption](washedAir),
	on[forecast.Assumption](boxPlant),
	on[forecast.Assumption](fanPressure),
	on[forecast.Assumption](fanWarms),
	on[forecast.Assumption](witherAir),
	on[forecast.Assumption](gateWait),
	on[forecast.Assumption](kilnHeater),
	on[forecast.Assumption](fuelHeat),
	on[forecast.Assumption](kilnFan),
	on[forecast.Assumption](kilnBreath),
	on[forecast.Assumption](nothingRecovered),
	on[forecast.Assumption](kilnArea),
	on[forecast.Assumption](ovenAir),
	on[forecast.Assumption](drumAir),
	on[forecast.Assumption](drumShell),
	on[forecast.Assumption](kilnAir),
	on[forecast.Assumption](kilnFresh),
	on[forecast.Assumption](kilnFlaps),
	on[forecast.Assumption](kilnWalls),
	on[forecast.Assumption](noWalls),
	on[forecast.Assumption](ovenDoor),
	on[forecast.Assumption](doorIdle),
	on[forecast.Assumption](openOven),
	on[forecast.Assumption](coolDraught),
	on[forecast.Assumption](airOfFloor),
	on[forecast.Assumption](drivenAir),
	on[forecast.Assumption](draughtHeight),
	on[forecast.Assumption](deculmTime),
	on[forecast.Assumption](scaleError),
	on[forecast.Assumption](stepByHeat),
	on[forecast.Assumption](factorLearnt),
)

func roomAir(a forecast.RoomAir, units quantity.System) Assumed {
	return site("air of the room", a.Band, a.Temperature+quantity.ZeroCelsius, units.Degrees(a.Temperature, 1))
}

func roomHumidity(a forecast.RoomHumidity, _ quantity.System) Assumed {
	return site("humidity of the room", a.Band, a.Humidity, percent(a.Humidity))
}

func drawnWater(a forecast.DrawnWater, units quantity.System) Assumed {
	return site("water as drawn", a.Band, a.Temperature+quantity.ZeroCelsius, units.Degrees(a.Temperature, 1))
}

// site is a value of the site: the middle of a band, or what is usual.
func site(what string, band *model.Range, si float64, usual string) Assumed {
	if band == nil {
		return Assumed{what, usual, "the site does not say"}
	}
	return Assumed{what, band.High.Like(si), "the middle of the site's " + band.String()}
}

func seaLevel(_ forecast.SeaLevel, units quantity.System) Assumed {
	return Assumed{"height above the sea", units.Height(0), "the site does not say"}
}

func grownBefore(a forecast.GrownBefore, _ quantity.System) Assumed {
	return Assumed{"growth of the green malt", fmt.Sprintf("acrospire at %.4g of the kernel", a.Acrospire), "it is bought grown; its growth goes on while it is wet"}
}

func grainMoisture(a forecast.GrainMoisture, _ quantity.System) Assumed {
	if a.Green {
		return Assumed{"moisture of the green malt", percent(a.Moisture), "the lot does not say; weigh and dry a sample"}
	}
	if a.Kilned {
		return Assumed{"moisture of the malt", percent(a.Moisture), "the lot does not say; weigh and dry a sample"}
	}
	return Assumed{"moisture of the raw grain", percent(a.Moisture), "the lot does not say; weigh and dry a sample"}
}

func kernelWeight(a forecast.KernelWeight, units quantity.System) Assumed {
	weight := fmt.Sprintf("%.0f g", 1000*a.Thousand)
	if units.British {
		weight = quantity.About(a.Thousand, "oz")
	}
	return Assumed{"weight of a thousand kernels", weight, "usual for " + a.Species}
}

func germination(a forecast.Germination, _ quantity.System) Assumed {
	return Assumed{"germination", percent(a.Share), "the lot was not tested"}
}

func soakWater(a forecast.SoakWater, units quantity.System) Assumed {
	return Assumed{"water for each soak", eachWeight(a.Each, "l", units.Gallon(), units) + " of grain", "enough to stand a hand above the grain"}
}

func drainedDepth(a forecast.DrainedDepth, units quantity.System) Assumed {
	return Assumed{"drained grain in the rests", units.Depth(a.Depth) + " deep", "the vessel says no area"}
}

func blownAir(a forecast.BlownAir, _ quantity.System) Assumed {
	return Assumed{"air blown through the soak water", percent(a.Brings) + " of the missing oxygen each time", "a pump on a timer, through coarse bubbles; nobody has to come for it"}
}

func scaleError(a forecast.ScaleError, _ quantity.System) Assumed {
	return Assumed{"error of the scale", fmt.Sprintf("%.1f %% of what it shows", 100*a.Share), "the record does not name the scale, or the scale has no division"}
}

func stepByHeat(a forecast.StepByHeat, _ quantity.System) Assumed {
	return Assumed{"step of the kiln", a.Step + " at " + a.At.Format("2006-01-02 15:04"), fmt.Sprintf("no line says when it began, and %s fits best", a.Read)}
}

func factorLearnt(a forecast.Learnt, _ quantity.System) Assumed {
	return Assumed{Learnt(a.Used), a.Factor.Value.String() + " of the model's", fmt.Sprintf("learnt, house %q", a.House)}
}

// Learnt names a figure that was learnt: growth, drying in "tray kiln".
func Learnt(u forecast.Used) string {
	switch u.Figure {
	case forecast.Drying:
		return fmt.Sprintf("drying in %q", u.Of)
	case forecast.Uptake, forecast.HuskWater, forecast.Chit:
		return fmt.Sprintf("%s of %q", u.Figure, u.Of)
	}
	return string(u.Figure)
}

func percent(share float64) string { return fmt.Sprintf("%.0f %%", 100*share) }

// eachWeight writes what there is of something for each kg, or of its British unit for
// each lb: 2 l/kg, 18 m3/h for each kg.
func eachWeight(si float64, metric, british string, units quantity.System) string {
	text, kg := quantity.About(si, metric), "kg"
	if units.British {
		text, kg = quantity.About(si*quantity.Pound, british), "lb"
	}
	if strings.Contains(metric, "/") {
		return text + " for each " + kg
	}
	return text + "/" + kg
}
