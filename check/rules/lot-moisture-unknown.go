package rules

import (
	"fmt"

	"maltwright/lang/finding"
	"maltwright/lang/model"
	"maltwright/lang/vocabulary"
	"maltwright/sim/forecast"
)

var lotMoistureUnknown = Rule{
	Forecast: true,
	Rule: finding.Rule{Name: "lot-moisture-unknown", Severity: finding.Note, // a caution where the process goes by weight
		Title: "the moisture of the raw grain is not given",
		Why:   "every weight is reckoned from the dry matter of the lot, and so are the hours of the steep (a balance of dry matter)",
		Do:    "weigh a ground sample, dry it until its weight no longer falls, weigh it again, and write the moisture into the lot; the seller's slip may state it",
		Bad:   `grain "base lot" { species barley; treated no }`,
		Good:  `grain "base lot" { species barley; moisture 12.4 %; treated no }`,
		Limits: "it cannot know whether a given moisture is that of the sample or of the sack; grain in a damp store " +
			"takes up a point or two"},
	Judge: func(r finding.Rule, c *Case) {
		g := c.Process.Grain
		if g == nil || g.Moisture != nil {
			return
		}
		f := r.At(g.Place, fmt.Sprintf("the moisture of the lot is not given, and the forecast assumes %s", Percent(forecast.MoistureOf(g))))
		if !g.Raw() {
			f.Severity = finding.Caution // every weight of the malt hangs on it
			c.Note(f)
			return
		}
		if t := c.byWeight(); t != nil {
			f.Severity = finding.Caution
			f.Message = fmt.Sprintf("the process goes by weight, and the moisture of the lot is not given: the weight for %s is that of %s if the lot held %s and not %s",
				Percent(meant), Percent(1-(1-meant)*(1-damp)/(1-forecast.UsualMoisture)), Percent(damp), Percent(forecast.UsualMoisture))
			f.Related = []finding.Related{{Place: t.Place, Message: "the weight"}}
		}
		c.Note(f)
	},
}

// damp and meant show what an error does: a lot after a wet harvest, and a usual
// moisture at steep-out.
const (
	damp  = 0.14
	meant = 0.44
)

// byWeight gives the first condition of the process that asks for a weight, or nil.
func (c *Case) byWeight() *model.Test {
	for _, st := range c.Process.Stages {
		if t := asked(st.Ends().Until, vocabulary.MeasureWeight); t != nil {
			return t
		}
		for _, s := range model.EveryStep(model.StepsOf(st)) {
			for _, cond := range []*model.Condition{s.Ends().Until, model.Asked(s)} {
				if t := asked(cond, vocabulary.MeasureWeight); t != nil {
					return t
				}
			}
		}
	}
	return nil
}
