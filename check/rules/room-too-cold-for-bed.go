package rules

import (
	"fmt"

	"maltwright/lang/finding"
	"maltwright/lang/quantity"
	"maltwright/sim/forecast"
)

var roomTooColdForBed = Rule{
	Forecast: true,
	Rule: finding.Rule{Name: "room-too-cold-for-bed", Severity: finding.Caution, // a fault where it freezes, or does not come to its end
		Title:  "the process holds the bed warmer than the room allows",
		Why:    "growing grain hardly warms itself in its first days, and a thin or turned piece loses its warmth at once; heaping keeps some warmth, and only a heater makes more (heat balance of the bed)",
		Do:     "heat the room and say so: hold room at 14 to 16 °C; or give the floor a heater, couch the bed deeper on less floor, or wait for a warmer season",
		Bad:    "air -8 to -2 °C",
		Good:   "air 12 to 16 °C",
		Limits: "it leaves out the warmth that a cover keeps in; it takes the middle of the site's air temperature, by day and by night"},
	Judge: func(r finding.Rule, c *Case) {
		for _, t := range forecast.Troubles[forecast.BedFrozen](c.Forecast) {
			f := r.At(t.Place, c.said(t))
			f.Severity, f.Related = finding.Fault, c.roomSaid()
			c.Note(c.rests(r, f, roomKnown...))
		}
		if c.has(r.Name) {
			return
		}
		for _, t := range c.astray(true) {
			f := c.offBand(r, t)
			if t.Wants > t.Power {
				f.Hint = fmt.Sprintf("a heater of %s on its floor would do; or %s", quantity.About(t.Wants, "W"), r.Do)
			}
			c.Note(f)
		}
	},
}
