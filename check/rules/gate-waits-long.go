package rules

import (
	"fmt"

	"maltwright/lang/finding"
	"maltwright/lang/model"
)

var gateWaitsLong = Rule{
	Forecast: true,
	Rule: finding.Rule{Name: "gate-waits-long", Severity: finding.Caution,
		Title: "a gate waits for hours in the heat of the step before it",
		Why:   "a gate only makes sure: its condition should be met when the gate begins. If it waits long, a step before it is missing or too short, and the malt is dried at a setting that was not chosen for it (common practice)",
		Do:    "write the step that meets the condition, or write how long the gate may wait: gate moisture at most 10 % allow 0 to 6 h",
		Bad: `dry at air-on 50 °C until moisture at most 34 % allow 1 to 16 h
gate moisture at most 10 %
cure at air-on 82 °C for 5 h`,
		Good: `dry at air-on 50 °C until moisture at most 10 % allow 3 to 24 h
gate moisture at most 10 %
cure at air-on 82 °C for 5 h`,
		Limits: "A wait that allow gives the gate is meant. A wait of up to four hours is not reported: forecasts of drying are often that far out. end-moisture-high and the rules of the cure judge a gate after all heat."},
	Judge: func(r finding.Rule, c *Case) {
		for i := range c.Forecast.Gates {
			g := &c.Forecast.Gates[i]
			if g.Stage != model.KilnStage || c.has("gate-order") || !g.Hold || !g.Met || g.Waited <= longWait || c.told(g.Place) {
				continue
			}
			if c.waitsUnasked(g.Place.Start) {
				c.Note(r.At(g.Place, fmt.Sprintf("the gate waits for %s for %s, in the heat of the step before", g.Text, Hours(g.Waited))))
			}
		}
	},
}

// longWait is how long a gate may wait of which nothing is said, s.
const longWait = 4 * hour

// waitsUnasked tells whether a gate of the kiln, by the offset of its condition, lets a
// hotter step wait, and says nothing of how long.
func (c *Case) waitsUnasked(start int) bool {
	for i, s := range c.steps(model.KilnStage) {
		if model.Asked(s) != nil && model.Asked(s).Place.Start == start {
			return s.Ends().Allow == nil && c.heatedAfter(i)
		}
	}
	return false
}
