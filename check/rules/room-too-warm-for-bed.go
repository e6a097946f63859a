package rules

import (
	"fmt"

	"maltwright/lang/finding"
	"maltwright/lang/vocabulary"
)

var roomTooWarmForBed = Rule{
	Rule: finding.Rule{Name: "room-too-warm-for-bed", Severity: finding.Caution,
		Title:  "the bed is to be held cooler than the room ever is",
		Why:    "growing grain heats itself and lies warmer than its room; only moving air, wet cloth or a cooler can hold it below (common practice)",
		Do:     "find a cooler room or season, cool the air, or hold the bed in a band that the room allows",
		Bad:    "air 20 to 24 °C",
		Good:   "air 13 to 15 °C",
		Limits: "a bed with air blown through it is left to box-cannot; it does not know how much a wet cloth cools"},
	Judge: func(r finding.Rule, c *Case) {
		if c.lastGrowth() == nil {
			return
		}
		if c.Process.Site == nil || c.Process.Site.Air == nil {
			c.NotJudged(r, "the site does not say how warm its air is")
			return
		}
		room := c.Process.Site.Air
		for _, s := range c.heldInRooms() {
			if s.At == nil || s.At.Where == vocabulary.PlaceRoom || s.At.Where == vocabulary.PlaceAir || room.Low.SI <= s.At.High.SI {
				continue
			}
			f := r.At(s.At.Place, fmt.Sprintf("the bed is to be held at %s, and the room is never cooler than %s", s.At.Range.Range, room.High.Like(room.Low.SI)))
			f.Related = []finding.Related{{Place: room.Place, Message: "the air of the room"}}
			c.Note(f)
		}
	},
}
