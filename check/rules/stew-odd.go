package rules

import (
	"fmt"

	"maltwright/lang/finding"
	"maltwright/lang/model"
)

var stewOdd = Rule{
	Rule: finding.Rule{Name: "stew-odd", Severity: finding.Caution,
		Title:  "malt is stewed too hot, or after it is dry",
		Why:    "in stewing the enzymes of the kernel turn its starch to sugar: they need water, and die at 75 to 80 °C (published home practice stews at 68 to 73 °C and near 50 % moisture)",
		Do:     "stew the green malt before it is dried, at 60 to 75 °C",
		Bad:    "make caramel malt\nstew at malt 95 °C for 90 min\ndry at air-on 60 °C until moisture at most 12 % allow 3 to 16 h\ncure at air-on 98 °C for 2 h",
		Good:   "make caramel malt\nstew at malt 65 °C for 90 min\ndry at air-on 60 °C until moisture at most 12 % allow 3 to 16 h\ncure at air-on 98 °C for 2 h",
		Limits: "Where there is no forecast, a drying step before it counts as dry."},
	Judge: func(r finding.Rule, c *Case) {
		dried := false
		for _, s := range c.steps(model.KilnStage) {
			dried = dried || s.Kind() == model.DryStep || s.Kind() == model.CureStep
			if s.Kind() != model.StewStep {
				continue
			}
			if top, place, ok := peak(s); ok && top.SI-zeroC > stewHottest+sameHeat {
				c.Note(r.At(place, fmt.Sprintf("the malt is stewed at %s, and above %s its enzymes die", top, top.Like(stewHottest+zeroC))))
				continue
			}
			switch run := c.run(s); {
			case run != nil && run.MoistureStart < stewWet:
				c.Note(r.At(s.Place(), fmt.Sprintf("the malt is stewed at %s moisture, and it needs at least %s", Percent(run.MoistureStart), Percent(stewWet))))
			case run == nil && dried:
				c.Note(r.At(s.Place(), "the malt is stewed after a step that dries it, and it must be wet"))
			}
		}
	},
}

// stewHottest, °C, and stewWet, wet basis, are the hottest and the driest at which
// stewing does anything (common practice).
const (
	stewHottest = 80.0
	stewWet     = 0.30
)
