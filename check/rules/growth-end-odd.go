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
		Title: "the growth ends at a sign that comes long before the kernel is modified",
		Why: "a kernel chits in the first days, and the piece is warm as soon as it grows: neither shows how far the growth has come, so the earliest time alone ends it. " +
			"The acrospire and the rub show it (common practice)",
		Do: "wait for the kernel, with an earliest and a latest time: until acrospire at least 3/4, allow 4 to 7 days",
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
		Limits: "a stage that also waits for the acrospire or the rub is left alone, and so is chit for a malt or grain whose acrospire shows nothing"},
	Judge: func(r finding.Rule, c *Case) {
		st, goal := c.lastGrowth(), c.Profile.Goal()
		if st == nil || st.Until == nil || c.growthLooksAt(vocabulary.MeasureAcrospire, vocabulary.MeasureRub) || c.witherLooksAt(vocabulary.MeasureAcrospire, vocabulary.MeasureRub) {
			return
		}
		early := func(t model.Test) bool {
			return t.Measure == vocabulary.MeasureBed || t.Measure == vocabulary.MeasureChit && goal.Known() && goal.Low > 0
		}
		if slices.ContainsFunc(st.Until.Tests, early) {
			c.Note(r.At(st.Until.Place, fmt.Sprintf("the growth ends at %s, which does not show how far the kernel has grown", st.Until.Place.Text())))
		}
	},
}
