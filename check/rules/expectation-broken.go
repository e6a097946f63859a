package rules

import (
	"fmt"

	"maltwright/lang/finding"
)

var expectationBroken = Rule{
	Forecast: true,
	Rule: finding.Rule{Name: "expectation-broken", Severity: finding.Fault,
		Title: "the forecast does not keep a promise of the process",
		Why:   "the process says so itself",
		Do:    "change the process until it keeps the promise, or promise what it gives"},
	Judge: func(r finding.Rule, c *Case) {
		for _, e := range c.Forecast.Expects {
			if e.Holds {
				continue
			}
			f := r.At(e.Test.Place, fmt.Sprintf("%s is promised, and the forecast gives %s", e.Test.Place.Text(), e.Test.Bound.Range.Low.Like(e.Value)))
			c.Note(f)
		}
	},
}
