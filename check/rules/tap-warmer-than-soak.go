package rules

import (
	"fmt"

	"maltwright/lang/finding"
	"maltwright/lang/model"
)

var tapWarmerThanSoak = Rule{
	Rule: finding.Rule{Name: "tap-warmer-than-soak", Severity: finding.Caution,
		Title:  "a soak asks for cooler water than the tap gives",
		Why:    "a kettle warms water, but only ice, a chiller or a night out of doors cools it; in warmer water the grain drinks and breathes faster, and every soak is too long (common practice)",
		Do:     "steep at the temperature of the tap and shorten the soaks, or cool the water and accept this with the reason",
		Bad:    "water 16 to 18 °C\nsoak 6 h in water at 12 °C",
		Good:   "water 10 to 12 °C\nsoak 6 h in water at 12 °C",
		Limits: "it goes by the coolest water of the site; it does not follow water that stands overnight in a cold room"},
	Judge: func(r finding.Rule, c *Case) {
		site := c.Process.Site
		if site == nil || site.Water == nil {
			c.NotJudged(r, "the site does not say how warm its water is")
			return
		}
		tap := site.Water
		if tap.High.SI-zeroC > warmestTap {
			return // unusual-figure speaks of it, and freezing-water of a soak near freezing
		}
		for _, s := range model.Only[*model.Soak](c.wetSteps()) {
			if s.At == nil || s.At.High.SI-zeroC < nearIce || tap.Low.SI <= s.At.High.SI+sameWater {
				continue
			}
			f := r.At(s.At.Place, fmt.Sprintf("the soak needs water at %s, and the tap gives %s", s.At.Range.Range, tap.Range))
			f.Related = []finding.Related{{Place: tap.Place, Message: "the water of the site"}}
			c.Note(f)
			return // one tap, one finding
		}
	},
}

const (
	warmestTap = 32.0 // °C: warmer, it is a slip of the pen
	sameWater  = 2.5  // K, by which a tub cools in a cool room
)
