package tell

import (
	"fmt"
	"math"
	"strings"

	"maltwright/lang/quantity"
	"maltwright/sim/forecast"
)

func followingAir(a forecast.FollowingAir, units quantity.System) Assumed {
	return Assumed{bedIn(a.Called), units.AboutAirflow(a.Flow), "all that the fan drives, at the temperature that keeps the bed in the middle of its band; no air at air-on is written"}
}

func roomAirBlown(a forecast.RoomAirBlown, units quantity.System) Assumed {
	return Assumed{bedIn(a.Called), units.AboutAirflow(a.Flow), "all room air that the fan drives; no air at air-on is written"}
}

// bedIn names the air through the bed of a stage.
func bedIn(called string) string {
	return strings.TrimSuffix("air through the bed in "+called, " in ")
}

func airGoverns(a forecast.AirGoverns, _ quantity.System) Assumed {
	return Assumed{"what keeps the bed", "the air at air-on, as written", fmt.Sprintf("the band of %s does not control this air: the forecast says whether the bed stays in it", a.Hold.Range.Range)}
}

func washedAir(a forecast.WashedAir, _ quantity.System) Assumed {
	return Assumed{"humidity of air-on", percent(a.Humidity), "the air is sprayed before it enters the bed; no humidity air-on is written"}
}

func boxPlant(a forecast.BoxPlant, _ quantity.System) Assumed {
	what, only := "cooler and heater", "its air is the room's and what its spray cools"
	switch {
	case !a.NoHeater:
		what, only = "cooler", "its air is no colder than its spray makes it"
	case !a.NoCooler:
		what, only = "heater", "its air is no warmer than what it comes from"
	}
	return Assumed{fmt.Sprintf("%s of %q", what, a.Floor), "none", "the floor does not say: " + only}
}

func fanPressure(a forecast.FanPressure, _ quantity.System) Assumed {
	return Assumed{"the fan", fmt.Sprintf("%.0f Pa beside the bed's own resistance, %s of its power in the air", a.Ducts, percent(a.Efficiency)),
		"ducts and spray; all that it draws warms its air, before spray and cooler"}
}

func fanWarms(forecast.FanWarms, quantity.System) Assumed {
	return Assumed{"warmth of the fan", "all that it draws, before spray and cooler", "they make the air from air that the fan has warmed; a fan after them gives drier air"}
}

func airOnShort(t forecast.AirOnShort, units quantity.System) string {
	lacks, edge := "cooler", "its warmest"
	if t.Asked > t.Got {
		lacks, edge = "heater", "its coldest"
	}
	unit := "kW"
	if math.Abs(t.Short) < 1000 {
		unit = "W"
	}
	says := "the process asks for air-on of %s, and the air comes on at %s: the %s lacks %s"
	if t.ToHold {
		says = "the bed needs air-on of %s to stay in its band, and the air comes on at %s: the %s lacks %s"
	}
	said := fmt.Sprintf(says, units.Degrees(t.Asked, 1), units.Degrees(t.Got, 1), lacks, quantity.About(math.Abs(t.Short), unit))
	if t.RunsAway && t.Got > t.Asked {
		said += " before the bed runs away"
	}
	if t.Bed.Time == 0 {
		return said
	}
	return said + fmt.Sprintf("; the middle of the bed then gets to %s on average and %s at %s", units.Degrees(t.Bed.Mean, 0), units.Degrees(t.Bed.Most, 0), edge) + growsLater(t.Bed.Later)
}

func fanShort(t forecast.FanShort, _ quantity.System) string {
	return fmt.Sprintf("the process asks for an airflow of %s, and the fan drives %s", t.Asked, t.Fan)
}

func bandOff(t forecast.BandOff, units quantity.System) string {
	m := t.Missed
	units = near(m.Asked.High, units)
	var sides []string
	if m.Above > 0 {
		sides = append(sides, fmt.Sprintf("is above that for %s, up to %s", quantity.Lasting(m.Above), units.Degrees(m.Most, 0)))
	}
	if m.Below > 0 {
		sides = append(sides, fmt.Sprintf("is below it for %s, down to %s", quantity.Lasting(m.Below), units.Degrees(m.Coldest, 0)))
	}
	kept := "held at"
	if m.Led {
		kept = "led from"
	}
	return fmt.Sprintf("the middle of the bed is to be %s %s, and %s", kept, m.Asked.Range.Range, strings.Join(sides, ", and ")) + growsLater(m.Later)
}

func ranHot(t forecast.RanHot, units quantity.System) string {
	return fmt.Sprintf("the bed runs hot: part of it is above %[2]s, at which the grain is lost, for %[1]s, and its warmest gets to %[3]s",
		quantity.Lasting(t.Time), units.Degrees(t.Lost, 0), units.Degrees(t.Highest, 0))
}
