package rules

import (
	"fmt"

	"maltwright/lang/finding"
	"maltwright/sim/forecast"
)

var targetMissed = Rule{
	Forecast: true,
	Rule: finding.Rule{Name: "target-missed", Severity: finding.Caution,
		Title: "the forecast leaves the steep outside the moisture that it aims at",
		Why:   "too dry and the corn grows unevenly, too wet and it grows too fast and may drown",
		Do:    "lengthen or shorten the last soak, and weigh the drained grain before the end"},
	Judge: func(r finding.Rule, c *Case) {
		for _, t := range c.troubles(forecast.TargetMissed) {
			f := r.At(t.Place, fmt.Sprintf("the steep ends at %.1f %% moisture, and %s is wanted", 100*t.Value, t.Place.Text()))
			f.Hint = t.Detail + "; weigh the drained grain to be certain"
			c.Note(f)
		}
	},
}
