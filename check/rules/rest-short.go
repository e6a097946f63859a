package rules

import (
	"fmt"

	"maltwright/lang/finding"
	"maltwright/lang/model"
	"maltwright/lang/quantity"
	"maltwright/lang/vocabulary"
)

var restShort = Rule{
	Rule: finding.Rule{Name: "rest-short", Severity: finding.Note,
		Title:  "the malt is used soon after the kiln",
		Why:    "fresh malt gives a slow run-off and a cloudy wort; its moisture evens out in two to four weeks of rest (common practice)",
		Do:     "let it rest two or three weeks, closed, before it is used",
		Bad:    "store in \"lidded drum\" for 5 days",
		Good:   "store in \"lidded drum\" for at least 3 weeks",
		Limits: "it does not judge a process without store"},
	Judge: func(r finding.Rule, c *Case) {
		st := model.First[*model.Storing](c.Process)
		switch {
		case st == nil, st.Rest != nil && st.Rest.Range.Low.SI < c.Profile.TimesOf(vocabulary.VerbStore).Odd.Low*hour: // step-time-odd
		case st.Rest == nil:
			c.NotJudged(r, "store does not say for how long")
		default:
			rest := st.Rest.Range.Low
			if st.Rest.Op == quantity.AtMost || st.Rest.Op == quantity.Below {
				rest = st.Rest.Range.High
			}
			if least := c.Limit(vocabulary.LimitStoreRest, 14*day); rest.SI < least*(1-1e-9) {
				c.Note(r.At(st.Rest.Place, fmt.Sprintf("the malt rests %s before use, and %s is the least", rest, rest.Lasting(least))))
			}
		}
	},
}
