package rules

import (
	"fmt"
	"slices"

	"maltwright/lang/finding"
	"maltwright/lang/model"
	"maltwright/lang/quantity"
	"maltwright/lang/vocabulary"
	"maltwright/sim/forecast"
)

var boxLineIdle = Rule{
	Forecast: true,
	Rule: finding.Rule{Name: "box-line-idle", Severity: finding.Caution,
		Title: "water or air that waits for a condition that is never met",
		Why:   "water or air whose condition is never met does nothing; nor does air that stands behind air that is always on, since the first whose condition is met is on (by definition)",
		Do:    "look at the value, and at the order of the lines",
		Bad: `germinate on "base tray" {
  hold bed at 14 to 16 °C
  sprinkle to moisture 45 % when moisture below 12 %
  turn every 8 h
  until acrospire at least 3/4 and rub is chalky
  allow 4 to 8 days
}`,
		Good: `germinate on "base tray" {
  hold bed at 14 to 16 °C
  humidity 95 to 99 %
  sprinkle to moisture 45 % when moisture below 44 %
  turn every 8 h
  until acrospire at least 3/4 and rub is chalky
  allow 4 to 8 days
}`,
		Limits: "it goes by the forecast of the middle: where a condition is nearly met, a warmer season may meet it. " +
			"It does not report water that is given now and then, nor water that waits for a moisture up to five points below the forecast: that is held ready"},
	Judge: func(r finding.Rule, c *Case) {
		for _, p := range c.Forecast.Pieces {
			st, growing := p.Of.(*model.Germination)
			if growing && st.Sprinkle != nil && st.Sprinkle.When != nil && !c.sprinkledOn(&p) && !prudent(st.Sprinkle.When, &p) {
				when := st.Sprinkle.When
				c.Note(r.At(when.Place, fmt.Sprintf("%s is never met, so nothing is sprinkled", when.Place.Text())))
			}
			if growing && st.Sprinkle != nil {
				c.sprinkledTooLittle(r, st.Sprinkle)
			}
			if p.Blown == nil {
				continue
			}
			c.idleAir(r, p.Blown.Never, p.Blown.Behind)
			if over := model.PieceOf(p.Of).Humidity; growing && p.Blown.Stood == 0 && over != nil {
				f := r.At(over.Place, "the fan never stops, so the air over the piece is what comes off the bed")
				f.Hint = "for the air that is blown, write: humidity air-on " + over.Place.Text()
				c.Note(f)
			}
		}
	},
}

// prudentBy is by how much moister than what water waits for a piece may stay by the forecast, of
// the whole weight, for the water to be held ready for a dry season (common practice).
const prudentBy = 0.05

// prudent tells whether water waits for a moisture that a drier season brings about.
func prudent(when *model.Condition, p *forecast.Piece) bool {
	return slices.ContainsFunc(when.Tests, func(t model.Test) bool {
		return t.Measure == vocabulary.MeasureMoisture && t.Bound != nil && p.Driest-t.Bound.Range.High.SI <= prudentBy
	})
}

// sprinkledTooLittle reports water that brings a piece no further than to where it is
// waited for.
func (c *Case) sprinkledTooLittle(r finding.Rule, s *model.Sprinkle) {
	if s.To == nil || s.When == nil {
		return
	}
	for _, t := range s.When.Tests {
		if t.Measure == vocabulary.MeasureMoisture && t.Bound != nil && t.Bound.Range.High.SI >= s.To.SI && (t.Bound.Op == quantity.Below || t.Bound.Op == quantity.AtMost) {
			f := r.At(s.To.Place, fmt.Sprintf("sprinkling to %s when %s leaves the bed below the moisture at which it begins", s.To, t.Place.Text()))
			f.Hint = "sprinkle to a moisture above the one at which it begins"
			c.Note(f)
		}
	}
}

// sprinkledOn tells whether a piece was sprinkled.
func (c *Case) sprinkledOn(p *forecast.Piece) bool {
	return slices.ContainsFunc(c.Forecast.Sprinkled, func(s forecast.Sprinkling) bool { return s.At >= p.Began && s.At <= p.Began+p.Took })
}

func (c *Case) idleAir(r finding.Rule, never, behind []*model.Air) {
	for _, a := range never {
		if a.When != nil {
			c.Note(r.At(a.When.Place, fmt.Sprintf("%s is never met, so this air is never blown", a.When.Place.Text())))
		}
	}
	for _, a := range behind {
		f := r.At(a.Place(), "this air is never blown: air in front of it is always on")
		f.Hint = "move this line in front, or write into the other when it is on"
		c.Note(f)
	}
}
