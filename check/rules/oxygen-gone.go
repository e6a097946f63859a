package rules

import (
	"fmt"
	"math"

	"maltwright/lang/finding"
	"maltwright/lang/model"
	"maltwright/lang/source"
	"maltwright/lang/vocabulary"
	"maltwright/sim/forecast"
)

var oxygenGone = Rule{
	Forecast: true,
	Rule: finding.Rule{Name: "oxygen-gone", Severity: finding.Caution,
		Title: "the grain stands long in water that has lost its oxygen",
		Why: "grain breathes from the first hour; in still water it uses up the oxygen, then sours, and in the end drowns (Kent and Evers, Technology of Cereals). " +
			"One immersion of up to 24 h made friable malt in one study (Bryce et al. 2010, J. Inst. Brew. 116:125) and poor malt in another (Swanston and Middlefell-Williams 2012, J. Inst. Brew., doi 10.1002/jib.21)",
		Do:   "shorten the soak, change the water, or stir air into it: with air, or aerate at intervals",
		Bad:  "soak 6 h in water at 13 °C\nrest 10 h in air at 14 °C\nsoak 7 h in water at 13 °C\nrest 9 h in air at 14 °C\nsoak 9 h in water at 15 °C",
		Good: "soak 6 h in water at 13 °C\nrest 10 h in air at 14 °C\nsoak 7 h in water at 13 °C\nrest 9 h in air at 14 °C\nsoak 9 h in water at 15 °C with air",
		Limits: "it assumes 1.5 l of water for a kg of grain, and that grain needs ten times as much oxygen in its third soak as in its first; " +
			"the bottom of a deep vessel runs out sooner, and water stirred by hand later"},
	Judge: func(r finding.Rule, c *Case) {
		most := c.Limit(vocabulary.LimitAirless, airlessUsual(c))
		for _, t := range worstOfEach(forecast.Troubles[forecast.OxygenGone](c.Forecast)) {
			if t.Airless > most {
				soak, stands := c.stepAt(t.Place), math.Round(t.Airless/360)*360 // to a tenth of an hour
				f := r.At(t.Place, fmt.Sprintf("in soak %d the grain stands %s in water without oxygen, and %s is the most", t.Soak, lasting(soak, stands), lasting(soak, most)))
				sooner := math.Ceil((t.Airless-most)/360) * 360
				f.Hint = fmt.Sprintf("drain it %s sooner, change the water in between, or %s", lasting(soak, sooner), c.moreAir(t.Place))
				c.Note(f)
			}
		}
	},
}

// moreAir says how a soak that loses its oxygen gets more air.
func (c *Case) moreAir(soak source.Place) string {
	for _, st := range model.Every[*model.Steep](c.Process) {
		if st.Aerate == nil || stepAt(st.Steps, soak) == nil {
			continue
		}
		return "blow air through more often or for longer than " + st.Aerate.For.String() + " every " + st.Aerate.Every.String()
	}
	return "blow air through: with air"
}

// stepAt is the step that stands at a place; nil for none.
func (c *Case) stepAt(place source.Place) model.Step {
	for _, st := range c.Process.Stages {
		for _, s := range model.EveryStep(model.StepsOf(st)) {
			if s.Place() == place {
				return s
			}
		}
	}
	return nil
}

// worstOfEach keeps one trouble for each place: of a soak in a repeat the worst time.
func worstOfEach(list []forecast.OxygenGone) []forecast.OxygenGone {
	var kept []forecast.OxygenGone
next:
	for _, t := range list {
		for i := range kept {
			if kept[i].Place == t.Place {
				if t.Airless > kept[i].Airless {
					kept[i] = t
				}
				continue next
			}
		}
		kept = append(kept, t)
	}
	return kept
}

// airlessUsual is the longest that a grain may stand without oxygen where the
// house says nothing: 6.5 h, and a day for the grains that are soaked for 18 to 24 h
// at a stretch (common practice).
func airlessUsual(c *Case) float64 {
	if c.Profile.SoakLong > 12 {
		return 24 * hour
	}
	return 6.5 * hour
}
