package rules

import (
	"fmt"

	"maltwright/lang/finding"
)

var endMoistureVeryLow = Rule{
	Forecast: true,
	Rule: finding.Rule{Name: "end-moisture-very-low", Severity: finding.Caution,
		Title:  "the malt leaves the kiln drier than any use needs",
		Why:    "the last per cent costs the most heat and hours, and takes colour, enzymes and weight; dry kernels shatter in the mill (common practice)",
		Do:     "end the cure at a moisture, not by hours alone: until moisture at most 4 %",
		Bad:    "cure at air-on 95 °C for 24 h",
		Good:   "cure at air-on 85 °C for 4 h",
		Limits: "The forecast of the last per cent is good to about half a per cent."},
	Judge: func(r finding.Rule, c *Case) {
		w := c.finalMoisture()
		if least := c.Profile.Malt.EndLeast; w < least-justDrier {
			c.Note(r.At(c.lastDried(), fmt.Sprintf("the malt is dried to %s moisture by the forecast, and %s malt is dry enough at %s", Percent(w), c.Profile.Malt.Name, Percent(least))))
		}
	},
}

// justDrier keeps malt quiet that was dried to its limit and stopped there.
const justDrier = 0.0005

// finalMoisture is that of the finished malt; 1 where there is none.
func (c *Case) finalMoisture() float64 {
	if c.kilned() == nil {
		return 1
	}
	return c.Forecast.Totals.FinalMoisture
}
