package rules

import (
	"fmt"

	"maltwright/lang/finding"
	"maltwright/lang/model"
	"maltwright/lang/vocabulary"
	"maltwright/sim/forecast"
)

var soakTooLong = Rule{
	Rule: finding.Rule{Name: "soak-too-long", Severity: finding.Caution, // a fault where the grain is lost
		Title: "the grain stands too long in the same still water",
		Why: "the grain uses up the oxygen of still water within hours; then it ferments, sours, and drowns after more than a day (common practice). " +
			"One immersion of up to 24 h made friable malt in one study (Bryce et al. 2010, J. Inst. Brew. 116:125) and poor malt in another (Swanston and Middlefell-Williams 2012, J. Inst. Brew., doi 10.1002/jib.21)",
		Do:   "drain it sooner and give it a rest in air, or blow air through: with air, or aerate at intervals",
		Bad:  `soak 14 h in water at 10 °C`,
		Good: "soak 8 h in water at 10 °C\nrest 9 h in air at 14 °C",
		Limits: "it assumes fresh water for each soak. Where air at intervals keeps the oxygen up, it judges the time between two of them. oxygen-gone judges a soak whose oxygen is gone for too long by the forecast, " +
			"and this rule then judges only grain that is lost"},
	Judge: func(r finding.Rule, c *Case) {
		most := c.Limit(vocabulary.LimitSoak, c.Profile.SoakLong*hour)
		for _, w := range onceEach(c.wettings(), model.SoakStep) {
			still := c.still(w)
			if f, ok := drowned(r, c, w, still); ok {
				c.Note(f)
				continue
			}
			if still <= most+60 || c.airless(w.step) {
				continue
			}
			at, from := timeAt(w.step), ""
			if still < w.seconds {
				at, from = w.of.Aerate.Every.Place, " from air to air"
			}
			c.Note(r.At(at, fmt.Sprintf("%s%s is long for %s in still water: %s is the most", lasting(w.step, still), from, c.Profile.Grain.Name, lasting(w.step, most))))
		}
	},
}

// drowned tells of a soak in which the grain is lost, whatever limit the house has: still is
// how long it stands in still water, s.
func drowned(r finding.Rule, c *Case, w wetting, still float64) (finding.Finding, bool) {
	p := c.Profile
	low, _, _, known := c.warmth(w.step)
	for _, lost := range []struct {
		seconds float64
		is      bool
		above   string
	}{{p.SoakLost*hour + 60, true, ""}, {p.TepidLost * hour, known && low > p.TepidWater+sameWarmth, fmt.Sprintf(" above %s", c.Degrees(p.TepidWater))}} {
		if lost.is && still >= lost.seconds {
			f := r.At(timeAt(w.step), fmt.Sprintf("%s in the same still water drowns %s: it is lost after %s%s", lasting(w.step, still), p.Grain.Name, lasting(w.step, lost.seconds), lost.above))
			f.Severity = finding.Fault
			return f, true
		}
	}
	return finding.Finding{}, false
}

// airless tells whether oxygen-gone speaks of the soak.
func (c *Case) airless(s model.Step) bool {
	if c.Forecast == nil {
		return false
	}
	for _, t := range forecast.Troubles[forecast.OxygenGone](c.Forecast) {
		if t.Place == s.Place() && t.Airless > c.Limit(vocabulary.LimitAirless, airlessUsual(c)) {
			return true
		}
	}
	return false
}
