package rules

import (
	"fmt"
	"slices"
	"strings"

	"maltwright/lang/finding"
	"maltwright/lang/model"
	"maltwright/lang/quantity"
	"maltwright/lang/source"
	"maltwright/lang/vocabulary"
)

var cureWithoutGate = Rule{
	Rule: finding.Rule{Name: "cure-without-gate", Severity: finding.Caution, // a note where the forecast has it dry, or 12 % is asked for
		Title: "the cure begins without a check that the malt is dry",
		Why:   "wet malt loses its enzymes in the heat of the cure; the heat is raised only below about 10 % moisture, or 12 % for up to 80 °C (common practice), and hours alone do not show that the malt is so dry",
		Do:    "put a gate in front of it: gate moisture at most 10 %",
		Bad:   "dry at air-on 50 °C for 14 h\ncure at air-on 82 °C for 5 h",
		Good:  "dry at air-on 50 °C for 14 h\ngate moisture at most 10 %\ncure at air-on 82 °C for 5 h",
		Limits: "A weight can be such a gate; only the forecast shows whether it is low enough. Malts that need no enzymes are not judged. " +
			"A step that waits for the moisture is gate enough while its latest time leaves room for a kiln that dries a fifth slower."},
	Judge: func(r finding.Rule, c *Case) {
		if !c.Profile.Malt.NeedsEnzymes {
			return
		}
		wanted := untilDry(c)
		for i, s := range c.steps(model.KilnStage) {
			top, place, _, ok := c.given(s)
			if !ok || !curing(c, s, top.SI-zeroC) {
				continue
			}
			switch last := wanted.last(i); {
			case wanted.before(i) > drynessFor(top.SI-zeroC)+nearlyDry:
				c.ungated(r, s, top, place, last)
			case !wanted.gated(i, drynessFor(top.SI-zeroC)+nearlyDry):
				c.timedOut(r, s, top, place, last)
			}
			return
		}
	},
}

// curing tells whether a step that goes to t °C is the heat of the cure.
func curing(c *Case, s model.Step, t float64) bool {
	return t > hotWet && (s.Kind() == model.CureStep || t >= c.Profile.Malt.Cure.Low)
}

// drynessFor is the moisture down to which malt must be dried before t °C.
func drynessFor(t float64) float64 {
	if t > hotDamp {
		return dryMalt
	}
	return dampMalt
}

// drynessAsked are the moistures that a process asks for, in order.
type drynessAsked []weighed

func untilDry(c *Case) drynessAsked { return c.dried(vocabulary.MeasureMoisture) }

// before gives the lowest moisture that is asked for before a step; 1 is none.
func (a drynessAsked) before(step int) float64 {
	least := 1.0
	for _, w := range a {
		if w.step < step {
			least = min(least, w.high)
		}
	}
	return least
}

// last gives the bound that asks for it, or nil.
func (a drynessAsked) last(step int) *weighed {
	for i := range a {
		if a[i].step < step && a[i].high == a.before(step) {
			return &a[i]
		}
	}
	return nil
}

// gated tells whether a gate before a step, on whatever kiln, asks for no more than a moisture.
func (a drynessAsked) gated(step int, need float64) bool {
	return slices.ContainsFunc(a, func(w weighed) bool { return w.hold && w.step < step && w.high <= need })
}

// ungated reports the step, unless a weight before it does what a moisture would.
func (c *Case) ungated(r finding.Rule, s model.Step, top quantity.Quantity, place source.Place, loose *weighed) {
	need := drynessFor(top.SI - zeroC)
	f := r.At(place, fmt.Sprintf("the malt is heated to %s, and no step before that checks how dry it is", top))
	if loose != nil && (loose.step >= 0 || loose.high <= withered) {
		f = r.At(place, fmt.Sprintf("the malt is heated to %s, and the only condition before that is %s", top, loose.test.Place.Text()))
		f.Related = []finding.Related{{Place: loose.test.Place, Message: fmt.Sprintf("before %s it should hold about %s at most", top, Percent(need))}}
	}
	run := c.run(s)
	byWeight := c.weightBefore(s)
	switch {
	case byWeight && run == nil:
		c.NotJudged(r, "only the forecast shows whether the weight before the cure is low enough")
		return
	case run == nil:
	case run.MoistureStart <= need+nearlyDry && byWeight:
		return
	default:
		f.Message += fmt.Sprintf("; the forecast moisture then is %s", Percent(run.MoistureStart))
		if run.MoistureStart <= need || loose != nil && loose.high <= dampMalt+nearlyDry {
			f.Severity = finding.Note
		}
	}
	if run != nil && f.Severity > finding.Note { // else the hours may well do, and nothing is certain
		f.Related = append(f.Related, finding.Related{Place: s.Place(), Message: "the gate goes in front of this"})
		f.Fixes = []finding.Edit{before(s.Place(), asksDry)}
	}
	c.Note(f)
}

// timedOut reports a heat that relies on the step before it alone, where that step ends
// by its time, here or on a kiln that dries slower, and hands on malt that is still too
// wet. A guard that leaves room makes the gate redundant, and nothing is said.
func (c *Case) timedOut(r finding.Rule, s model.Step, top quantity.Quantity, place source.Place, last *weighed) {
	need := drynessFor(top.SI - zeroC)
	run := c.run(s)
	if run == nil || c.told(last.test.Place) {
		return
	}
	on, wet := "the step before", run.MoistureStart
	if wet <= need+nearlyDry {
		if on, wet = "a kiln that dries a fifth slower", c.slower(s); wet <= need+clearlyWet {
			return
		}
	}
	f := r.At(place, fmt.Sprintf("the malt is heated to %s with no gate before it, and %s ends by its time at %s", top, on, Percent(wet)))
	if wet > run.MoistureStart {
		f.Message = fmt.Sprintf("the malt is heated to %s with no gate before it, and on %s it then holds %s", top, on, Percent(wet))
	}
	f.Related = []finding.Related{{Place: last.test.Place, Message: "the step ends by its time if this condition is not met"},
		{Place: s.Place(), Message: "the gate goes in front of this"}}
	f.Fixes = []finding.Edit{before(s.Place(), asksDry)}
	c.Note(f)
}

// slower gives the moisture with which a step begins on a slower kiln; 0 where that
// cannot be told.
func (c *Case) slower(s model.Step) float64 {
	w, _ := c.Forecast.MoistureAt(s.Place(), slowKiln)
	return w
}

// slowKiln is a kiln that dries slower by the usual spread of kilns about the model, and
// clearlyWet the moisture above what the heat bears that is no rounding.
const (
	slowKiln   = 0.8
	clearlyWet = 0.01
)

// withered is the moisture above which a withered piece is still wet, and no malt for
// a kiln that only cures.
const withered = 0.25

// weightBefore tells whether a weight is asked for before a step.
func (c *Case) weightBefore(s model.Step) bool {
	steps := c.steps(model.KilnStage)
	for _, w := range c.dried(vocabulary.MeasureWeight) {
		for i := range steps {
			if steps[i] == s && w.step < i {
				return true
			}
		}
	}
	return false
}

// asksDry is the gate that is missing, with the time that a gate waits of which nothing
// is said, so that whoever reads it sees that it may wait.
const asksDry = "gate moisture at most 10 % allow 0 to 12 h"

// before is the edit that puts a line in front of a statement, set in as far.
func before(at source.Place, line string) finding.Edit {
	text := at.File.Text(source.Span{End: at.Start})
	begins := strings.LastIndexByte(text, '\n') + 1
	margin, between := text[begins:], "; "
	if strings.TrimSpace(margin) == "" {
		between = "\n" + margin
		if strings.HasSuffix(text[:begins], "\r\n") {
			between = "\r" + between
		}
	}
	return finding.Edit{Place: source.Place{File: at.File, Span: source.Span{Start: at.Start, End: at.Start}}, New: line + between}
}
