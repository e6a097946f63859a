package rules

import (
	"math"

	"maltwright/lang/model"
	"maltwright/lang/quantity"
	"maltwright/lang/source"
	"maltwright/sim/forecast"
)

// givenBy is by how much less than is asked a kiln must give, K, to be taken at what it
// gives: less is how near it is set.
const givenBy = 2.0

// given is the hottest of a kiln step where its temperature is taken: as it is written, or
// what it comes to where that is less by the forecast; short tells that it is the kiln that lacks.
func (c *Case) given(s model.Step) (t quantity.Quantity, place source.Place, short, ok bool) {
	t, place, ok = peak(s)
	run := c.run(s)
	if !ok || run == nil || !run.Warmest.Known {
		return t, place, false, ok
	}
	gives := run.Warmest.At(placedHeat(s).Where) + zeroC
	if gives >= t.SI-givenBy {
		return t, place, false, true
	}
	early := s.Warmth().From != nil && run.EndedBy == forecast.ByGate // a rise that was dry before its end
	return inDegrees(gives, t), place, !early, true
}

// inDegrees is a temperature, K, to whole °C, in the unit of another.
func inDegrees(kelvin float64, as quantity.Quantity) quantity.Quantity {
	if t, err := quantity.In(math.Round(kelvin-zeroC)+zeroC, as.Unit()); err == nil {
		return t
	}
	return as
}

// hottestGiven gives the kiln step that gets hottest, and how hot, as given tells; nil for
// none.
func (c *Case) hottestGiven() (s model.Step, t quantity.Quantity, place source.Place, short bool) {
	for _, step := range c.steps(model.KilnStage) {
		if q, at, less, ok := c.given(step); ok && (s == nil || q.SI > t.SI) {
			s, t, place, short = step, q, at, less
		}
	}
	return s, t, place, short
}
