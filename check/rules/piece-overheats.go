package rules

import (
	"fmt"

	"maltwright/lang/finding"
	"maltwright/sim/forecast"
)

var pieceOverheats = Rule{
	Forecast: true,
	Rule: finding.Rule{Name: "piece-overheats", Severity: finding.Caution,
		Title: "the piece gets too warm between turns",
		Why:   "the growing grain heats itself; warm grain grows unevenly, loses more of its substance and goes mouldy",
		Do:    "turn more often, spread it thinner, or keep the room cooler"},
	Judge: func(r finding.Rule, c *Case) {
		most := c.Limit("bed-temperature", c.Profile.GrowsWarm+zeroC) - zeroC
		for _, t := range c.troubles(forecast.BedWarm) {
			if t.Value > most+0.05 {
				f := r.At(t.Place, fmt.Sprintf("between turns the piece gets %.1f °C warm %s, and %.1f °C is the most", t.Value, t.Detail, most))
				c.Note(f)
			}
		}
	},
}
