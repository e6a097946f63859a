package rules

import (
	"fmt"
	"strings"

	"maltwright/lang/finding"
	"maltwright/lang/model"
	"maltwright/sim/forecast"
)

var vesselTooSmall = Rule{
	Forecast: true,
	Rule: finding.Rule{Name: "vessel-too-small", Severity: finding.Fault,
		Title: "the grain and its water do not fit the vessel",
		Why:   "grain swells by two fifths as it steeps; grain above the water stays dry, and tightly pressed grain has no air",
		Do:    "steep less grain, or use a larger vessel",
		Bad: `from 4 kg of "base lot"
vessel "base tub" { holds 7 l }`,
		Good: `from 4 kg of "base lot"
vessel "base tub" { holds 12 l }`,
		Limits: "it assumes 1.5 l of water for a kg of grain, enough to stand a hand above it; the room under a false bottom " +
			"must be left out of what the vessel holds" + assumedOnly},
	Judge: func(r finding.Rule, c *Case) {
		for _, st := range model.Every[*model.Steep](c.Process) {
			c.vesselFull(r, st)
		}
	},
}

// vesselFull reports the vessel of a steep that does not hold its grain.
func (c *Case) vesselFull(r finding.Rule, st *model.Steep) {
	holds := st.Room()
	if holds == nil {
		c.NotJudged(r, "no vessel is named, or it does not say what it holds")
		return
	}
	for _, t := range forecast.Troubles[forecast.VesselFull](c.Forecast) {
		if t.Place != st.Place() {
			continue
		}
		f := r.At(t.Place, fmt.Sprintf("the swollen grain with its water needs %s, and %s",
			holds.Like(t.Need), holding(st, holds)))
		if charge := c.Process.Charge; charge != nil && t.Need > 0 {
			f.Hint = fmt.Sprintf("it takes %s of this grain with its water: steep less, or use a larger vessel", charge.Like(charge.SI*holds.SI/t.Need))
		}
		for _, v := range st.Vessels() {
			f.Related = append(f.Related, finding.Related{Place: v.Place, Message: "the vessel"})
		}
		if t.Grain < holds.SI { // what is too much is the water
			f = c.rests(r, f, soakKnown...)
		}
		c.Note(f)
	}
}

// holding says what the vessels of a steep hold.
func holding(st *model.Steep, holds *model.Quantity) string {
	var names []string
	for _, v := range st.Vessels() {
		names = append(names, fmt.Sprintf("%q", v.Name))
	}
	if len(names) == 1 {
		return fmt.Sprintf("%s holds %s", names[0], holds)
	}
	return fmt.Sprintf("%s hold %s together", strings.Join(names, " and "), holds)
}
