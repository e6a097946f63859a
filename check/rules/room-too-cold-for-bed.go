package rules

import (
	"fmt"

	"maltwright/lang/finding"
)

var roomTooColdForBed = Rule{
	Rule: finding.Rule{Name: "room-too-cold-for-bed", Severity: finding.Caution,
		Title:  "the bed is to be held far warmer than the room ever is",
		Why:    "growing grain warms itself, but in its first days hardly, and a piece that is thin or turned loses its warmth at once: in a frozen room it stops growing, and only a heated room holds it (common practice)",
		Do:     "heat the room and say so: hold room at 14 to 16 °C, or the air of the site as it is then; or wait for a warmer season",
		Bad:    "air -8 to -2 °C",
		Good:   "air 8 to 15 °C",
		Limits: "it does not know how deep the piece lies nor how it is covered, and lets it be 8 °C warmer than its room"},
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
			if s.At == nil || ofRoom(s.At) || room.High.SI+warmsItself >= s.At.Low.SI {
				continue
			}
			f := r.At(s.At.Place, fmt.Sprintf("the bed is to be held at %s, and the room is never warmer than %s", s.At.Range.Range, room.High))
			f.Related = []finding.Related{{Place: room.Place, Message: "the air of the room"}}
			c.Note(f)
		}
	},
}

// warmsItself is by how much a piece may be warmer than its room by its own heat, K
// (common practice: 3 to 8 K from one turn to the next).
const warmsItself = 8.0
