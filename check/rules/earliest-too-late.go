package rules

import (
	"fmt"

	"maltwright/lang/finding"
	"maltwright/lang/model"
)

var earliestTooLate = Rule{
	Forecast: true,
	Rule: finding.Rule{Name: "earliest-too-late", Severity: finding.Caution,
		Title:  "the earliest time of a step comes long after its condition is met",
		Why:    "the earliest time keeps a false reading from ending a step; where it comes hours after the condition is met, the clock and not the grain ends the step, and the malt goes on drying or heating (common practice)",
		Do:     "set the earliest time a little before the forecast time",
		Bad:    `dry at air-on 50 °C until moisture at most 20 % allow 30 to 40 h`,
		Good:   `dry at air-on 50 °C until moisture at most 20 % allow 2 to 16 h`,
		Limits: "It allows a wait of up to ten hours, or of one and a half times what the step needs. It does not judge growth: too-long-to-modify does."},
	Judge: func(r finding.Rule, c *Case) {
		for i := range c.Forecast.Gates {
			g := &c.Forecast.Gates[i]
			if !g.Met || g.Hold || g.Stage == model.GerminateStage || g.First < 60 || g.Waited-g.First < longBehind || g.Waited < 2.5*g.First {
				continue
			}
			place := g.Place
			if allow := c.guardOf(g.Place.Start); allow != nil {
				place = allow.Place
			}
			if !c.told(place) {
				c.Note(r.At(place, fmt.Sprintf("%s is met after %s, and the earliest time of the step is %s", g.Text, Hours(g.First), Hours(g.Waited))))
			}
		}
	},
}

// longBehind is how long a step may go on behind what it waits for, s.
const longBehind = 10 * hour

// guardOf gives the guard of the condition that begins at an offset, or nil.
func (c *Case) guardOf(start int) *model.Guard {
	for _, st := range c.Process.Stages {
		ends := []model.Ending{st.Ends()}
		for _, s := range model.EveryStep(model.StepsOf(st)) {
			ends = append(ends, s.Ends())
		}
		for _, end := range ends {
			if end.Until != nil && end.Until.Place.Start == start {
				return end.Allow
			}
		}
	}
	return nil
}
