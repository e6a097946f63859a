package rules

import (
	"fmt"

	"maltwright/lang/finding"
	"maltwright/lang/quantity"
)

var roomTooWarmForBed = Rule{
	Forecast: true,
	Rule: finding.Rule{Name: "room-too-warm-for-bed", Severity: finding.Caution,
		Title:  "the process holds the bed cooler than its room",
		Why:    "growing grain heats itself and is warmer than its room; turning and thinning bring it near the room, and only a cooler brings it below (heat balance of the bed)",
		Do:     "find a cooler room or season, give the floor a cooler, or hold the bed in a band that the room allows",
		Bad:    "air 20 to 24 °C",
		Good:   "air 13 to 15 °C",
		Limits: "box-cannot judges a bed with air blown through it; this rule does not know how much a wet cloth cools; it takes the middle of the site's air temperature, by day and by night"},
	Judge: func(r finding.Rule, c *Case) {
		for _, t := range c.astray(false) {
			if !byRoom(t.Room, t.Asked) {
				continue // its depth or its turns are to blame: piece-overheats
			}
			f := c.offBand(r, t)
			if t.Wants > t.Power {
				f.Hint = fmt.Sprintf("a cooler of %s on its floor would do; or %s", quantity.About(t.Wants, "W"), r.Do)
			}
			c.Note(f)
		}
	},
}
