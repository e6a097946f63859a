package rules

import (
	"fmt"

	"maltwright/lang/finding"
	"maltwright/lang/model"
	"maltwright/lang/vocabulary"
)

var cureBeforeDrying = Rule{
	Rule: finding.Rule{Name: "cure-before-drying", Severity: finding.Caution,
		Title:  "the kiln is hotter before the cure than in it, or the malt is dried after it",
		Why:    "the cure is the last and the highest heat, for malt that is dry; a hotter step before it meets wetter malt, and colours it unevenly or kills its enzymes (common practice)",
		Do:     "put the steps in the order of rising heat, and look at the number",
		Bad:    "dry at air-on 50 °C until moisture at most 10 % allow 3 to 20 h\ndry at air-on 92 °C for 2 h\ngate moisture at most 10 % allow 0 to 12 h\ncure at air-on 82 °C for 5 h",
		Good:   "dry at air-on 50 °C until moisture at most 10 % allow 3 to 20 h\ndry at air-on 70 °C for 2 h\ngate moisture at most 10 % allow 0 to 12 h\ncure at air-on 82 °C for 5 h",
		Limits: "Other rules judge malt that gets hot while it is wet, and a cure without a check that the malt is dry."},
	Judge: func(r finding.Rule, c *Case) {
		if before, cure, ok := c.curedCooler(); ok && !(c.Profile.Malt.NeedsEnzymes && c.heatsWet()) {
			was, drying, _ := peak(before)
			top, at, _ := peak(cure)
			f := r.At(at, fmt.Sprintf("the cure, at %s, is cooler than the drying before it, at %s%s", top, was, c.leavesPrecursor()))
			f.Related = []finding.Related{{Place: drying, Message: "the drying"}}
			c.Note(f)
			return
		}
		c.driedBehindCure(r)
	},
}

// curedCooler gives a cure that is cooler than the drying before it, and that drying.
func (c *Case) curedCooler() (before, cure model.Step, ok bool) {
	for _, s := range c.steps(model.KilnStage) {
		top, _, heats := peak(s)
		switch {
		case !heats:
		case s.Kind() == model.DryStep && hotter(s, before):
			before = s
		case s.Kind() == model.CureStep && before != nil:
			was, _, _ := peak(before)
			return before, s, was.SI > top.SI+curedLower
		case s.Kind() == model.CureStep:
			return nil, s, false
		}
	}
	return nil, nil, false
}

// leavesPrecursor adds what a cure so cool leaves of the DMS precursor, where that is
// too much.
func (c *Case) leavesPrecursor() string {
	got, least := c.splits()
	if got >= least {
		return ""
	}
	return fmt.Sprintf("; so only %s of the DMS precursor is split", share(1-c.Forecast.Totals.Quality.Precursor))
}

// driedBehindCure reports malt that needs no enzymes and is dried behind its cure.
func (c *Case) driedBehindCure(r finding.Rule) {
	if c.Profile.Malt.NeedsEnzymes {
		return
	}
	var cure model.Step
	for _, s := range c.steps(model.KilnStage) {
		top, _, ok := peak(s)
		switch {
		case ok && s.Kind() == model.CureStep:
			cure = s
		case ok && cure != nil && asked(s.Ends().Until, vocabulary.MeasureMoisture) != nil:
			f := r.At(s.Place(), fmt.Sprintf("the malt is dried here, at %s, after its cure", top))
			f.Related = []finding.Related{{Place: cure.Place(), Message: "the cure"}}
			c.Note(f)
			return
		}
	}
}

const curedLower = 3.0 // K; as near as two heats count as one

// hotter tells whether a step is hotter than the hottest so far.
func hotter(s, hot model.Step) bool {
	if hot == nil {
		return true
	}
	top, _, _ := peak(s)
	before, _, _ := peak(hot)
	return top.SI > before.SI
}
