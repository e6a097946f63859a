package rules

import (
	"fmt"

	"maltwright/lang/finding"
	"maltwright/lang/model"
	"maltwright/lang/source"
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
			"It does not tell of water that would only now and then be given"},
	Judge: func(r finding.Rule, c *Case) {
		for i, p := range c.Forecast.Pieces {
			if p.Blown != nil {
				c.idleAir(r, p.Blown.Never, p.Blown.Behind)
			}
			st, ok := c.stageAt(p.Place).(*model.Germination)
			if ok && i == 0 && st.Sprinkle != nil && st.Sprinkle.When != nil && len(c.Forecast.Sprinkled) == 0 {
				when := st.Sprinkle.When
				c.Note(r.At(when.Place, fmt.Sprintf("%s never holds, so that nothing is sprinkled", when.Place.Text())))
			}
			if piece := model.PieceOf(c.stageAt(p.Place)); p.Blown != nil && p.Blown.Stood == 0 && piece != nil && piece.Humidity != nil {
				f := r.At(piece.Humidity.Place, "the air right over the piece is what comes off the bed, and the fan never stands")
				f.Hint = "of the air that is blown write: humidity air-on " + piece.Humidity.Place.Text()
				c.Note(f)
			}
		}
	},
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

// stageAt is the stage whose head stands at a place, or nil.
func (c *Case) stageAt(at source.Place) model.Stage {
	for _, st := range c.Process.Stages {
		if st.Place() == at {
			return st
		}
	}
	return nil
}
