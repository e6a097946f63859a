package tell

import (
	"fmt"
	"math"

	"maltwright/lang/quantity"
	"maltwright/sim/forecast"
	"maltwright/sim/kiln"
)

// Trouble says what the models met.
func Trouble(t forecast.Trouble, units quantity.System) string {
	if said, ok := troubles.say(t, units); ok {
		return said
	}
	return untold(t)
}

var troubles = tableOf(
	on[forecast.Trouble](vesselFull),
	on[forecast.Trouble](oxygenGone),
	on[forecast.Trouble](drowned),
	on[forecast.Trouble](notCovered),
	on[forecast.Trouble](airBlown),
	on[forecast.Trouble](airDrawn),
	on[forecast.Trouble](targetMissed),
	on[forecast.Trouble](bedWarm),
	on[forecast.Trouble](bedOff),
	on[forecast.Trouble](bedFrozen),
	on[forecast.Trouble](airOnShort),
	on[forecast.Trouble](fanShort),
	on[forecast.Trouble](bandOff),
	on[forecast.Trouble](ranHot),
	on[forecast.Trouble](kilnShort),
	on[forecast.Trouble](cannotCool),
	on[forecast.Trouble](stillWarm),
	on[forecast.Trouble](airShort),
	on[forecast.Trouble](kilnAirShort),
	on[forecast.Trouble](heatsItself),
	on[forecast.Trouble](hotWet),
	on[forecast.Trouble](floorsApart),
	on[forecast.Trouble](unable),
	on[forecast.Trouble](beyond),
	on[forecast.Trouble](drumFull),
	on[forecast.Trouble](quenched),
)

func vesselFull(t forecast.VesselFull, units quantity.System) string {
	return fmt.Sprintf("the swollen grain with its water needs %s", units.Room(t.Need))
}

func oxygenGone(t forecast.OxygenGone, _ quantity.System) string {
	return fmt.Sprintf("the grain stands in water without oxygen for %[2]s in soak %[1]d", t.Soak, quantity.Lasting(t.Airless))
}

func drowned(t forecast.Drowned, _ quantity.System) string {
	return fmt.Sprintf("the grain stands in water without oxygen for %[2]s without a break in soak %[1]d: %[3]s of 100 kernels drown, and the forecast goes on with the rest",
		t.Soak, quantity.Lasting(t.Airless), quantity.Fixed(100*t.Kernels, 0))
}

func targetMissed(t forecast.TargetMissed, _ quantity.System) string {
	return fmt.Sprintf("the steep ends at %s %% moisture", quantity.Fixed(100*t.Moisture, 1))
}

func bedWarm(t forecast.BedWarm, units quantity.System) string {
	return fmt.Sprintf("the piece gets %s warm between turns in a bed %s deep", units.Degrees(t.Temperature, 1), units.Depth(t.Depth))
}

func bedOff(t forecast.BedOff, units quantity.System) string {
	units = near(t.Asked.High, units)
	side, part, edge, machine := "above", "its middle", "its warmest", "cooler"
	if t.Cold {
		side, part, edge, machine = "below", "it", "its coldest", "heater"
	}
	with := ""
	if t.Power > 0 {
		with = fmt.Sprintf(" with a %s of %s", machine, quantity.About(t.Power, "W"))
	}
	if l := t.Led; l != nil {
		return fmt.Sprintf("the process leads the bed from %s, and in a room of %s%s %s lies %s that from day %d on, by %s on average and %s at most",
			t.Asked.Range.Range, units.Degrees(t.Room, 0), with, part, side, 1+int(l.Since/86400), apart(l.Mean, units), apart(l.Most, units)) + growsLater(t.Later)
	}
	return fmt.Sprintf("the process holds the bed at %s, and in a room of %s%s %s gets to %s on average and %s at %s",
		t.Asked.Range.Range, units.Degrees(t.Room, 0), with, part, units.Degrees(t.Mean, 0), units.Degrees(t.Most, 0), edge) + growsLater(t.Later)
}

// apart writes a difference of so many K.
func apart(kelvin float64, units quantity.System) string {
	return quantity.Rounded(kelvin*units.Step(), 1) + " " + units.Degree()
}

func bedFrozen(t forecast.BedFrozen, units quantity.System) string {
	return fmt.Sprintf("the growing piece freezes in a room of %s", units.Degrees(t.Room, 1))
}

// growsLater says what a bed that is not where it should be does to its growth.
func growsLater(later float64) string {
	const tells = 6 * 3600.0 // s; less is what lots differ by at the least (common practice)
	switch {
	case later > tells:
		return fmt.Sprintf(", so its growth takes %s longer", quantity.Lasting(later))
	case later < -tells:
		return fmt.Sprintf(", so its growth ends %s sooner", quantity.Lasting(-later))
	}
	return ""
}

func kilnShort(t forecast.KilnShort, units quantity.System) string {
	units = near(t.Set, units)
	if math.IsNaN(t.Got) {
		return fmt.Sprintf("the step asks for %s of %s, and the kiln does not reach it", t.Target, units.Degrees(t.Asked, 0)) + because(t.Limit)
	}
	if t.Late {
		return fmt.Sprintf("the step asks for %s of %s, and has reached %s when it ends: %s", t.Target, units.Degrees(t.Asked, 0), units.Degrees(t.Got, 0), lateFor(t.Limit))
	}
	if t.ByDrying() {
		return fmt.Sprintf("the step asks for %s of %s, and for %s it is %s on average, because drying malt cools the air: air-on is set at most %s higher",
			t.Target, units.Degrees(t.Asked, 0), quantity.Lasting(t.Time), units.Degrees(t.Got, 1), apart(kiln.Lead, units))
	}
	why := limits[t.Limit]
	if t.ByDoor {
		why = "its heat goes out by the open door"
	}
	return fmt.Sprintf("the step asks for %s of %s, and the kiln gives %s: %s", t.Target, units.Degrees(t.Asked, 0), units.Degrees(t.Got, 0), why)
}

// lateFor says what keeps a roast from its heat until it ends.
func lateFor(limit kiln.Limit) string {
	switch limit {
	case kiln.Unlimited, kiln.ByLead:
		return "too little time"
	case kiln.ByHeater:
		return "heater too weak for so much malt in so little time"
	}
	return limits[limit]
}

// because says what keeps a kiln from what it is asked, "" where nothing of it does.
func because(limit kiln.Limit) string {
	if why := limits[limit]; why != "" {
		return ": " + why
	}
	return ""
}

// limits is what keeps a kiln from what it is asked.
var limits = map[kiln.Limit]string{
	kiln.ByHeater: "heater too weak", kiln.ByReachHigh: "above the kiln's reach", kiln.ByReachLow: "below the kiln's reach",
	kiln.ByIncomingAir: "incoming air warmer", kiln.ByWalls: "its walls are still warmer", kiln.ByLead: "air-on at its limit",
	kiln.ByFeed: "no warmer air comes from the floor below, and it has no heater",
}

func cannotCool(t forecast.CannotCool, _ quantity.System) string {
	return fmt.Sprintf("the malt cannot be cooled to %s with room air of %s", t.Asked, t.Asked.High.Like(t.Room+quantity.ZeroCelsius))
}

func stillWarm(t forecast.StillWarm, units quantity.System) string {
	units = near(t.Asked, units)
	said := fmt.Sprintf("the step asks for %s of %s, and after %s of cooling it is %s", t.Of, t.Asked, quantity.Lasting(t.Time), units.Degrees(t.Got, 0))
	if t.Malt > t.Got+1 {
		said += fmt.Sprintf(", the malt up to %s", units.Degrees(t.Malt, 0))
	}
	return said
}

func airShort(t forecast.AirShort, units quantity.System) string {
	took := quantity.Lasting(t.Took)
	if t.Limit.Unit() != "" {
		took = t.Limit.Lasting(t.Took)
	}
	said := fmt.Sprintf("the malt must give off %s of water before it holds %s %%, and the air of this kiln carries away %s in %s at most",
		roughly(t.Water, t.Charge), quantity.Rounded(100*t.Moisture, 1), roughly(t.Carries, t.Charge), took)
	if t.Driven != nil {
		said += driven(t.Driven, units)
	}
	return said
}

// roughly writes so many kg of water in the unit of the charge.
func roughly(kg float64, charge quantity.Quantity) string {
	unit := charge.Unit()
	if unit == "t" {
		unit = "kg"
	}
	return quantity.About(kg, unit)
}

func hotWet(t forecast.HotWet, units quantity.System) string {
	units = near(t.Set, units)
	return fmt.Sprintf("the malt itself gets %s hot in this step while it holds %.1f %% moisture, and malt so wet stands only %s: %s too hot for its moisture for %s",
		units.Degrees(t.Temperature, 0), 100*t.Moisture, units.Degrees(t.Limit, 0), partIs(t.Share), quantity.Lasting(t.Time))
}

// partIs names so large a share of a bed.
func partIs(share float64) string {
	if share > 0.95 {
		return "all of it is"
	}
	return percent(share) + " of the bed is"
}

func unable(t forecast.Unable, units quantity.System) string {
	return fmt.Sprintf("the forecast of %s ends here: %s", t.Stage, Cause(t.Cause, units))
}
