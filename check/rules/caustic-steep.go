package rules

import (
	"maltwright/lang/finding"
	"maltwright/lang/model"
)

var causticSteep = Rule{
	Rule: finding.Rule{Name: "caustic-steep", Severity: finding.Caution,
		Title:  "lime is put into the steep water",
		Why:    "lime water burns skin and, worse, eyes, which it can blind; slaking quicklime boils and spits; and lime left on the grain makes a harsh malt (common practice)",
		Do:     "use slaked lime made for food, goggles, gloves and long sleeves, with clean water at hand to rinse for a quarter of an hour; keep the lees from children, animals and drains; and give the next soak in plain water" + localCodes,
		Bad:    "soak 6 h in water at 13 °C with lime",
		Good:   "soak 6 h in water at 13 °C",
		Limits: "it knows lime only where a soak says so; how much is put in is not said"},
	Judge: func(r finding.Rule, c *Case) {
		var limed, last *model.Soak
		for _, s := range model.Only[*model.Soak](c.wetSteps()) {
			last = s
			if s.Limed && limed == nil {
				limed = s
			}
		}
		if limed == nil {
			return
		}
		message := "this soak is in lime water, which burns skin and eyes"
		if last.Limed {
			message += ", and no soak in plain water follows to rinse the grain"
		}
		c.Note(r.At(limed.Place(), message))
	},
}
