package rules

import (
	"math"

	"maltwright/lang/model"
	"maltwright/lang/quantity"
	"maltwright/lang/source"
	"maltwright/sim/forecast"
)

// hotWet and hotDamp are the temperatures, °C, above which a step needs malt of no
// more than dampMalt and dryMalt moisture; what wet enzymes bear (common practice).
const (
	hotWet, hotDamp   = 65.0, 80.0
	dampMalt, dryMalt = 0.12, 0.10
	nearlyDry         = 0.005 // "about 10 %" is as much more
)

// trayDeep and bedDeep, m: below the one malt lies on a tray, from the other on it
// is a deep bed, through which a drying front climbs (common practice).
const trayDeep, bedDeep = 0.15, 0.30

// peak is the hottest that a kiln step asks for, as written.
func peak(s model.Step) (q quantity.Quantity, place source.Place, ok bool) {
	for _, at := range []*model.Temperature{s.Warmth().At, s.Warmth().From} {
		if at == nil || s.Kind() == model.CoolStep {
			continue
		}
		if at.Low.SI > at.High.SI {
			return at.Low, at.Place, true
		}
		return at.High, at.Place, true
	}
	return q, place, false
}

// hottestStep gives the kiln step that asks for the most heat, or nil.
func (c *Case) hottestStep() (s model.Step, q quantity.Quantity, place source.Place) {
	return hottestOfAll(c.steps(model.KilnStage))
}

// hottestOfAll gives the hottest of steps on a kiln.
func hottestOfAll(steps []model.Step) (s model.Step, q quantity.Quantity, place source.Place) {
	for _, step := range steps {
		if t, at, ok := peak(step); ok && (s == nil || t.SI > q.SI) {
			s, q, place = step, t, at
		}
	}
	return s, q, place
}

// weighed is a bound on moisture or on weight that malt is dried to.
type weighed struct {
	test  *model.Test
	stage model.StageKind
	step  int  // its place among the steps of all kilns; −1 in withering
	hold  bool // a gate; otherwise an until
	low   float64
	high  float64 // SI; low and high are ±Inf where that side is open
}

// dried lists the bounds on a measure from withering to the end of the kiln.
func (c *Case) dried(measure string) []weighed {
	var list []weighed
	for _, st := range model.Every[*model.Withering](c.Process) {
		list = bounds(list, st.Until, measure, weighed{stage: st.Kind(), step: -1})
		for _, s := range st.Steps {
			list = bounds(list, model.Asked(s), measure, weighed{stage: st.Kind(), step: -1, hold: true})
		}
	}
	for i, s := range c.steps(model.KilnStage) {
		list = bounds(list, s.Ends().Until, measure, weighed{stage: model.KilnStage, step: i})
		list = bounds(list, model.Asked(s), measure, weighed{stage: model.KilnStage, step: i, hold: true})
	}
	return list
}

// bounds appends the bounds of a condition on a measure, each made from w.
func bounds(list []weighed, cond *model.Condition, measure string, w weighed) []weighed {
	if cond == nil {
		return list
	}
	for i := range cond.Tests {
		t := &cond.Tests[i]
		if t.Measure != measure || t.Bound == nil {
			continue
		}
		w.test = t
		w.low, w.high = sides(t.Bound)
		list = append(list, w)
	}
	return list
}

// sides gives the values of a bound; a side that is open is infinite.
func sides(b *model.Bound) (low, high float64) {
	low, high = b.Range.Low.SI, b.Range.High.SI
	switch b.Op {
	case quantity.AtLeast, quantity.Above:
		return low, math.Inf(1)
	case quantity.AtMost, quantity.Below:
		return math.Inf(-1), high
	}
	return low, high
}

// heatedAfter tells whether the kiln heats the malt after a step.
func (c *Case) heatedAfter(step int) bool {
	for i, s := range c.steps(model.KilnStage) {
		if _, _, ok := peak(s); ok && i > step {
			return true
		}
	}
	return false
}

// run gives how the forecast runs a kiln step, or nil.
func (c *Case) run(s model.Step) *forecast.Step {
	if c.Forecast == nil {
		return nil
	}
	for i := range c.Forecast.Stages {
		for j := range c.Forecast.Stages[i].Steps {
			if r := &c.Forecast.Stages[i].Steps[j]; r.Place == s.Place() && r.Kind == s.Kind() {
				return r
			}
		}
	}
	return nil
}

// kilned is how the malt fared on the last kiln to its end, or nil.
func (c *Case) kilned() *forecast.Kilned {
	if c.Forecast == nil || c.Forecast.BrokenOff() || len(c.Forecast.Kilns) == 0 {
		return nil
	}
	return &c.Forecast.Kilns[len(c.Forecast.Kilns)-1]
}

// lastKilnHead is the head of the last stage on a kiln.
func (c *Case) lastKilnHead() source.Place {
	if st := model.Last[*model.Kilning](c.Process); st != nil {
		return st.Place()
	}
	return c.Process.Place
}

// kilnHead is the head of the first stage on a kiln.
func (c *Case) kilnHead() source.Place {
	if st := model.First[*model.Kilning](c.Process); st != nil {
		return st.Place()
	}
	return c.Process.Place
}
