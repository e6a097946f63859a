package rules

import (
	"slices"

	"maltwright/lang/finding"
	"maltwright/lang/process"
	"maltwright/sim/forecast"
)

var equipmentCannot = Rule{
	Forecast: true,
	Rule: finding.Rule{Name: "equipment-cannot", Severity: finding.Fault,
		Title:  "the kiln cannot do what is asked of it",
		Why:    "what a kiln does not reach, or cannot go as low as, the malt does not get either; and a cubic metre of warmed air carries only so much water away, however long the malt is dried in it (a balance of heat and water)",
		Do:     "ask for what the kiln reaches, dry with less air at a time, or in smaller charges",
		Bad:    "reaches 65 to 220 °C   # a bread oven\ndry at air-on 50 °C until moisture at most 20 % allow 3 to 16 h",
		Good:   "reaches 25 to 110 °C\ndry at air-on 50 °C until moisture at most 20 % allow 3 to 16 h",
		Limits: "A kiln may take an hour to come to its heat untold. Heat that its walls lose is not known, so a heater may be weaker than it says."},
	Judge: func(r finding.Rule, c *Case) {
		for _, t := range slices.Concat(c.troubles(forecast.KilnShort), c.troubles(forecast.AirShort)) {
			f := r.At(t.Place, t.Detail)
			if t.Kind == forecast.AirShort {
				f.Hint = "move more air, dry a smaller charge, wither it first, or give it more hours"
			}
			if st := c.Process.Stage(process.KilnStage); st != nil && st.Kiln != nil {
				f.Related = []finding.Related{{Place: st.Kiln.Place, Message: "the kiln"}}
			}
			c.Note(f)
		}
	},
}
