package rules

import (
	"fmt"

	"maltwright/check/profile"
	"maltwright/lang/finding"
	"maltwright/lang/model"
	"maltwright/lang/vocabulary"
)

var acrospireGoalOdd = Rule{
	Rule: finding.Rule{Name: "acrospire-goal-odd", Severity: finding.Caution,
		Title:  "the growth waits for an acrospire of an odd length",
		Why:    "where the acrospire is under half the kernel, the tip of the kernel is still raw; where it is longer than the kernel, it has used up what the malt is made for (common practice)",
		Do:     "wait for another length, or name the malt that this is",
		Bad:    "until acrospire at least 1/4",
		Good:   "until acrospire at least 3/4",
		Limits: "it knows a usual length for barley, wheat, spelt, rye, triticale and oats"},
	Judge: func(r finding.Rule, c *Case) {
		if !c.growthLooksAt(vocabulary.MeasureAcrospire) {
			return
		}
		goal := c.Profile.Goal()
		if !goal.Known() {
			c.NotJudged(r, fmt.Sprintf("no usual length of the acrospire is known for %s, which is judged by days", c.Profile.Grain.Name))
			return
		}
		for _, st := range model.Every[*model.Germination](c.Process) {
			goal := goal
			if st != c.lastGrowth() {
				goal.Low = 0 // it grows on
			}
			conditions := []*model.Condition{st.Until}
			for _, s := range st.Steps {
				if s.Kind() == model.GateStep {
					conditions = append(conditions, model.Asked(s))
				}
			}
			for i, cond := range conditions {
				if t := asked(cond, vocabulary.MeasureAcrospire); t != nil {
					c.goalOdd(r, t, goal, i == 0)
				}
			}
		}
	},
}

func (c *Case) goalOdd(r finding.Rule, t *model.Test, goal profile.Band, ends bool) {
	length, ok := waitsFor(t)
	const rounding = 1e-9
	switch {
	case t.Bound == nil:
	case !ok && ends:
		f := r.At(t.Place, fmt.Sprintf("%s holds from the first hour, so the step waits for nothing", t.Place.Text()))
		f.Hint = "write at least in front of the value that the step waits for"
		c.Note(f)
	case ok && (length < goal.Low-rounding || length > goal.High+rounding):
		f := r.At(t.Place, fmt.Sprintf("the step waits for %s, and %s malt of %s is grown to %s of the kernel", t.Place.Text(), c.Profile.Malt.Name, c.Profile.Grain.Name, lengths(goal)))
		c.Note(f)
	}
}

func lengths(b profile.Band) string {
	if b.Low == 0 {
		return fmt.Sprintf("at most %.4g", b.High)
	}
	return fmt.Sprintf("between %.4g and %.4g", b.Low, b.High)
}
