package rules

import (
	"fmt"

	"maltwright/lang/finding"
	"maltwright/lang/model"
	"maltwright/lang/vocabulary"
)

var deculmLate = Rule{
	Rule: finding.Rule{Name: "deculm-late", Severity: finding.Caution,
		Title:  "the rootlets are left on for long after the kiln",
		Why:    "rootlets draw water out of the air within a day; then they are tough and no longer break off (common practice)",
		Do:     "rub and sieve them off as soon as the malt is cool, within a day",
		Bad:    "deculm within 3 days",
		Good:   "deculm within 12 h",
		Limits: "malt that waits in a tight container keeps longer: accept it there"},
	Judge: func(r finding.Rule, c *Case) {
		st := model.First[*model.Deculming](c.Process)
		if st == nil || st.Within == nil {
			return
		}
		if most := c.Limit(vocabulary.LimitDeculmWait, day); st.Within.SI > most {
			c.Note(r.At(st.Within.Place, fmt.Sprintf("the malt may wait %s for deculming, and %s is the longest", st.Within, st.Within.Lasting(most))))
		}
	},
}
