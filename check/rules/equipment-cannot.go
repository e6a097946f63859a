package rules

import (
	"maltwright/lang/finding"
	"maltwright/lang/process"
	"maltwright/sim/forecast"
)

var equipmentCannot = Rule{
	Forecast: true,
	Rule: finding.Rule{Name: "equipment-cannot", Severity: finding.Fault,
		Title: "the kiln cannot give the temperature that is asked of it",
		Why:   "what it cannot reach, or cannot go as low as, the malt does not get either",
		Do:    "ask for what the kiln reaches, dry with less air at a time, or in smaller charges"},
	Judge: func(r finding.Rule, c *Case) {
		for _, t := range c.troubles(forecast.KilnShort) {
			f := r.At(t.Place, t.Detail)
			if st := c.Process.Stage(process.KilnStage); st != nil && st.Kiln != nil {
				f.Related = []finding.Related{{Place: st.Kiln.Place, Message: "the kiln"}}
			}
			c.Note(f)
		}
	},
}
