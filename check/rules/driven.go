package rules

import (
	"fmt"

	"maltwright/sim/forecast"
)

// toDrive is what to do about air that is not driven through the malt.
func (c *Case) toDrive(d *forecast.Driven) string {
	units, fan := c.Process.Units(), "a fan"
	if d.By == forecast.ByFan {
		fan = "one"
	}
	hint := fmt.Sprintf("give the kiln %s that drives %s against %s, or dry a smaller charge", fan, units.AboutAirflow(d.Needs), units.Pressure(d.Takes))
	if d.Over != "" {
		hint = fmt.Sprintf("give the upper floor %q more area, so that its malt lies shallower; or %s", d.Over, hint)
	}
	if d.Area > 0 {
		hint = fmt.Sprintf("spread it on %s and more, where so much air passes; or %s", units.AboutArea(d.Area), hint)
	}
	return hint
}
