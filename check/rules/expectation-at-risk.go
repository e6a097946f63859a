package rules

import (
	"fmt"

	"maltwright/lang/finding"
)

var expectationAtRisk = Rule{
	Forecast: true,
	Rule: finding.Rule{Name: "expectation-at-risk", Severity: finding.Caution,
		Title:  "a promise holds in the middle of the bands, but not for every likely lot, house and weather",
		Why:    "lots differ in how fast they drink and grow, and houses in how they dry: of many likely batches more than one in five breaks it",
		Do:     "see with forecast --spread what drives it; narrow that, or promise less",
		Bad:    "expect final moisture 4.4 to 4.8 %",
		Good:   "expect final moisture 3 to 5 %",
		Limits: "it is asked with check --odds only; how far lots and houses differ is calibrated, not measured in this house"},
	Judge: func(r finding.Rule, c *Case) {
		switch {
		case len(c.Forecast.Expects) == 0:
		case c.Odds == nil:
			c.NotJudged(r, "the odds of its promises were not asked for, with --odds")
		case c.Forecast.BrokenOff():
			c.NotJudged(r, "the forecast ends before its promises can be judged")
		default:
			c.atRisk(r)
		}
	},
}

// mostBroken is the share of batches that may break a promise.
const mostBroken = 0.2

func (c *Case) atRisk(r finding.Rule) {
	for _, e := range c.Forecast.Expects {
		text := e.Test.Place.Text()
		for _, o := range c.Odds {
			if o.Text == text && e.Holds && o.Holds < 1-mostBroken {
				c.Note(r.At(e.Test.Place, fmt.Sprintf("%s is promised, and of 100 likely batches %.0f break it", text, 100*(1-o.Holds))))
			}
		}
	}
}
