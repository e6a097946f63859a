package rules

import (
	"fmt"

	"maltwright/lang/finding"
	"maltwright/lang/model"
	"maltwright/lang/source"
	"maltwright/lang/vocabulary"
)

var smokeClean = Rule{
	Rule: finding.Rule{Name: "smoke-clean", Severity: finding.Note,
		Title: "smoke goes through malt that people drink",
		Why: "what is in the wood gets into the smoke and the malt: treated, painted or glued timber and waste give off poisons, resinous wood gives soot and tar; " +
			"and a smouldering fire gives off carbon monoxide, which has no smell (common practice)",
		Do: "burn clean, dry, untreated hardwood or peat and nothing else; smoke out of doors or with a flue, and hang a carbon monoxide alarm; " +
			"the limits of food law for tar and nitrosamines hold for malt and beer for sale" + localCodes,
		Bad:    "make smoked malt\nfired wood by direct\naccept direct-fired because \"beech, out of doors\"\ndry at air-on 50 °C with smoke until moisture at most 20 % allow 3 to 16 h",
		Good:   "dry at air-on 50 °C until moisture at most 20 % allow 3 to 16 h",
		Limits: "it does not know the fuel, nor how smoky the malt gets: phenols are not forecast"},
	Judge: func(r finding.Rule, c *Case) {
		for _, st := range model.Every[*model.Kilning](c.Process) {
			if at, from := smokedAt(st); at.Known() {
				c.Note(r.At(at, fmt.Sprintf("smoke%s goes through the malt", from)))
				return
			}
		}
	},
}

// smokedAt is where a stage says that smoke goes through the malt, and of what fire.
func smokedAt(st *model.Kilning) (at source.Place, from string) {
	for _, s := range st.Steps {
		if model.Smoked(s) {
			return s.Place(), ""
		}
	}
	if k := st.Kiln; k != nil && k.Direct && smokes(k) {
		return k.Flue.Place, " of the " + k.Fired.Text + " fire"
	}
	return source.Place{}, ""
}

// smokes tells whether a kiln is fired with what malt is smoked over.
func smokes(k *model.Kiln) bool {
	return k.Fired.Text == vocabulary.FiredWood || k.Fired.Text == vocabulary.FiredPeat
}
