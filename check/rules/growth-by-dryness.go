package rules

import (
	"fmt"
	"slices"

	"maltwright/lang/finding"
	"maltwright/lang/model"
	"maltwright/lang/quantity"
	"maltwright/lang/vocabulary"
)

var growthByDryness = Rule{
	Rule: finding.Rule{Name: "growth-by-dryness", Severity: finding.Caution,
		Title: "the growth ends when the piece has dried to a moisture, and nobody looks at the kernel",
		Why:   "the air and the cloth decide how fast a piece dries, and its warmth decides how fast it grows: the one does not show the other. A piece is kept wet while it grows, and dried by withering (common practice)",
		Do:    "wait for the kernel: until acrospire at least 3/4; and dry it in wither",
		Bad: `germinate on "base tray" {
  hold bed at 14 to 16 °C
  turn every 8 h
  until moisture at most 42 %
  allow 4 to 8 days
}`,
		Good: `germinate on "base tray" {
  hold bed at 14 to 16 °C
  turn every 8 h
  until acrospire at least 3/4
  allow 4 to 8 days
}`,
		Limits: "a stage that also waits for the kernel is left alone"},
	Judge: func(r finding.Rule, c *Case) {
		st := c.lastGrowth()
		if st == nil || st.Until == nil || looksAt(st, vocabulary.MeasureChit) || c.growthLooksAt(vocabulary.MeasureAcrospire, vocabulary.MeasureRub) {
			return
		}
		drier := func(t model.Test) bool {
			return (t.Measure == vocabulary.MeasureMoisture || t.Measure == vocabulary.MeasureWeight) && t.Bound != nil && (t.Bound.Op == quantity.AtMost || t.Bound.Op == quantity.Below)
		}
		if slices.ContainsFunc(st.Until.Tests, drier) {
			c.Note(r.At(st.Until.Place, fmt.Sprintf("the growth ends at %s, however far the kernel has grown", st.Until.Place.Text())))
		}
	},
}
