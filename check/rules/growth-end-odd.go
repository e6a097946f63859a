package rules

import (
	"fmt"
	"slices"

	"maltwright/lang/finding"
	"maltwright/lang/model"
	"maltwright/lang/vocabulary"
)

var growthEndOdd = Rule{
	Rule: finding.Rule{Name: "growth-end-odd", Severity: finding.Caution,
		Title: "the growth ends by something that comes long before the kernel is done",
		Why: "a kernel chits in the first days, and the piece is warm as soon as it grows: neither tells how far the growth has come, and what ends it is then the earliest time alone. " +
			"The acrospire and the rub tell it (common practice)",
		Do: "wait for the kernel, with the days as the guard: until acrospire at least 3/4, allow 4 to 7 days",
		Bad: `germinate on "base tray" {
  hold bed at 14 to 16 °C
  turn every 8 h
  until chit at least 95 %
  allow 4 to 8 days
}`,
		Good: `germinate on "base tray" {
  hold bed at 14 to 16 °C
  turn every 8 h
  until chit at least 95 % and acrospire at least 3/4
  allow 4 to 8 days
}`,
		Limits: "a growth that looks at the acrospire or the rub too, in whatever place, is left alone, and so is the chit of a malt or a grain whose acrospire tells nothing"},
	Judge: func(r finding.Rule, c *Case) {
		st, goal := c.lastGrowth(), c.Profile.Goal()
		if st == nil || st.Until == nil || c.growthLooksAt(vocabulary.MeasureAcrospire, vocabulary.MeasureRub) || c.witherLooksAt(vocabulary.MeasureAcrospire, vocabulary.MeasureRub) {
			return
		}
		early := func(t model.Test) bool {
			return t.Measure == vocabulary.MeasureBed || t.Measure == vocabulary.MeasureChit && goal.Known() && goal.Low > 0
		}
		if slices.ContainsFunc(st.Until.Tests, early) {
			c.Note(r.At(st.Until.Place, fmt.Sprintf("the growth ends at %s, and that does not tell how far the kernel has grown", st.Until.Place.Text())))
		}
	},
}
