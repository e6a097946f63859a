package rules

import (
	"fmt"

	"maltwright/lang/finding"
	"maltwright/lang/model"
	"maltwright/lang/quantity"
	"maltwright/sim/forecast"
)

var bedDriesOut = Rule{
	Forecast: true,
	Rule: finding.Rule{Name: "bed-dries-out", Severity: finding.Caution,
		Title:  "the growing piece dries so far that its growth slows",
		Why:    "without water the kernel stops growing, and its far end is never modified; a barley bed needs 40 % moisture and more until it has grown (common practice)",
		Do:     "cover it with damp cloth or a lid, keep the air over it moist, or sprinkle it and turn the water in",
		Bad:    "hold bed at 14 to 16 °C\nhumidity 50 to 60 %",
		Good:   "hold bed at 14 to 16 °C\nhumidity 95 to 99 %",
		Limits: "where germinate gives no humidity, the forecast assumes that the piece is kept from drying, or that the blown air has 98 %. For a bed with air blown through it, a loss of up to 1.4 points a day is not reported"},
	Judge: func(r finding.Rule, c *Case) {
		for _, st := range model.Every[*model.Germination](c.Process) {
			floor := c.onFloor(st)
			if floor != nil && floor.Blown != nil && c.boxDries(r, floor) {
				continue
			}
			if floor == nil || floor.MoistureAt-floor.Driest < driesBy || floor.Slowed <= mostSlowed {
				continue
			}
			if floor.MoistureAt < c.Profile.CastBand().Low-driesBy {
				continue // it never was wet enough, and the steep is to blame
			}
			place := floor.Place
			if st.Humidity != nil {
				place = st.Humidity.Place
			}
			f := r.At(place, fmt.Sprintf("the piece dries from %s moisture to %s, and for %s it grows at less than half its speed",
				Percent(floor.MoistureAt), Percent(floor.Driest), Hours(floor.Slowed)))
			c.Note(f)
		}
	},
}

const (
	driesBy    = 0.02      // share of the weight: less is the way of every piece
	mostSlowed = 24 * hour // letting it dry on its last day is usual (common practice)
)

// mostADay is how much moisture, wet basis, a bed with air blown through it may lose in a
// day: about a point is what its own heat drives off into saturated air (a balance of
// heat and water).
const mostADay = 0.014

// boxDries reports a bed that the air dries faster than its own heat would.
func (c *Case) boxDries(r finding.Rule, p *forecast.Piece) bool {
	days := (p.DriestAt - p.Began) / day
	if days < 1 || p.MoistureAt-p.Driest < driesBy || p.MoistureAt-p.Driest <= mostADay*days {
		return false
	}
	dries := fmt.Sprintf("the bed dries from %s moisture to %s, %s points a day",
		Percent(p.MoistureAt), Percent(p.Driest), quantity.Fixed(100*(p.MoistureAt-p.Driest)/days, 1))
	if p.Blown.Highest > c.growWarm()+forecastWarmth {
		f := r.At(p.Place, fmt.Sprintf("%s, and it gets %s warm", dries, c.Degrees(p.Blown.Highest)))
		f.Hint = "its own heat drives the water off: keep it cool with more air, or colder air"
		c.Note(f)
		return true
	}
	place, humidify := p.Place, "humidify the air to 98 % and more before it comes on, "
	if rh := model.PieceOf(p.Of).AirOnHumidity; rh != nil {
		place = rh.Place
		if rh.Range.High.SI >= moistOn {
			humidify = ""
		}
	}
	f := r.At(place, dries+"; its own heat drives off about 1 a day")
	f.Hint = humidify + "blow only as much air as cools the bed, or sprinkle: sprinkle to moisture 44 % when moisture below 42 %"
	c.Note(f)
	return true
}

// moistOn is the humidity of air-on above which no spray makes it much moister.
const moistOn = 0.97
