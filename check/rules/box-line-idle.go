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
		Title: "water or air that waits for what never holds",
		Why:   "what is given only when something holds, and never comes to hold, does nothing; nor does air behind other air that is always on, since of several the first that holds is on (by definition)",
		Do:    "look at the value, and at which of several stands first",
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
		Limits: "it is judged by the forecast of the middle: where it all but holds, a warmer season may bring it about. " +
			"It does not tell of water that would only now and then be given, nor of water that waits for a moisture of up to five points less than the forecast has: that is held ready"},
	Judge: func(r finding.Rule, c *Case) {
		for _, p := range c.Forecast.Pieces {
			st, growing := p.Of.(*model.Germination)
			if growing && st.Sprinkle != nil && st.Sprinkle.When != nil && !c.sprinkledOn(&p) && !prudent(st.Sprinkle.When, &p) {
				when := st.Sprinkle.When
				c.Note(r.At(when.Place, fmt.Sprintf("%s never holds, so that nothing is sprinkled", when.Place.Text())))
			}
			if growing && st.Sprinkle != nil {
				c.sprinkledTooLittle(r, st.Sprinkle)
			}
			if p.Blown == nil {
				continue
			}
			c.idleAir(r, p.Blown.Never, p.Blown.Behind)
			if over := model.PieceOf(p.Of).Humidity; growing && p.Blown.Stood == 0 && over != nil {
				f := r.At(over.Place, "the air right over the piece is what comes off the bed, and the fan never stands")
				f.Hint = "of the air that is blown write: humidity air-on " + over.Place.Text()
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
			f := r.At(s.To.Place, fmt.Sprintf("sprinkled to %s when %s, the bed stays under what it waits for", s.To, t.Place.Text()))
			f.Hint = "sprinkle to a moisture above that at which it begins"
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
			c.Note(r.At(a.When.Place, fmt.Sprintf("%s never holds, so that this air is never blown", a.When.Place.Text())))
		}
	}
	for _, a := range behind {
		f := r.At(a.Place(), "this air is never blown: air in front of it is always on")
		f.Hint = "put it in front, or say of the other when it is on"
		c.Note(f)
	}
}
