package rules

import (
	"fmt"
	"strings"

	"maltwright/check/tell"
	"maltwright/lang/finding"
)

var learntFigures = Rule{
	Forecast: true,
	Rule: finding.Rule{Name: "learnt-figures", Severity: finding.Note,
		Title: "the forecast goes by figures that the house has learnt",
		Why:   "what the forecast finds is found for this house, its lots and its kilns, and otherwise than by the model as it stands",
		Do:    "learn them anew when something changes in the house or in the way of working",
		Bad:   `house "Loft" { growth 1.06 error 0.04 }`,
		Good:  "", // there is nothing to put right
		Limits: "it tells what was used, not whether it is right. What was learnt of a lot or a kiln that the process does not use changes nothing, " +
			"and neither does the thermometer"},
	Judge: func(r finding.Rule, c *Case) {
		used := make([]string, len(c.Forecast.Learnt))
		for i, u := range c.Forecast.Learnt {
			used[i] = tell.Learnt(u) + " " + u.Factor.Value.String()
		}
		if l := c.Process.Learnt(); l != nil && len(used) > 0 {
			c.Note(r.At(l.Place, fmt.Sprintf("the forecast goes by what this house has learnt: %s, where the model has 1", strings.Join(used, ", "))))
		}
	},
}
