package rules

import (
	"fmt"

	"maltwright/lang/finding"
	"maltwright/lang/model"
	"maltwright/lang/vocabulary"
)

var gateOrder = Rule{
	Rule: finding.Rule{Name: "gate-order", Severity: finding.Fault,
		Title: "a later gate allows more moisture than one before it",
		Why:   "malt on the kiln only dries: a gate that allows more moisture than an earlier one is open from the start and guards nothing (a balance of water)",
		Do:    "let the moistures fall from step to step; two of them may have been swapped",
		Bad:   "gate moisture at most 10 %\ncure at air-on 82 °C for 4 h\ngate moisture at most 14 %",
		Good:  "gate moisture at most 10 %\ncure at air-on 82 °C for 4 h\ngate moisture at most 4.5 %",
		Limits: "A gate right after a step may be drier than the until of that step, because the step may also end by its time. " +
			"Gates on weight are not compared with gates on moisture."},
	Judge: func(r finding.Rule, c *Case) {
		var least *weighed
		list := c.dried(vocabulary.MeasureMoisture)
		for i := range list {
			w := &list[i]
			if least != nil && !c.looserHold(least, w) {
				c.rising(r, least, w)
			}
			if least == nil || w.high < least.high {
				least = w
			}
		}
	},
}

// looserHold tells whether the gate stands right behind the step with the until.
func (c *Case) looserHold(before, w *weighed) bool {
	return w.hold && !before.hold && before.stage == w.stage && !c.heatedBetween(before.step, w.step) && w.low <= before.high
}

func (c *Case) heatedBetween(from, to int) bool {
	for i, s := range c.steps(model.KilnStage) {
		if _, _, ok := peak(s); ok && from < i && i < to {
			return true
		}
	}
	return false
}

// rising reports a bound that lies above one before it.
func (c *Case) rising(r finding.Rule, before, w *weighed) {
	var f finding.Finding
	switch {
	case w.low > before.high:
		f = r.At(w.test.Place, fmt.Sprintf("%s comes after %s, and malt that is drier than that does not get wetter again", w.test.Place.Text(), before.test.Place.Text()))
	case w.high > before.high && w.high < 1:
		f = r.At(w.test.Place, fmt.Sprintf("%s comes after %s, so it holds from the start and guards nothing", w.test.Place.Text(), before.test.Place.Text()))
	default:
		return
	}
	if before.stage != w.stage {
		f.Severity = finding.Caution // withered further than the kiln asks: the step ends at once
	}
	f.Related = []finding.Related{{Place: before.test.Place, Message: "the earlier gate is drier"}}
	c.Note(f)
}
