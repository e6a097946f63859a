package rules

import (
	"maltwright/lang/finding"
	"maltwright/sim/forecast"
)

var hotWhileWet = Rule{
	Forecast: true,
	Rule: finding.Rule{Name: "hot-while-wet", Severity: finding.Fault, // a caution where strong air keeps the malt cool
		Title: "the malt itself gets hot while it is still wet",
		Why:   "wet enzymes die at temperatures that dry ones bear: about 50 °C above 25 % moisture, 65 °C above 12 %, 80 °C above 10 % (common practice)",
		Do:    "dry it further before it is heated: put a gate in front, or lengthen the step before"},
	Judge: func(r finding.Rule, c *Case) {
		if !c.Profile.Malt.NeedsEnzymes {
			return
		}
		for _, t := range c.troubles(forecast.HotWet) {
			f := r.At(t.Place, t.Detail)
			if t.ByAir {
				f.Severity = finding.Caution
			}
			c.Note(f)
		}
	},
}
