package rules

import (
	"fmt"
	"strings"

	"maltwright/check/profile"
	"maltwright/lang/finding"
	"maltwright/lang/quantity"
	"maltwright/lang/source"
	"maltwright/lang/vocabulary"
)

var cureTooHotForClaim = Rule{
	Rule: finding.Rule{Name: "cure-too-hot-for-claim", Severity: finding.Caution,
		Title:  "the kiln gets too hot for the malt that the process names",
		Why:    "heat makes colour and destroys enzymes: each malt type has its own band of cures (published malt specifications, common practice)",
		Do:     "cure cooler, or name the malt that this is: make another malt",
		Bad:    "make pilsner malt\ncure at air-on 98 °C for 4 h",
		Good:   "make pilsner malt\ncure at air-on 83 °C for 5 h",
		Limits: "It goes by what the kiln is set to. The forecast of colour is an indication only; the rule reports it from half as much again as the malt type has."},
	Judge: func(r finding.Rule, c *Case) {
		s, top, place := c.hottestStep()
		if s == nil {
			return
		}
		if most := c.Profile.HottestCure(); top.SI-zeroC > most+sameHeat {
			c.tooHot(r, top, place, most)
			return
		}
		band := c.Profile.Malt.Colour
		if c.kilned() == nil || !(c.Forecast.Totals.Quality.Colour > tooDark*band.High) {
			return
		}
		f := r.At(place, fmt.Sprintf("the forecast colour of the malt is about %.0f EBC, and %s malt has %g to %g", c.Forecast.Totals.Quality.Colour, c.Profile.Malt.Name, band.Low, band.High))
		f.Hint = "cure shorter or cooler, or name the malt that this is"
		c.Note(f)
	},
}

const (
	sameHeat = 1.0 // K: as near as a kiln is set
	tooDark  = 1.5 // times the darkest of its type; the forecast of colour is no closer
)

func (c *Case) tooHot(r finding.Rule, top quantity.Quantity, place source.Place, most float64) {
	limit := top.Like(most + zeroC)
	what := c.Profile.Malt.Name + " malt is cured"
	if c.Profile.Grain.CureMost < c.Profile.Malt.Cure.High {
		what = "malt of " + c.Profile.Grain.Name + " is heated"
	}
	f := r.At(place, fmt.Sprintf("%s is hotter than %s: %s at most", top, what, limit))
	if other := curedAt(top.SI - zeroC); other != "" && c.Profile.Grain.Name == vocabulary.GrainBarley {
		f.Hint = fmt.Sprintf("stay at or below %s, or make a malt that is cured so hot: %s malt", limit, other)
	} else {
		f.Hint = "stay at or below " + limit
	}
	c.Note(f)
}

// curedAt names the malt types that are cured at t °C.
func curedAt(t float64) string {
	var names []string
	for _, m := range profile.Malts() {
		if m.Cure.Holds(t) {
			names = append(names, m.Name)
		}
	}
	if n := len(names); n > 1 {
		return strings.Join(names[:n-1], ", ") + " or " + names[n-1]
	}
	return strings.Join(names, "")
}
