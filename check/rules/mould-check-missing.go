package rules

import (
	"fmt"

	"maltwright/lang/finding"
	"maltwright/lang/vocabulary"
)

var mouldCheckMissing = Rule{
	Rule: finding.Rule{Name: "mould-check-missing", Severity: finding.Note,
		Title: "a grain that often carries mould was not checked for it",
		Why:   "wheat, rye, maize and the grains of warm countries often carry moulds whose poisons, DON among them, outlast malting (common practice)",
		Do:    "look for pink, white and shrunken kernels and smell the lot, then write mould none or mould found; nobody can see DON, so have a laboratory test food for sale",
		Bad:   "species wheat",
		Good:  "species wheat\nmould none",
		Limits: "grain that looks sound can hold DON: mould none says that the grain was checked, not that it is clean. Barley and oats are " +
			"not judged, though they carry mould in a wet year too"},
	Judge: func(r finding.Rule, c *Case) {
		g := c.Process.Grain
		switch {
		case g == nil || !c.Profile.MouldCheck:
		case g.Mould.Text == vocabulary.SaidUnknown:
			c.Note(r.At(g.Mould.Place, fmt.Sprintf("whether there is mould on this %s is not known", c.Profile.Grain.Name)))
		case g.Mould.Text != "":
		case c.Forecast == nil:
			c.NotJudged(r, "the lot does not say, or could not be read in full")
		default:
			c.Note(r.At(g.Place, fmt.Sprintf("the lot is %s, and does not say whether it was checked for mould", c.Profile.Grain.Name)))
		}
	},
}
