package rules

import (
	"fmt"

	"maltwright/lang/finding"
	"maltwright/lang/model"
)

var witherTooWarm = Rule{
	Rule: finding.Rule{Name: "wither-too-warm", Severity: finding.Caution, // a fault where nothing grows, and no forecast is made
		Title: "the air is too warm for withering",
		Why:   "a withering piece is alive and wet: in warm air it grows wild, heats and goes sour before it is dry; 15 to 25 °C is usual, and warmer drying belongs on the kiln (common practice)",
		Do:    "wither it cooler, or dry it on the kiln: dry at air-on 35 °C",
		Bad: `wither on "base floor" {
  air at 44 to 46 °C
  turn every 6 h
  until moisture at most 38 %
  allow 1 to 30 h
}`,
		Good: `wither on "base floor" {
  air at 18 to 20 °C
  turn every 6 h
  until moisture at most 38 %
  allow 4 to 30 h
}`,
		Limits: "It judges the air that the process sets, not the sun on the piece. Warm-country grains may be withered 8 °C warmer than they grow."},
	Judge: func(r finding.Rule, c *Case) {
		for _, st := range model.Every[*model.Withering](c.Process) {
			if st.Air != nil {
				c.witheredWarm(r, st.Air)
			}
			for _, a := range st.Blown {
				c.witheredWarm(r, &a.At)
			}
		}
	},
}

// witheredWarm reports air that is too warm for a wet piece.
func (c *Case) witheredWarm(r finding.Rule, air *model.Temperature) {
	most := max(30, c.Profile.Grows.High+8)
	_, high := celsius(air)
	if high <= most+sameHeat {
		return
	}
	f := r.At(air.Place, fmt.Sprintf("the piece is withered in air at %s, and %s is the most for wet %s", air.High, air.High.Like(most+zeroC), c.Profile.Grain.Name))
	if hint, ok := fahrenheitMeant(air.String(), high); ok {
		f.Hint = hint
	}
	if air.Mid()-zeroC > growsNone {
		f.Severity = finding.Fault
		f.Message += "; there is no forecast of air so warm"
	}
	c.Note(f)
}

// growsNone is the air, °C, above which the models of a living piece do not hold.
const growsNone = 45.0
