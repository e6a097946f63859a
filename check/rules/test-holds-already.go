package rules

import (
	"fmt"

	"maltwright/lang/finding"
	"maltwright/lang/model"
	"maltwright/lang/vocabulary"
	"maltwright/sim/forecast"
)

var testHoldsAlready = Rule{
	Forecast: true,
	Rule: finding.Rule{Name: "test-holds-already", Severity: finding.Caution,
		Title: "a step or a gate waits for a condition that is met before it begins",
		Why:   "a condition that is met from the start ends the step at once, or lets everything through: it guards nothing (common practice)",
		Do:    "look at the value, and at whether it is at least or at most",
		Bad: `wither on "base floor" {
  air at 18 to 20 °C
  turn every 6 h
  until moisture at most 48 %
  allow 4 to 30 h
}`,
		Good: `wither on "base floor" {
  air at 18 to 20 °C
  turn every 6 h
  until moisture at most 38 %
  allow 4 to 30 h
}`,
		Limits: "It judges gates on moisture and weight. A gate that makes sure of the moisture of the finished malt may be met before the cure."},
	Judge: func(r finding.Rule, c *Case) {
		for i := range c.Forecast.Gates {
			g := &c.Forecast.Gates[i]
			switch {
			case !g.Met || g.Unjudged || c.told(g.Place) || c.toldInside(g):
			case g.Hold:
				c.openGate(r, g)
			case g.First < 60 && !c.justHeld(g):
				c.Note(r.At(g.Place, fmt.Sprintf("%s is met already when its step begins%s", g.Text, waitedOn(g))))
			}
		}
	},
}

// justHeld tells of a moisture that the steps before have come to by a little more than
// was asked: the next lot may dry slower, and then the step is wanted.
func (c *Case) justHeld(g *forecast.Gate) bool {
	if st := g.Of; st != nil && st.Ends().Until != nil && st.Ends().Until.Place == g.Place {
		t := asked(st.Ends().Until, vocabulary.MeasureMoisture)
		_, first := c.statesBefore(g)
		return t != nil && t.Bound != nil && first != nil && t.Bound.Range.High.SI-first.moisture < littleMore
	}
	for i, s := range model.StepsOf(g.Of) {
		run := c.run(s)
		if s.Ends().Until == nil || s.Ends().Until.Place != g.Place || i == 0 || run == nil {
			continue
		}
		t := asked(s.Ends().Until, vocabulary.MeasureMoisture)
		return t != nil && t.Bound.Range.High.SI-run.MoistureStart < littleMore
	}
	return false
}

// littleMore is how far, wet basis, a forecast of drying may be off.
const littleMore = 0.02

// lastOfKiln tells whether a gate has no heat behind it that it could guard.
func (c *Case) lastOfKiln(g *forecast.Gate) bool {
	for i, s := range c.steps(model.KilnStage) {
		if model.Asked(s) != nil && model.Asked(s).Place == g.Place {
			return !c.heatedAfter(i)
		}
	}
	return false
}

// waitedOn says what then becomes of the step.
func waitedOn(g *forecast.Gate) string {
	if g.Waited < 60 {
		return ": the step ends at once"
	}
	return fmt.Sprintf(": only its earliest time makes the step last %s", Hours(g.Waited))
}

// toldInside tells whether one of the tests of a condition is told of.
func (c *Case) toldInside(g *forecast.Gate) bool {
	for _, f := range c.Found {
		if f.Severity >= finding.Caution && f.Place.File == g.Place.File && f.Place.Start >= g.Place.Start && f.Place.End <= g.Place.End {
			return true
		}
	}
	return false
}

// openGate reports a gate that held when its stage began, or one behind all heat of the
// kiln, not dry enough for finished malt, that held when the last heat began.
func (c *Case) openGate(r finding.Rule, g *forecast.Gate) {
	cond := c.gateAt(g)
	if cond == nil {
		return
	}
	before, first := c.statesBefore(g)
	switch {
	case first != nil && holdsIn(first, cond):
		c.Note(r.At(g.Place, fmt.Sprintf("%s is met already when %s begins: the gate lets everything through", g.Text, stageIn(g.Stage))))
	case before != nil && holdsIn(before, cond) && (c.lastOfKiln(g) && c.laxer(cond) || c.guardsNoHeat(g, cond)):
		c.Note(r.At(g.Place, fmt.Sprintf("%s is met already when the step before it begins, at %s: the gate lets everything through", g.Text, Percent(before.moisture))))
	}
}

// guardsNoHeat tells whether a gate of the kiln asks for no more than what malt may not
// be heated at: before a cure it is as good as none.
func (c *Case) guardsNoHeat(g *forecast.Gate, cond *model.Condition) bool {
	for _, t := range cond.Tests {
		if t.Measure != vocabulary.MeasureMoisture || t.Bound == nil || t.Bound.Range.High.SI <= dampMalt+nearlyDry {
			return false
		}
	}
	return g.Stage == model.KilnStage && c.Profile.Malt.NeedsEnzymes
}

// laxer tells whether a condition asks for more than the moisture of finished malt.
func (c *Case) laxer(cond *model.Condition) bool {
	for _, t := range cond.Tests {
		if t.Measure == vocabulary.MeasureMoisture && t.Bound.Range.High.SI < c.Profile.FinishedMost()+nearlyDry {
			return false
		}
	}
	return true
}

func stageIn(kind model.StageKind) string {
	return map[model.StageKind]string{model.SteepStage: "the steep", model.GerminateStage: "the growth", model.WitherStage: "the withering", model.KilnStage: "the kiln"}[kind]
}

func (c *Case) gateAt(g *forecast.Gate) *model.Condition {
	for _, s := range model.StepsOf(g.Of) {
		if model.Asked(s) != nil && model.Asked(s).Place == g.Place {
			return model.Asked(s)
		}
	}
	return nil
}

// grainState is what a gate of moisture or weight looks at.
type grainState struct{ moisture, weight float64 }

// statesBefore gives the grain when the last step before a gate began that is not a
// gate itself, on a kiln before this one too, and when the stage began.
func (c *Case) statesBefore(g *forecast.Gate) (before, first *grainState) {
	weight := c.Process.Charge.SI
	for _, st := range c.Forecast.Stages {
		for i, s := range st.Steps {
			at := &grainState{s.MoistureStart, weight}
			weight = s.WeightEnd
			if st.Kind != g.Stage || s.Place.Start > g.Place.Start {
				continue
			}
			if i == 0 && st.Of == g.Of {
				first = at
			}
			if s.Kind != model.GateStep {
				before = at
			}
		}
	}
	return before, first
}

func holdsIn(s *grainState, cond *model.Condition) bool {
	for _, t := range cond.Tests {
		value, ok := map[string]float64{vocabulary.MeasureMoisture: s.moisture, vocabulary.MeasureWeight: s.weight}[t.Measure]
		if !ok || !t.Bound.Holds(value) {
			return false
		}
	}
	return true
}
