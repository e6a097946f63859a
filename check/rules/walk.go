package rules

import (
	"maltwright/lang/model"
	"maltwright/lang/quantity"
)

// zeroC is 0 °C in kelvin; quantities of temperature are in kelvin.
const zeroC = quantity.ZeroCelsius

const (
	hour = 3600.0
	day  = 24 * hour
)

// celsius gives the low and the high end of a temperature in °C.
func celsius(t *model.Temperature) (low, high float64) {
	return min(t.Low.SI, t.High.SI) - zeroC, max(t.Low.SI, t.High.SI) - zeroC
}

// hottest is the hottest that a kiln step asks for, °C; ok is false where it asks for nothing.
func hottest(s model.Step) (t float64, ok bool) {
	for _, at := range []*model.Temperature{s.Warmth().At, s.Warmth().From} {
		if at != nil && s.Kind() != model.CoolStep {
			_, high := celsius(at)
			return high, true
		}
	}
	return 0, false
}

// wetSteps lists the soaks, rests and gates of the steeps in order, those of a repeat
// once for each time it may run.
func (c *Case) wetSteps() (list []model.Step) {
	for _, st := range model.Every[*model.Steep](c.Process) {
		list = append(list, unrolled(st.Steps)...)
	}
	return list
}

// mostUnrolled bounds what a repeat of many times is unrolled to.
const mostUnrolled = 200

func unrolled(steps []model.Step) []model.Step {
	var list []model.Step
	for _, s := range steps {
		r, ok := s.(*model.Repeat)
		if !ok {
			list = append(list, s)
			continue
		}
		times := 1
		if r.Times != nil {
			times = int(r.Times.Range.High.SI)
		}
		inner := unrolled(r.Steps)
		for i := 0; i < times && len(list) < mostUnrolled; i++ {
			list = append(list, inner...)
		}
	}
	return list
}

// lasts is the time a step is given, or the latest it may take, s; ok is false where
// neither is said.
func lasts(s model.Step) (seconds float64, ok bool) {
	end, over := s.Ends(), s.Warmth().Over
	switch {
	case end.For != nil:
		return end.For.SI, true
	case over != nil && !model.HeldOn(end, s.Warmth()):
		return over.SI, true
	case end.Allow != nil && end.Allow.Latest != nil:
		return end.Allow.Latest.SI, true
	}
	return 0, false
}

// bound gives the first test of a condition that asks for the measure, or nil.
func asked(cond *model.Condition, measure string) *model.Test {
	if cond == nil {
		return nil
	}
	for i := range cond.Tests {
		if cond.Tests[i].Measure == measure {
			return &cond.Tests[i]
		}
	}
	return nil
}
