package rules

import (
	"fmt"

	"maltwright/lang/finding"
	"maltwright/lang/model"
)

var freezingWater = Rule{
	Rule: finding.Rule{Name: "freezing-water", Severity: finding.Caution, // a fault at the freezing point
		Title:  "the steep water is near freezing",
		Why:    "near 0 °C grain hardly drinks and does not wake; ice bursts tubs and taps, and breaks the wet kernel (common practice)",
		Do:     "bring the tub indoors, or warm the water to 8 °C and more",
		Bad:    `soak 8 h in water at 2 °C`,
		Good:   `soak 8 h in water at 10 °C`,
		Limits: "it takes the middle of the site's water temperature; it does not follow a tub that cools in a frosty night"},
	Judge: func(r finding.Rule, c *Case) {
		for _, w := range onceEach(c.wettings(), model.SoakStep) {
			low, high, place, ok := c.warmth(w.step)
			switch {
			case !ok || low >= nearIce:
			case high <= 0:
				f := r.At(place, fmt.Sprintf("steep water of %s freezes", c.Degrees(high)))
				f.Severity = finding.Fault
				c.Note(f)
			default:
				c.Note(r.At(place, fmt.Sprintf("steep water of %s is near freezing, and %s is the least", c.Degrees(low), c.Degrees(nearIce))))
			}
		}
	},
}

// nearIce is the coldest water that anybody steeps in (common practice), °C.
const nearIce = 4.0
