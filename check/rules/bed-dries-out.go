package rules

import (
	"fmt"

	"maltwright/lang/finding"
	"maltwright/lang/model"
)

var bedDriesOut = Rule{
	Forecast: true,
	Rule: finding.Rule{Name: "bed-dries-out", Severity: finding.Caution,
		Title:  "the growing piece dries so far that its growth slows",
		Why:    "without water the corn stops where it stands, and its far end is never modified; a barley bed wants 40 % and more until it has grown (common practice)",
		Do:     "cover it with damp cloth or a lid, keep the air over it moist, or sprinkle it and turn the water in",
		Bad:    "hold bed at 14 to 16 °C\nhumidity 50 to 60 %",
		Good:   "hold bed at 14 to 16 °C\nhumidity 95 to 99 %",
		Limits: "where germinate gives no humidity the forecast takes it that the piece is kept from drying"},
	Judge: func(r finding.Rule, c *Case) {
		for _, st := range model.Every[*model.Germination](c.Process) {
			floor := c.onFloor(st)
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
