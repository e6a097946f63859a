package rules

import (
	"fmt"

	"maltwright/lang/finding"
	"maltwright/lang/model"
	"maltwright/lang/quantity"
	"maltwright/lang/source"
	"maltwright/sim/forecast"
)

var noCooling = Rule{
	Rule: finding.Rule{Name: "no-cooling", Severity: finding.Caution,
		Title: "the malt comes off the kiln hot",
		Why:   "malt that is heaped up or packed hot goes on colouring and losing enzymes for hours, and draws damp as it cools (common practice)",
		Do:    "end the kiln with room air: cool to malt 30 °C",
		Bad: `kiln in "base kiln" {
  dry at air-on 50 °C until moisture at most 10 % allow 6 to 24 h
  gate moisture at most 10 % allow 0 to 12 h
  cure at air-on 82 °C for 5 h
}`,
		Good: `kiln in "base kiln" {
  dry at air-on 50 °C until moisture at most 10 % allow 6 to 24 h
  gate moisture at most 10 % allow 0 to 12 h
  cure at air-on 82 °C for 5 h
  cool to malt 30 °C
}`,
		Limits: "A kiln that ends at 45 °C or below counts as cool enough. A cooling that runs out of time is judged by the warmest of the malt; up to 45 °C it is a note."},
	Judge: func(r finding.Rule, c *Case) {
		c.stillWarm(r)
		top, place, cooled, ok := c.leaves()
		if !ok || top.SI-zeroC <= handWarm+sameHeat {
			return
		}
		said := fmt.Sprintf("the malt is heated to %s and not cooled before it comes off the kiln", top)
		if cooled {
			said = fmt.Sprintf("the malt is cooled only to %s, and comes off the kiln warmer than %s", top, top.Like(handWarm+zeroC))
		}
		c.Note(r.At(place, said))
	},
}

// stillWarm tells of coolings whose time is over too soon.
func (c *Case) stillWarm(r finding.Rule) {
	if c.Forecast == nil {
		return
	}
	for _, t := range c.Forecast.Trouble {
		t, ok := t.(forecast.StillWarm)
		if !ok {
			continue
		}
		f := r.At(t.Where(), c.said(t))
		f.Hint = "give it more time, or more air; or spread it to cool once it is off the kiln"
		if t.Malt <= handWarm {
			f.Severity = finding.Note
		}
		c.Note(f)
	}
}

// handWarm is the temperature, °C, at which malt may be heaped up.
const handWarm = 45.0

// leaves gives the temperature of the last step on the kiln, and whether it cools.
func (c *Case) leaves() (t quantity.Quantity, place source.Place, cooled, ok bool) {
	for _, s := range c.steps(model.KilnStage) {
		cool, cools := s.(*model.Cool)
		switch {
		case cools && cool.To != nil:
			t, place, cooled, ok = cool.To.High, cool.To.Place, true, true
		case cools:
			ok = false // cooled, to what room air gives
		case s.Kind() != model.GateStep:
			if q, at, _, heats := c.given(s); heats {
				t, place, cooled, ok = q, at, false, true
			}
		}
	}
	return t, place, cooled, ok
}
