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
		Title: "the forecast uses figures learnt from this house",
		Why:   "the forecast holds for this house, its lots and its kilns, and differs from that of the plain model",
		Do:    "run learn again when the house or the way of working changes",
		Bad:   `house "Loft" { growth 1.06 error 0.04 }`,
		Good:  "", // there is nothing to put right
		Limits: "it shows which figures were used, not whether they are right. Figures of a lot or a kiln that the process does not use change nothing, " +
			"and neither does that of the thermometer"},
	Judge: func(r finding.Rule, c *Case) {
		used := make([]string, len(c.Forecast.Learnt))
		for i, u := range c.Forecast.Learnt {
			used[i] = tell.Learnt(u) + " " + u.Factor.Value.String()
		}
		if l := c.Process.Learnt(); l != nil && len(used) > 0 {
			c.Note(r.At(l.Place, fmt.Sprintf("the forecast uses figures learnt from this house: %s, where the plain model has 1", strings.Join(used, ", "))))
		}
	},
}
