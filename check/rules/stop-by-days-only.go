package rules

import (
	"maltwright/lang/finding"
	"maltwright/lang/vocabulary"
)

var stopByDaysOnly = Rule{
	Rule: finding.Rule{Name: "stop-by-days-only", Severity: finding.Note,
		Title: "the germination ends by the clock, and nobody looks at the kernel",
		Why:   "lots differ by days in how fast they grow, and so does one lot from autumn to spring; the acrospire and the rub show when the growth is done (common practice)",
		Do:    "wait for the kernel, with an earliest and a latest time: until acrospire at least 3/4, allow 4 to 7 days",
		Bad: `germinate on "base tray" {
  hold bed at 14 to 16 °C
  humidity 95 to 99 %
  turn every 8 h
  for 5 days
}`,
		Good: `germinate on "base tray" {
  hold bed at 14 to 16 °C
  humidity 95 to 99 %
  turn every 8 h
  until acrospire at least 3/4
  allow 4 to 8 days
}`,
		Limits: "it does not judge chit malt, nor grains without a husk that are judged by days"},
	Judge: func(r finding.Rule, c *Case) {
		st := c.lastGrowth()
		goal := c.Profile.Goal()
		if st == nil || !goal.Known() || goal.Low == 0 {
			return
		}
		kernel := []string{vocabulary.MeasureAcrospire, vocabulary.MeasureRub, vocabulary.MeasureChit, vocabulary.MeasureMoisture, vocabulary.MeasureWeight, vocabulary.MeasureBed}
		if looksAt(st, kernel...) || c.growthLooksAt(kernel[:2]...) || c.witherLooksAt(kernel[:2]...) {
			return
		}
		c.Note(r.At(timeOf(st), "the germination ends by the clock alone, however far the kernel has grown"))
	},
}
