package rules

import (
	"fmt"

	"maltwright/lang/finding"
)

var bedTooCold = Rule{
	Rule: finding.Rule{Name: "bed-too-cold", Severity: finding.Caution,
		Title:  "the germinating bed is to be kept colder than the grain grows",
		Why:    "cold grain hardly grows: it takes twice as many days, and the kernels grow unevenly (common practice)",
		Do:     "keep the bed warmer",
		Bad:    "hold bed at 5 to 8 °C",
		Good:   "hold bed at 12 to 16 °C",
		Limits: "it does not judge a room that is held: the growing grain warms its bed"},
	Judge: func(r finding.Rule, c *Case) {
		cold, grows := c.Profile.GrowsCold, c.Profile.Grows
		for _, s := range c.holds() {
			switch mid := middle(s.At); {
			case mid >= cold-sameWarmth:
			case ofRoom(s.At):
				c.NotJudged(r, fmt.Sprintf("the process holds the %s at %s, not the bed", s.At.Where, s.At.Range.Range))
			default:
				f := r.At(s.At.Place, fmt.Sprintf("the bed is to be kept at %s, and %[3]s hardly grows below %[2]s", s.At.Range.Range, s.At.Low.Like(cold+zeroC), c.Profile.Grain.Name))
				f.Hint = fmt.Sprintf("%s is usual", c.Process.Units().DegreesBetween(grows.Low, grows.High))
				c.Note(f)
			}
		}
	},
}
