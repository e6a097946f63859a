package read

import (
	"fmt"

	"maltwright/lang/finding"
	"maltwright/lang/model"
	"maltwright/lang/quantity"
	"maltwright/lang/vocabulary"
)

var changeUnfit = rule("change-unfit", fault, "a change to something that the step does not have",
	"the forecast would leave the change out", "look at the step and its number; airflow, returns and smoke are of dry, stew, cure and roast, water is of cool",
	batchOf("  changed soak 1 to returns 50 % because \"the flap\"\n"), batchOf("  changed dry 1 to returns 50 % because \"the flap\"\n"))

// changed reads a step that was done otherwise.
func (r *recorder) changed(s *filled) {
	step, ok := r.step(s, s.slots)
	no, what, to := s.clause("to", 0), s.clause("to", 1), s.clause("to", 2)
	if !ok || !s.whole || to == nil && what == nil || to != nil && r.upright(to) == nil {
		return
	}
	c := model.Change{Place: s.place, Step: step, What: what.chosen(), Without: no != nil, By: s.clause("by", 0).chosen()}
	c.To.Place = c.What.Place
	if to != nil {
		c.To = *to.temperature()
	}
	if why := s.clause("because", 0); why != nil {
		c.Because = why.word
	}
	if !r.unfit(&c) {
		r.batch.Changes = append(r.batch.Changes, c)
	}
}

// unfit reports a change of what the step has not, or of which it is not said what it is of.
func (r *recorder) unfit(c *model.Change) bool {
	kind, text := model.StepKind(c.Step.Kind.Text), c.To.Place.Text()
	f := finding.Finding{}
	switch dim := c.To.Low.Dimension; {
	case dim != quantity.Temperature && c.To.Low.SI < 0:
		f = outOfRange.At(c.To.Place, fmt.Sprintf("%s was changed to %s; it is not less than nothing", kind, text))
	case c.Without && c.What.Text != model.ChangedSmoke:
		f = wordsTooMany.At(c.Place, fmt.Sprintf("%q stands in front of smoke alone", vocabulary.SaidNo))
	case c.What.Text == model.ChangedAirflow && dim != quantity.Flow, c.What.Text == model.ChangedReturns && dim != quantity.Share:
		f = wrongDimension.At(c.To.Place, fmt.Sprintf("%s is %s, and %s is wanted behind %s", text, withArticle(dim.String()), withArticle(withMuch[c.What.Text].of.String()), c.What.Text))
	case c.What.Text == model.ChangedSmoke && c.To.Low.Dimension != quantity.Number:
		f = wordsTooMany.At(c.To.Place, fmt.Sprintf("smoke has no place for %s", text))
	case c.What.Text == "" && (dim == quantity.Flow || dim == quantity.Share):
		word := map[quantity.Dimension]string{quantity.Flow: model.ChangedAirflow, quantity.Share: model.ChangedReturns}[dim]
		f = valueNeeded.At(c.To.Place, fmt.Sprintf("%s does not say of what it is", text))
		f.Write(c.To.Place, word+" "+text)
		f.Hint += ", if that is meant"
	case c.OfWater() && kind != model.CoolStep:
		f = changeUnfit.At(c.To.Place, fmt.Sprintf("%s has no water that could be changed to %s", kind, text))
	case c.OfWater() && c.To.Where != "" && c.To.Where != vocabulary.WithWater:
		f = wordsTooMany.At(c.To.Place, fmt.Sprintf("%s has no place for %s", text, c.To.Where))
	case (c.What.Text != "") && !model.Heats(kind):
		f = changeUnfit.At(c.To.Place, fmt.Sprintf("%s has no %s that could be changed", kind, c.What.Text))
	default:
		return false
	}
	r.refuse(f)
	return true
}
