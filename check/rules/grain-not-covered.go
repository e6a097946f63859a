package rules

import (
	"fmt"

	"maltwright/lang/finding"
	"maltwright/lang/model"
	"maltwright/lang/quantity"
	"maltwright/lang/source"
	"maltwright/sim/forecast"
)

var grainNotCovered = Rule{
	Forecast: true,
	Rule: finding.Rule{Name: "grain-not-covered", Severity: finding.Fault,
		Title: "a soak has too little water to cover the grain",
		Why:   "the bed swells by two fifths as it drinks; grain above the water stays dry and grows late (common practice)",
		Do:    "pour more water, or steep less at a time",
		Bad: `steep in "base tub" to moisture 42 to 46 % {
  soak 6 h in 3 l water at 13 °C
  rest 10 h in air at 14 °C
  soak 7 h in water at 13 °C
  rest 9 h in air at 14 °C
  soak 6 h in water at 13 °C
}`,
		Good: `steep in "base tub" to moisture 42 to 46 % {
  soak 6 h in 6 l water at 13 °C
  rest 10 h in air at 14 °C
  soak 7 h in water at 13 °C
  rest 9 h in air at 14 °C
  soak 6 h in water at 13 °C
}`,
		Limits: "it goes by the bulk of the grain as it settles when poured; a soak without an amount of water, or with overflow, counts as covered"},
	Judge: func(r finding.Rule, c *Case) {
		told := map[source.Place]bool{}
		for _, t := range forecast.Troubles[forecast.NotCovered](c.Forecast) {
			if told[t.Place] {
				continue
			}
			told[t.Place] = true
			need := t.Need
			if t.Water.Dimension == quantity.Mass {
				need *= 1000 // kg
			}
			f := r.At(t.Water.Place, fmt.Sprintf("soak %d has %s of water, and %s is needed to cover the swollen grain", t.Soak, t.Water, t.Water.Like(need)))
			if st := model.First[*model.Steep](c.Process); st != nil && st.Vessel != nil {
				f.Related = []finding.Related{{Place: st.Vessel.Place, Message: "the vessel"}}
			}
			c.Note(f)
		}
	},
}
