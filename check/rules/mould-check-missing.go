package rules

import (
	"fmt"

	"maltwright/lang/finding"
	"maltwright/lang/vocabulary"
)

var mouldCheckMissing = Rule{
	Rule: finding.Rule{Name: "mould-check-missing", Severity: finding.Note,
		Title: "a grain that often carries mould was not looked through for it",
		Why:   "wheat, rye, maize and the grains of warm countries often carry moulds whose poisons, DON among them, outlast malting (common practice)",
		Do:    "look for pink, white and shrunken kernels and smell the lot, then write mould none or mould found; DON is cleared by no look at the kernels, so for food to sell have a laboratory test",
		Bad:   "species wheat",
		Good:  "species wheat\nmould none",
		Limits: "grain that looks sound can hold DON: mould none says that it was looked at, not that it is clean. Barley and oats are " +
			"not asked for, though a wet year gives it to them too"},
	Judge: func(r finding.Rule, c *Case) {
		g := c.Process.Grain
		switch {
		case g == nil || !c.Profile.MouldCheck:
		case g.Mould.Text == vocabulary.SaidUnknown:
			c.Note(r.At(g.Mould.Place, fmt.Sprintf("whether there is mould on this %s is not known", c.Profile.Grain.Name)))
		case g.Mould.Text != "":
		case c.Forecast == nil:
			c.NotJudged(r, "the lot says nothing of it, or has not been read in full")
		default:
			c.Note(r.At(g.Place, fmt.Sprintf("the lot is %s and does not say whether it was looked through for mould", c.Profile.Grain.Name)))
		}
	},
}
