package tell

import (
	"fmt"

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
	switch a := a.(type) {
	case forecast.RoomAir:
		return site("air of the room", a.Band, a.Temperature+quantity.ZeroCelsius, units.Degrees(a.Temperature, 1))
	case forecast.RoomHumidity:
		return site("humidity of the room", a.Band, a.Humidity, percent(a.Humidity))
	case forecast.DrawnWater:
		return site("water as drawn", a.Band, a.Temperature+quantity.ZeroCelsius, units.Degrees(a.Temperature, 1))
	case forecast.SeaLevel:
		return Assumed{"height above the sea", units.Height(0), "the site does not say"}
	case forecast.GrainMoisture:
		return Assumed{"moisture of the raw grain", percent(a.Moisture), "the lot does not say; weigh and dry a sample"}
	case forecast.CornWeight:
		return Assumed{"weight of a thousand corns", thousandCorns(a.Thousand, units), "usual for " + a.Species}
	case forecast.Germination:
		return Assumed{"germination", percent(a.Share), "the lot was not tested"}
	case forecast.SoakWater:
		return Assumed{"water for each soak", eachWeight(a.Each, "l", "gal-us", units) + " of grain", "enough to stand a hand above the grain"}
	case forecast.BlownAir:
		return Assumed{"air blown through the soak water", percent(a.Brings) + " of the missing oxygen each time", "a pump on a timer, through coarse bubbles; nobody has to come for it"}
	}
	return ofEquipment(a, units)
}

func ofEquipment(a forecast.Assumption, units quantity.System) Assumed {
	switch a := a.(type) {
	case forecast.FloorArea:
		return floorArea(a, units)
	case forecast.MoistAir:
		return Assumed{"humidity over the growing piece", percent(a.Humidity), "it is kept from drying, by damp cloth or in a box; germinate does not say"}
	case forecast.WitherAir:
		return Assumed{"air over the withering piece", fmt.Sprintf("%s, %s relative humidity at %s", units.Speed(a.Speed), percent(a.Humidity), units.Degrees(a.Temperature, 0)),
			"a fan or an open door; the site's air, warmed"}
	case forecast.GateWait:
		return Assumed{"longest wait at a gate", fmt.Sprintf("%.0f h", a.Most/3600), "a gate without allow is waited for so long"}
	case forecast.KilnHeater:
		return Assumed{"heater of the kiln", "strong enough", "the kiln does not say its power"}
	case forecast.KilnArea:
		return kilnArea(a, units)
	case forecast.OvenAir:
		return Assumed{"air through the oven", airflow(a.Flow, units), "what leaks from a household oven; measure how much it loses"}
	case forecast.KilnAir:
		return Assumed{"air through the kiln", airflow(a.Flow, units), "the kiln does not say; " + eachWeight(a.Each, "m3/h", "cfm", units) + " of green malt"}
	case forecast.DeculmTime:
		return Assumed{"deculming", fmt.Sprintf("%.0f h, right after cooling", a.Takes/3600), "it is done while the rootlets are brittle"}
	case forecast.Learnt:
		return Assumed{Learnt(a.Used), a.Factor.Value.String() + " of the model's", fmt.Sprintf("learnt, house %q", a.House)}
	}
	return Assumed{}
}

// Learnt names a figure that was learnt: growth, drying in "tray kiln".
func Learnt(u forecast.Used) string {
	switch {
	case u.Of == "" && u.Figure != forecast.Uptake && u.Figure != forecast.Drying:
		return string(u.Figure)
	case u.Figure == forecast.Drying:
		return fmt.Sprintf("drying in %q", u.Of)
	}
	return fmt.Sprintf("%s of %q", u.Figure, u.Of)
}

// site is a value of the site: the middle of a band, or what is usual.
func site(what string, band *model.Range, si float64, usual string) Assumed {
	if band == nil {
		return Assumed{what, usual, "the site does not say"}
	}
	return Assumed{what, band.High.Like(si), "the middle of the site's " + band.String()}
}

func floorArea(a forecast.FloorArea, units quantity.System) Assumed {
	why := "what the grain covers where it lies one corn deep"
	if a.Depth > 0 {
		why = fmt.Sprintf("a bed %s deep", units.Depth(a.Depth))
	}
	return Assumed{"area of the " + string(a.Stage) + " floor", surface(a.Area, units), why}
}

func kilnArea(a forecast.KilnArea, units quantity.System) Assumed {
	why := "what the malt covers where it lies one corn deep"
	switch {
	case a.Load > 0 && units.British:
		why = quantity.About(a.Load*quantity.Foot*quantity.Foot, "lb") + " of green malt a square foot"
	case a.Load > 0:
		why = fmt.Sprintf("%.0f kg of green malt a square metre", a.Load)
	}
	return Assumed{"area of the kiln", surface(a.Area, units), why}
}

func percent(share float64) string { return fmt.Sprintf("%.0f %%", 100*share) }

// thousandCorns writes what they weigh, kg: 45 g, 1.6 oz.
func thousandCorns(kg float64, units quantity.System) string {
	if units.British {
		return quantity.About(kg, "oz")
	}
	return fmt.Sprintf("%.0f g", 1000*kg)
}

// eachWeight writes what there is of something for each kg, or of its British unit for
// each lb.
func eachWeight(si float64, metric, british string, units quantity.System) string {
	if units.British {
		return quantity.About(si*quantity.Pound, british) + " for each lb"
	}
	return quantity.About(si, metric) + " for each kg"
}
