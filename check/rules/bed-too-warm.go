package rules

import (
	"fmt"

	"maltwright/lang/finding"
)

var bedTooWarm = Rule{
	Rule: finding.Rule{Name: "bed-too-warm", Severity: finding.Caution, // a fault where the piece is lost
		Title:  "the germinating bed is to be kept warmer than the grain grows well",
		Why:    "warm grain grows unevenly, loses more of its substance and goes mouldy; too warm, it dies (common practice)",
		Do:     "keep the bed cooler, and give the growth the days it needs",
		Bad:    "hold bed at 19 to 23 °C",
		Good:   "hold bed at 14 to 17 °C",
		Limits: "where the room is held, it only knows that the bed cannot be cooler than the room"},
	Judge: func(r finding.Rule, c *Case) {
		warm := c.growWarm()
		hot := c.Profile.GrowsHot // whatever limit the house has
		for _, s := range c.holds() {
			_, high := celsius(s.At)
			like := s.At.High.Like // in the unit that is written
			what := "the bed is to be kept"
			if ofRoom(s.At) {
				what = "the bed gets no cooler than its room, which is kept"
			}
			switch mid := middle(s.At); {
			case mid > hot+sameWarmth:
				f := r.At(s.At.Place, fmt.Sprintf("%s at %s, and a piece of %[4]s is lost above %[3]s", what, s.At.Range.Range, like(hot+zeroC), c.Profile.Grain.Name))
				f.Severity = finding.Fault
				if hint, ok := fahrenheitMeant(s.At.Place.Text(), high); ok {
					f.Hint = hint
				}
				c.Note(f)
			case high > warm+sameWarmth:
				f := r.At(s.At.Place, fmt.Sprintf("%s at up to %s, and %s is the warmest for %s malt of %s", what, like(high+zeroC), like(warm+zeroC), c.Profile.Malt.Name, c.Profile.Grain.Name))
				grows := c.Profile.Grows
				f.Hint = fmt.Sprintf("%s is usual: keep it there, and give the growth the days it needs", c.Process.Units().DegreesBetween(grows.Low, grows.High))
				c.Note(f)
			}
		}
	},
}
