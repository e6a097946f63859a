package rules

import (
	"maltwright/lang/finding"
	"maltwright/lang/vocabulary"
)

var ergotFound = Rule{
	Rule: finding.Rule{Name: "ergot-found", Severity: finding.Danger,
		Title:  "ergot was found in the grain",
		Why:    "the black horns of ergot hold poisons that malting, mashing and baking leave in it; a few in a kilogram are too many",
		Do:     "do not malt this grain: have it cleaned by a mill with a colour sorter and tested, or take another lot; keep it from animals too, and follow local codes",
		Bad:    `ergot found`,
		Good:   `ergot none`,
		Limits: "broken horns and their dust are not seen by eye"},
	Judge: func(r finding.Rule, c *Case) {
		if g := c.Process.Grain; g != nil && g.Ergot.Text == vocabulary.SaidFound {
			c.Note(r.At(g.Ergot.Place, "ergot was found in this lot, and ergot is poison"))
		}
	},
}
