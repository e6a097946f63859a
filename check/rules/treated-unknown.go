package rules

import (
	"maltwright/lang/finding"
	"maltwright/lang/vocabulary"
)

var treatedUnknown = Rule{
	Rule: finding.Rule{Name: "treated-unknown", Severity: finding.Caution, // a note where the lot says nothing at all
		Title:  "it is not known whether the grain was dressed as seed",
		Why:    "seed dressings are poison to eat, do not wash off in the steep, and are not always dyed",
		Do:     "ask the seller; if the answer is a clear no, write treated no; otherwise do not malt it",
		Bad:    `treated unknown`,
		Good:   `treated no`,
		Limits: "it takes the maltster's word"},
	Judge: func(r finding.Rule, c *Case) {
		g := c.Process.Grain
		switch {
		case g == nil || g.Kilned(): // dressed seed is not malted by those who sell malt
		case g.Treated.Text == vocabulary.SaidUnknown:
			c.Note(r.At(g.Treated.Place, "whether this lot was dressed as seed is not known"))
		case g.Treated.Text != "":
		case c.Forecast == nil:
			c.NotJudged(r, "the lot does not say, or could not be read in full")
		default:
			f := r.At(g.Place, "the lot does not say whether it was dressed as seed")
			f.Severity = finding.Note
			c.Note(f)
		}
	},
}
