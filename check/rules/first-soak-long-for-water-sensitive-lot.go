package rules

import (
	"fmt"

	"maltwright/lang/finding"
	"maltwright/lang/model"
)

var firstSoakLong = Rule{
	Rule: finding.Rule{Name: "first-soak-long-for-water-sensitive-lot", Severity: finding.Caution,
		Title: "the first soak is long for a lot that is sensitive to water",
		Why:   "many kernels of such a lot do not chit under a film of water; a short first soak and a long rest let them wake first (common practice; the test in 4 ml and 8 ml is that of Analytica EBC)",
		Do:    "keep the first soak to 4 to 6 h, rest the grain for 12 h and more until it has drunk the film, and lengthen a later soak",
		Bad:   "germination 97 % of 200 kernels at 4 ml\ngermination 60 % of 200 kernels at 8 ml\nsoak 9 h in water at 13 °C",
		Good:  "germination 97 % of 200 kernels at 4 ml\ngermination 60 % of 200 kernels at 8 ml\nsoak 5 h in water at 13 °C",
		Limits: "the difference of two tests is uncertain by some 8 points for 100 kernels each. The forecast knows nothing of water " +
			"sensitivity: the lot grows there like any other"},
	Judge: func(r finding.Rule, c *Case) {
		g := c.Process.Grain
		if g == nil || model.First[*model.Steep](c.Process) == nil {
			return
		}
		four, ok4 := count(g, inFour)
		eight, ok8 := count(g, inEight)
		if !ok4 || !ok8 {
			c.NotJudged(r, "the lot was not tested both in 4 ml and in 8 ml of water")
			return
		}
		points := 100 * (four.share - eight.share)
		first, ok := c.firstSoak()
		if points < sensitive-1e-6 || !ok || first.seconds <= firstSoakMost+60 {
			return
		}
		f := r.At(timeAt(first.step), fmt.Sprintf("the first soak lasts %s, and the lot is sensitive to water: %.0f points fewer germinate in 8 ml than in 4 ml", lasting(first.step, first.seconds), points))
		f.Related = []finding.Related{{Place: eight.place, Message: "the test in 8 ml"}}
		c.Note(f)
	},
}

// From a difference of so many points on a lot is sensitive to water, and a first
// soak of six hours is then long (common practice).
const (
	sensitive     = 26
	firstSoakMost = 6 * hour
)

func (c *Case) firstSoak() (wetting, bool) {
	for _, w := range c.wettings() {
		if w.step.Kind() == model.SoakStep {
			return w, true
		}
	}
	return wetting{}, false
}
