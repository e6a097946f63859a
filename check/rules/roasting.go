package rules

import (
	"fmt"

	"maltwright/lang/finding"
	"maltwright/lang/model"
	"maltwright/lang/quantity"
	"maltwright/lang/source"
)

// What the rules of roasting share. A roast is called so, or is hotter than anything that
// is dried, stewed or cured.
const (
	roastFrom = 140.0 // °C (common practice: caramel malt is cured at up to 140 °C)
	smokesAt  = 180.0 // °C of malt that smokes and goes on warming itself (common practice)
	catchesAt = 200.0 // °C about which malt and its dust catch fire (common practice of roasters)
)

// roast is a step in which malt is roasted, and how hot, as it is written.
type roast struct {
	model.Step
	top   quantity.Quantity
	place source.Place
}

// roastsOf lists the roasts of a stage.
func roastsOf(st *model.Kilning) (list []roast) {
	for _, s := range st.Steps {
		if top, place, ok := peak(s); ok && (s.Kind() == model.RoastStep || top.SI-zeroC > roastFrom+sameHeat) {
			list = append(list, roast{s, top, place})
		}
	}
	return list
}

// hottestRoast is the hottest of the roasts of a stage; ok is false where nothing is roasted.
func hottestRoast(st *model.Kilning) (hot roast, ok bool) {
	for _, r := range roastsOf(st) {
		if !ok || r.top.SI > hot.top.SI {
			hot, ok = r, true
		}
	}
	return hot, ok
}

// reached is how hot the forecast has the malt of a stage come in all its steps, as the roast is
// written where it is no less; short tells that it is.
func (c *Case) reached(st *model.Kilning, r roast) (t quantity.Quantity, short bool) {
	for _, s := range st.Steps {
		if given, _, _, ok := c.given(s); ok && (t.Unit() == "" || given.SI > t.SI) {
			t = given
		}
	}
	if t.Unit() == "" || t.SI >= r.top.SI-givenBy {
		return r.top, false
	}
	return t, true
}

// roastedAt writes how hot a roast is: as it is set, and what the forecast comes to where that is
// less. Both are told of a danger, for a heater may be stronger than it says.
func (c *Case) roastedAt(st *model.Kilning, r roast) string {
	if t, short := c.reached(st, r); short {
		return fmt.Sprintf("%s (by the forecast it reaches %s)", r.top, t)
	}
	return r.top.String()
}

// at is a finding at the heat of a roast.
func (r roast) at(of finding.Rule, message string) finding.Finding { return of.At(r.place, message) }
