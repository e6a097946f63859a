package rules

import (
	"fmt"

	"maltwright/lang/finding"
	"maltwright/lang/vocabulary"
)

var rubGoalOdd = Rule{
	Rule: finding.Rule{Name: "rub-goal-odd", Severity: finding.Caution,
		Title: "the growth ends at a rub that is not yet that of malt",
		Why:   "a kernel is gummy after the steep, gritty while its walls are half broken down, and rubs out like chalk when it is modified (common practice)",
		Do:    "wait until rub is chalky",
		Bad: `germinate on "base tray" {
  hold bed at 14 to 16 °C
  humidity 95 to 99 %
  turn every 8 h
  until rub is gritty
  allow 3 to 8 days
}`,
		Good: `germinate on "base tray" {
  hold bed at 14 to 16 °C
  humidity 95 to 99 %
  turn every 8 h
  until rub is chalky
  allow 4 to 8 days
}`,
		Limits: "Chit malt is not judged, nor gritty beside a length of the acrospire that is usual for the malt."},
	Judge: func(r finding.Rule, c *Case) {
		st := c.lastGrowth()
		if st == nil || c.Profile.Malt.Name == vocabulary.MaltChit {
			return
		}
		grown := false
		for _, t := range goals(st) {
			least, ok := waitsFor(&t)
			grown = grown || t.Measure == vocabulary.MeasureAcrospire && ok && least >= c.Profile.Goal().Low*(1-lotsDiffer)
		}
		if st.Until == nil {
			return
		}
		for _, t := range st.Until.Tests {
			switch {
			case t.Word == vocabulary.RubGummy:
				c.Note(r.At(t.Place, "the growth ends when the kernel rubs out gummy, and it does so from the steep on"))
			case t.Word == vocabulary.RubGritty && !grown:
				c.Note(r.At(t.Place, fmt.Sprintf("the growth ends when the kernel rubs out gritty, and then %s is undermodified", c.kindOfMalt())))
			}
		}
	},
}
