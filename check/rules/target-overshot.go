package rules

import (
	"maltwright/lang/finding"
)

var targetOvershot = Rule{
	Forecast: true,
	Rule: finding.Rule{Name: "target-overshot", Severity: finding.Caution,
		Title: "the forecast takes the steep above the moisture that it aims at",
		Why:   "grain that is too wet grows wild and hot, loses more of its substance and goes mouldy sooner; water cannot be taken back but by drying",
		Do:    "shorten the last soak, and weigh the drained grain before the end",
		Bad:   "steep in \"blue tub\" to moisture 43 to 45 % {\n  soak 9 h in water at 15 °C\n  rest 9 h in air at 15 °C\n  soak 9 h in water at 15 °C\n  rest 9 h in air at 15 °C\n  soak 9 h in water at 15 °C\n}",
		Good:  "steep in \"blue tub\" to moisture 43 to 45 % {\n  soak 8 h in water at 15 °C\n  rest 10 h in air at 15 °C\n  soak 8 h in water at 15 °C\n  rest 7 h in air at 15 °C\n  soak 3 h in water at 15 °C\n}",
		Limits: "the forecast of a steep is good to about a point, and two at the worst, so a miss of less than half a point is left alone; what hangs on the corns as a film is counted, " +
			"and is gone some hours later"},
	Judge: func(r finding.Rule, c *Case) { judgeTarget(r, c, true) },
}
