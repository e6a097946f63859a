package rules

import "maltwright/lang/finding"

var gateNotReached = Rule{
	Forecast: true,
	Rule: finding.Rule{Name: "gate-not-reached", Severity: finding.Fault,
		Title:  "a gate is not met in its time by the forecast",
		Why:    "a gate guards what comes after it: malt that is heated before it is dry enough loses its enzymes, and malt that is stored too damp goes mouldy",
		Do:     "give the step before it more time, more air or more warmth",
		Bad:    "dry at air-on 50 °C for 4 h\ngate moisture at most 10 % allow 0 to 2 h",
		Good:   "dry at air-on 50 °C for 14 h\ngate moisture at most 10 % allow 0 to 2 h",
		Limits: "the forecast takes the middle of every band, and a kiln that dries as usual" + assumedOnly},
	Judge: func(r finding.Rule, c *Case) { judgeGates(r, c, true) },
}
