package rules

import (
	"maltwright/lang/finding"
)

var gateNotReached = Rule{
	Forecast: true,
	Rule: finding.Rule{Name: "gate-not-reached", Severity: finding.Fault,
		Title:  "the forecast does not meet a gate in its time",
		Why:    "a gate guards what comes after it: malt that is heated before it is dry enough loses its enzymes, and malt that is stored too damp goes mouldy",
		Do:     "give the step before it more time, more air or more warmth",
		Bad:    "cure at air-on 70 °C for 1 h\ngate moisture at most 4 %",
		Good:   "cure at air-on 82 °C for 5 h\ngate moisture at most 5 %",
		Limits: "the forecast takes the middle of every band, and a kiln that dries as usual"},
	Judge: func(r finding.Rule, c *Case) { judgeGates(r, c, true) },
}
