package rules

import "maltwright/lang/finding"

var targetOvershot = Rule{
	Forecast: true,
	Rule: finding.Rule{Name: "target-overshot", Severity: finding.Caution,
		Title: "the steep ends above its moisture by the forecast",
		Why:   "grain that is too wet grows wild and hot, loses more of its substance and goes mouldy sooner; only drying takes the water out again",
		Do:    "shorten the last soak, and weigh the drained grain before the end",
		Bad: `steep in "base tub" to moisture 42 to 46 % {
  soak 6 h in water at 13 °C
  rest 10 h in air at 14 °C
  soak 7 h in water at 13 °C
  rest 9 h in air at 14 °C
  soak 9 h in water at 16 °C
  rest 8 h in air at 14 °C
  soak 9 h in water at 16 °C
}`,
		Good: usualSteep,
		Limits: "the forecast of a steep is good to about one point, and two at worst, so a miss of less than half a point is not reported; the film of water on the kernels is counted, " +
			"and is gone some hours later"},
	Judge: func(r finding.Rule, c *Case) { judgeTarget(r, c, true) },
}
