package rules

import (
	"fmt"

	"maltwright/lang/finding"
)

var expectationAtRisk = Rule{
	Forecast: true,
	Rule: finding.Rule{Name: "expectation-at-risk", Severity: finding.Caution,
		Title:  "a promise is kept in the middle of the bands, but not for every likely lot, house and weather",
		Why:    "lots differ in how fast they drink and grow, and houses in how they dry: more than one in five likely batches breaks the promise",
		Do:     "see with forecast --spread what drives it, and narrow that; or promise less",
		Bad:    "expect final moisture 4.4 to 4.8 %",
		Good:   "expect final moisture 3 to 5 %",
		Limits: "it runs only with check --odds; how far lots and houses differ is calibrated, not measured in this house"},
	Judge: func(r finding.Rule, c *Case) {
		switch {
		case len(c.Forecast.Expects) == 0:
		case c.Odds == nil:
			c.NotJudged(r, "it needs --odds, which was not given")
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
				c.Note(r.At(e.Test.Place, fmt.Sprintf("the process promises %s, and %.0f of 100 likely batches break it", text, 100*(1-o.Holds))))
			}
		}
	}
}
