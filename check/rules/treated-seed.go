package rules

import (
	"maltwright/lang/finding"
	"maltwright/lang/vocabulary"
)

var treatedSeed = Rule{
	Rule: finding.Rule{Name: "treated-seed", Severity: finding.Danger,
		Title: "the lot is seed dressed against fungi or insects",
		Why:   "dressings are poison to eat and do not wash off in the steep; the law allows dressed seed neither as food nor as feed",
		Do:    "never malt it, never feed it, and do not spread its dust; take grain sold for food or malting, and follow local codes for getting rid of the seed",
		Bad:   `treated yes`,
		Good:  `treated no`,
		Limits: "it only knows what the lot says. Dressed seed is mostly dyed, but not always; grain whose sack does not say what it was sold for " +
			"counts as unknown"},
	Judge: func(r finding.Rule, c *Case) {
		if g := c.Process.Grain; g != nil && g.Treated.Text == vocabulary.SaidYes {
			c.Note(r.At(g.Treated.Place, "this lot is dressed seed, and dressed seed is poison"))
		}
	},
}
