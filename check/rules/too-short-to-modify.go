package rules

import (
	"fmt"

	"maltwright/lang/finding"
	"maltwright/lang/vocabulary"
)

var tooShortToModify = Rule{
	Forecast: true,
	Rule: finding.Rule{Name: "too-short-to-modify", Severity: finding.Caution,
		Title: "the growth ends before the kernel is modified",
		Why:   "the tip of the kernel stays hard and raw: the malt mills badly, and gives little extract and much haze (common practice)",
		Do:    "give it more days, or a somewhat warmer bed",
		Bad: `germinate on "base tray" {
  hold bed at 14 to 16 °C
  humidity 95 to 99 %
  turn every 8 h
  for 2 days
}`,
		Good: `germinate on "base tray" {
  hold bed at 14 to 16 °C
  humidity 95 to 99 %
  turn every 8 h
  until acrospire at least 3/4
  allow 4 to 8 days
}`,
		Limits: "it does not judge a stage that waits for the kernel; lots differ by an eighth in how fast they grow, and a difference so small is not reported"},
	Judge: func(r finding.Rule, c *Case) {
		st := c.lastGrowth()
		floor, last := c.grown()
		if st == nil || floor == nil || c.growthLooksAt(vocabulary.MeasureAcrospire, vocabulary.MeasureRub) || c.witherLooksAt(vocabulary.MeasureAcrospire, vocabulary.MeasureRub) {
			return
		}
		place := timeOf(st)
		if st.Until != nil {
			place = st.Until.Place
		}
		goal := c.Profile.Goal()
		days := c.Profile.GrowDays()
		switch {
		case goal.Known() && last.Acrospire < goal.Low*(1-lotsDiffer):
			f := r.At(place, fmt.Sprintf("after %s the acrospire is %.2f of the kernel and the kernel rubs out %s; %s malt of %s is grown to %s",
				Hours(floor.Took), last.Acrospire, last.Rub, c.Profile.Malt.Name, c.Profile.Grain.Name, lengths(goal)))
			f.Hint = fmt.Sprintf("give the growth more days (%.4g to %.4g are usual for %s) or a somewhat warmer bed", days.Low, days.High, c.Profile.Grain.Name)
			c.Note(f)
		case !goal.Known() && floor.Took < days.Low*day-hour:
			c.Note(r.At(place, fmt.Sprintf("it grows for %s, and %s takes %.4g to %.4g days", Hours(floor.Took), c.Profile.Grain.Name, days.Low, days.High)))
		}
	},
}

// lotsDiffer is by how much lots differ in how fast they grow: the spread of the
// ensemble, rounded up.
const lotsDiffer = 0.15
