package rules

import (
	"fmt"
	"slices"

	"maltwright/lang/finding"
	"maltwright/lang/model"
	"maltwright/lang/vocabulary"
)

var directFired = Rule{
	Rule: finding.Rule{Name: "direct-fired", Severity: finding.Danger, // a caution with a fan, for smoked malt over wood or peat, and for distilling malt over peat
		Title: "the flue gas goes through the malt",
		Why: "a flame gives off carbon monoxide, which kills and cannot be smelt, and nitrogen oxides, which make nitrosamines (NDMA) in drying malt; " +
			"malt above 10 ppb of NDMA may be acted on (FDA action level)",
		Do: "heat the air through an exchanger with a flue of its own, which is what kilns have come to; otherwise lead all of the gas out of doors and hang carbon monoxide alarms; " +
			"a burner of low nitrogen oxides, or sulphur burnt in the first hours of drying, is the usual practice against NDMA. Have malt for sale tested: the limits of food law hold" + localCodes,
		Bad:    "heater 3 kW\nfired wood by direct",
		Good:   "heater 3 kW\nfired wood by indirect",
		Limits: "it knows nothing of the burner, and forecasts no NDMA; over peat and wood it is the smoke that is wanted, and all the rest comes with it"},
	Judge: eachKiln(func(r finding.Rule, c *Case, _ *model.Kilning, k *model.Kiln) {
		if !vocabulary.Burns(k.Fired.Text) || !k.Direct {
			return // flue-not-said speaks where nothing is said
		}
		f := r.At(k.Flue.Place, fmt.Sprintf("the flue gas of the %s fire goes through the malt and, if the draught fails, to where people are", k.Fired.Text))
		if k.Draught.Text == vocabulary.DraughtFan || slices.Contains(c.Profile.Malt.Over, k.Fired.Text) {
			f.Severity = finding.Caution
		}
		c.Note(f)
	}),
}
