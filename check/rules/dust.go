package rules

import (
	"fmt"

	"maltwright/lang/finding"
	"maltwright/lang/model"
)

var dust = Rule{
	Rule: finding.Rule{Name: "dust", Severity: finding.Note,
		Title: "much malt is deculmed, and its dust hurts the lungs and burns",
		Why: "rootlets and husks rub to a fine dust: breathed for hours it makes people ill for good, and a cloud of it in a closed room " +
			"goes off like powder at a spark (common practice of grain handling)",
		Do:     "work out of doors or with the dust drawn off, wear a mask for fine dust (P2 or N95), keep flames and sparks away, and sweep wet" + localCodes,
		Bad:    `from 60 kg of "base lot"`,
		Good:   `from 4 kg of "base lot"`,
		Limits: "it speaks of batches of more than 25 kg only, though somebody who coughs should wear a mask for less"},
	Judge: func(r finding.Rule, c *Case) {
		st := model.First[*model.Deculming](c.Process)
		switch {
		case st == nil:
			return
		case c.Process.Charge == nil:
			c.NotJudged(r, "no weight of grain is given")
		case c.Process.Charge.SI > muchMalt:
			c.Note(r.At(st.Place(), fmt.Sprintf("deculming the malt of %s of grain raises dust for hours", c.Process.Charge)))
		}
	},
}

// muchMalt is the charge above which deculming is more than a sieve over a tub, kg
// (common practice).
const muchMalt = 25.0
