package rules

import (
	"fmt"

	"maltwright/lang/finding"
	"maltwright/lang/model"
	"maltwright/lang/vocabulary"
)

var directFired = Rule{
	Rule: finding.Rule{Name: "direct-fired", Severity: finding.Danger, // a caution with a fan, and for smoked malt over wood
		Title: "the flue gas goes through the malt",
		Why: "a flame gives off carbon monoxide, which kills and cannot be smelt, and nitrogen oxides, which make nitrosamines in drying malt; " +
			"malt above 10 ppb of NDMA may be acted on (FDA action level)",
		Do:     "heat the air through an exchanger with a flue of its own; otherwise lead all of the gas out of doors, hang carbon monoxide alarms, and have the malt tested for NDMA" + localCodes,
		Bad:    "heater 3 kW\nfired wood by direct",
		Good:   "heater 3 kW\nfired wood by indirect",
		Limits: "it knows nothing of the burner: one of low nitrogen oxides, or burnt sulphur, makes fewer nitrosamines"},
	Judge: eachKiln(func(r finding.Rule, c *Case, _ *model.Kilning, k *model.Kiln) {
		if !vocabulary.Burns(k.Fired.Text) || !k.Direct {
			return // flue-not-said speaks where nothing is said
		}
		f := r.At(k.Flue.Place, fmt.Sprintf("the flue gas of the %s fire goes through the malt and, if the draught fails, to where people are", k.Fired.Text))
		if k.Draught.Text == vocabulary.DraughtFan || k.Fired.Text == vocabulary.FiredWood && c.Profile.Malt.Name == vocabulary.MaltSmoked {
			f.Severity = finding.Caution
		}
		c.Note(f)
	}),
}
