package rules

import (
	"fmt"

	"maltwright/lang/finding"
	"maltwright/sim/forecast"
)

var oxygenGone = Rule{
	Forecast: true,
	Rule: finding.Rule{Name: "oxygen-gone", Severity: finding.Caution,
		Title: "the grain stands long in water that has lost its oxygen",
		Why:   "grain breathes from the first hour; in still water it uses the oxygen up, then sours and in the end drowns (Kent and Evers, Technology of Cereals)",
		Do:    "shorten the soak, change the water, or stir air into it: with air"},
	Judge: func(r finding.Rule, c *Case) {
		most := c.Limit("airless-time", airlessUsual(c))
		for _, t := range c.troubles(forecast.OxygenGone) {
			if t.Value > most {
				f := r.At(t.Place, fmt.Sprintf("in %s the grain stands %s in water without oxygen, and %s is the most", t.Detail, Hours(t.Value), Hours(most)))
				c.Note(f)
			}
		}
	},
}

// airlessUsual is the longest that a grain may stand without oxygen where the
// house says nothing: 8 h, and a day for the grains that are soaked for 18 to 24 h
// at a stretch (common practice).
func airlessUsual(c *Case) float64 {
	if c.Profile.SoakLong > 12 {
		return 24 * 3600
	}
	return 8 * 3600
}
