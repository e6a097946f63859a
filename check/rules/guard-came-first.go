package rules

import "maltwright/lang/finding"

var guardCameFirst = Rule{
	Forecast: true,
	Rule: finding.Rule{Name: "guard-came-first", Severity: finding.Fault,
		Title:  "the latest time of a step comes before its condition is met",
		Why:    "the step ends at its latest time, and the next begins with grain that is not ready for it",
		Do:     "allow more time, or change the step so that its condition is met sooner",
		Bad:    "until acrospire at least 3/4\nallow 1 to 2 days",
		Good:   "until acrospire at least 3/4\nallow 4 to 7 days",
		Limits: "the forecast takes the middle of every band, and a lot that grows as usual" + assumedOnly},
	Judge: func(r finding.Rule, c *Case) { judgeGates(r, c, false) },
}
