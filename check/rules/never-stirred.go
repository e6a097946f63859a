package rules

import (
	"fmt"

	"maltwright/lang/finding"
	"maltwright/lang/model"
	"maltwright/lang/vocabulary"
)

var neverStirred = Rule{
	Forecast: true,
	Rule: finding.Rule{Name: "never-stirred", Severity: finding.Caution,
		Title:  "malt on a tray is roasted and never stirred",
		Why:    "above 100 °C malt on a tray colours unevenly: the kernels at the edge and next to the heat burn while those in the middle stay pale (common practice)",
		Do:     "stir it while it is hot, every 15 to 30 min: stir every 20 min",
		Bad:    "make amber malt\ncure at air-on 109 °C for 3 h",
		Good:   "make amber malt\nstir every 20 min\ncure at air-on 108 °C for 3 h",
		Limits: "With air through the malt, heat of up to 105 °C is not judged: Munich malt is cured so hot. Beds of 15 cm and more, and drums, are not judged."},
	Judge: eachKilning(func(r finding.Rule, c *Case, st *model.Kilning, on *model.Kiln) {
		s, top, place := hottestOfAll(st.Steps)
		k := c.onKiln(st)
		if s == nil || st.Stir != nil || on != nil && on.Tumbles || k == nil || top.SI-zeroC <= unevenFrom(on)+sameHeat {
			return
		}
		if k.Depth < trayDeep {
			c.Note(r.At(place, fmt.Sprintf("malt that lies %s deep is heated to %s and never stirred", c.Process.Units().Depth(k.Depth), top)))
		}
	}),
}

// unevenFrom is the temperature, °C, above which unstirred malt colours unevenly. Air that
// is drawn or blown through it heats it more evenly than a tray in still air does.
func unevenFrom(k *model.Kiln) float64 {
	if k != nil && k.Draught.Text != vocabulary.DraughtStill {
		return munichMost
	}
	return roasts
}

// munichMost is how hot malt is cured unstirred with air through it, °C (common practice
// of Munich malt).
const munichMost = 105.0

// roasts is the temperature, °C, from which malt colours fast.
const roasts = 100.0
