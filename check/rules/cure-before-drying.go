package rules

import (
	"fmt"

	"maltwright/lang/finding"
	"maltwright/lang/process"
)

var cureBeforeDrying = Rule{
	Rule: finding.Rule{Name: "cure-before-drying", Severity: finding.Caution,
		Title:  "the kiln is hotter before the cure than in it, or the malt is dried behind it",
		Why:    "the cure is the last and the highest heat, of malt that is dry by then: what comes hotter before it meets wetter malt, and colours it unevenly or kills it (common practice)",
		Do:     "put the steps in the order in which the heat rises, and look at the number",
		Bad:    "dry at air-on 50 °C until moisture at most 10 % allow 3 to 20 h\ndry at air-on 92 °C for 2 h\ngate moisture at most 10 % allow 0 to 12 h\ncure at air-on 82 °C for 5 h",
		Good:   "dry at air-on 50 °C until moisture at most 10 % allow 3 to 20 h\ndry at air-on 70 °C for 2 h\ngate moisture at most 10 % allow 0 to 12 h\ncure at air-on 82 °C for 5 h",
		Limits: "Malt that gets hot while it is wet, and a cure that nothing shows to be dry, are told by rules of their own."},
	Judge: func(r finding.Rule, c *Case) {
		var hot, cure *process.Step
		for _, s := range c.steps(process.KilnStage) {
			top, at, ok := peak(s)
			switch {
			case !ok:
			case s.Kind == process.Cure:
				if cure = s; hot != nil && !c.toldElse() {
					if before, was, _ := peak(hot); before.SI > top.SI+curedLower {
						f := r.At(at, fmt.Sprintf("the cure, at %s, is cooler than the drying before it, at %s", top, before))
						f.Related = []finding.Related{{Place: was, Message: "the drying"}}
						c.Note(f)
						return
					}
				}
			case cure != nil && asked(s.Until, "moisture") != nil && !c.Profile.Malt.NeedsEnzymes:
				f := r.At(s.Place, fmt.Sprintf("the malt is dried here, at %s, behind its cure", top))
				f.Related = []finding.Related{{Place: cure.Place, Message: "the cure"}}
				c.Note(f)
				return
			case s.Kind == process.Dry && hotter(s, hot):
				hot = s
			}
		}
	},
}

const curedLower = 3.0 // K; as near as two heats count as one

// hotter tells whether a step is hotter than the hottest so far.
func hotter(s, hot *process.Step) bool {
	if hot == nil {
		return true
	}
	top, _, _ := peak(s)
	before, _, _ := peak(hot)
	return top.SI > before.SI
}

// toldElse tells whether the heat of wet malt, or a kiln that is too cool, says it already.
func (c *Case) toldElse() bool {
	if c.Profile.Malt.NeedsEnzymes && c.heatsWet() {
		return true
	}
	if c.Forecast != nil {
		if _, cool := hardlyHeated(claimNotKept.Rule, c); cool {
			return true
		}
	}
	got, least := c.splits()
	return got < least
}
