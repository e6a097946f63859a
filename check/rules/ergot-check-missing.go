package rules

import (
	"fmt"

	"maltwright/lang/finding"
	"maltwright/lang/vocabulary"
)

var ergotCheckMissing = Rule{
	Rule: finding.Rule{Name: "ergot-check-missing", Severity: finding.Caution,
		Title:  "rye or triticale was not checked for ergot",
		Why:    "ergot grows above all on rye and triticale, and its poisons outlast malting (common practice)",
		Do:     "spread a kilogram on a white cloth and look for black horns, some longer than the kernel; then write ergot none or ergot found",
		Bad:    "species rye\nmould none",
		Good:   "species rye\nmould none\nergot none\nfloor \"base tray\" { area 0.25 m2 }",
		Limits: "barley, wheat and oats carry ergot too, but seldom, and are not judged"},
	Judge: func(r finding.Rule, c *Case) {
		g := c.Process.Grain
		switch {
		case g == nil || !c.Profile.ErgotRisk:
		case g.Ergot.Text == vocabulary.SaidUnknown:
			c.Note(r.At(g.Ergot.Place, fmt.Sprintf("whether there is ergot in this %s is not known", c.Profile.Grain.Name)))
		case g.Ergot.Text != "":
		case c.Forecast == nil:
			c.NotJudged(r, "the lot does not say, or could not be read in full")
		default:
			c.Note(r.At(g.Place, fmt.Sprintf("the lot is %s, and does not say whether it was checked for ergot", c.Profile.Grain.Name)))
		}
	},
}
