package rules

import (
	"fmt"

	"maltwright/lang/finding"
	"maltwright/lang/model"
)

var roastFire = Rule{
	Rule: finding.Rule{Name: "roast-fire", Severity: finding.Caution, // a note where it is no hotter than 180 °C
		Title: "malt is roasted, which smokes and can catch fire",
		Why: "from about 200 °C on, malt, its husks and its dust catch fire, and the roast goes on heating itself; well below that it gives off acrid smoke " +
			"and carbon monoxide, which has no smell (common practice of roasters)",
		Do: "roast out of doors, or under a hood that draws outdoors, and hang a carbon monoxide alarm; sieve rootlets and dust off first; stay beside it from the first minute to the last and never leave it; " +
			"keep an extinguisher in reach, and know how to stop heat and air at once: if it catches, shut both and do not open it" + localCodes,
		Bad: `kiln "base kiln" { area 0.5 m2; draught fan; reaches 25 to 240 °C; heater 3 kW; fired electric; accept heater-on-extension because "an example" }
make black malt
roast at malt 215 °C for 45 min
cool to malt 30 °C with water 0.3 l`,
		Good:   "cure at air-on 82 °C for 5 h",
		Limits: "it goes by what the kiln is set to, and says so where the forecast stays below: kernels next to the heat are hotter than a thermometer shows. Up to 140 °C a step counts as a roast only if the process calls it roast"},
	Judge: eachKilning(func(r finding.Rule, c *Case, st *model.Kilning, _ *model.Kiln) {
		hot, ok := hottestRoast(st)
		switch at := hot.top.SI - zeroC; {
		case !ok || at <= roastFrom:
		case at < smokesAt-sameHeat:
			f := hot.at(r, fmt.Sprintf("malt that is roasted at %s smokes", c.roastedAt(st, hot)))
			f.Severity = finding.Note
			c.Note(f)
		default:
			c.Note(hot.at(r, fmt.Sprintf("malt is roasted at %s: it smokes, and from about %s on it catches fire", c.roastedAt(st, hot), hot.top.Like(catchesAt+zeroC))))
		}
	}),
}
