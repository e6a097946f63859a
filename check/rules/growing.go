package rules

import (
	"slices"

	"maltwright/lang/model"
	"maltwright/lang/quantity"
	"maltwright/lang/source"
	"maltwright/lang/vocabulary"
	"maltwright/sim/forecast"
)

// What the rules of the growing piece look at.

// holds lists the holds of the germination that say how warm.
func (c *Case) holds() []*model.Hold { return holdsOf(c.steps(model.GerminateStage)) }

// holdsOf lists the holds among the steps that say how warm. One that leads the bed from
// one temperature to another stands there with the band of both.
func holdsOf(steps []model.Step) (list []*model.Hold) {
	for _, s := range model.Only[*model.Hold](steps) {
		if s.At == nil && s.From != nil {
			led, band := *s, *s.From
			if band.Low.SI > band.High.SI {
				band.Low, band.High = band.High, band.Low
			}
			led.At = &band
			s = &led
		}
		if s.At != nil {
			list = append(list, s)
		}
	}
	return list
}

// growWarm is the warmest that the piece may get, °C, as usual or as the house moved it.
func (c *Case) growWarm() float64 {
	return c.Limit(vocabulary.LimitBed, c.Profile.GrowWarm()+zeroC) - zeroC
}

// sameWarmth is by how much two temperatures count as one, K: finer than is written.
const sameWarmth = 0.05

// middle is the middle of a temperature, °C.
func middle(t *model.Temperature) float64 { return t.Mid() - zeroC }

// ofRoom tells whether a hold is of the room or its air, and not of the bed.
func ofRoom(t *model.Temperature) bool {
	return t.Where == vocabulary.PlaceRoom || t.Where == vocabulary.PlaceAir
}

// goals lists the tests by which a stage, or a step of it, ends or goes on.
func goals(st model.Stage) []model.Test {
	var list []model.Test
	add := func(cond *model.Condition) {
		if cond != nil {
			list = append(list, cond.Tests...)
		}
	}
	add(st.Ends().Until)
	for _, s := range model.StepsOf(st) {
		add(s.Ends().Until)
		add(model.Asked(s))
	}
	return list
}

// looksAt tells whether a stage waits for one of the measures.
func looksAt(st model.Stage, measures ...string) bool {
	return st != nil && slices.ContainsFunc(goals(st), func(t model.Test) bool { return slices.Contains(measures, t.Measure) })
}

// waitsFor is the least length that a test waits for; ok is false where it waits for none.
func waitsFor(t *model.Test) (length float64, ok bool) {
	if t.Bound == nil || t.Bound.Op == quantity.AtMost || t.Bound.Op == quantity.Below {
		return 0, false
	}
	return t.Bound.Range.Low.SI, true
}

// grown gives how the piece fared where it grew, of several floors at the end of the last
// with the time on all of them, and at the end of withering, if there is any.
func (c *Case) grown() (floor, last *forecast.Piece) {
	for i := range c.Forecast.Pieces {
		p := &c.Forecast.Pieces[i]
		if p.Stage == model.GerminateStage {
			now := *p
			if floor != nil {
				now.Began, now.Took = floor.Began, floor.Took+p.Took
			}
			floor, last = &now, &now
			continue
		}
		last = p
	}
	return floor, last
}

// timeOf is where a stage says how long it takes.
func timeOf(st model.Stage) source.Place {
	switch {
	case st.Ends().For != nil:
		return st.Ends().For.Place
	case st.Ends().Allow != nil:
		return st.Ends().Allow.Place
	}
	return st.Place()
}
