package rules

import (
	"fmt"

	"maltwright/lang/finding"
	"maltwright/lang/model"
	"maltwright/lang/vocabulary"
)

var steepWaterWarm = Rule{
	Rule: finding.Rule{Name: "steep-water-warm", Severity: finding.Caution, // a fault where it is hot for hours
		Title: "the steep water is warm for the grain",
		Why:   "warm water holds less oxygen, and the grain and the microbes on it use more; the water sours, and the kernels chit unevenly or drown (common practice)",
		Do:    "draw cooler water, stand the vessel in the shade or in a bath, or steep at night",
		Bad:   `soak 6 h in water at 18 °C`,
		Good:  `soak 6 h in water at 13 °C`,
		Limits: "it takes the middle of the site's water temperature; it does not follow a tub that warms up as it stands. It also reports a hot rinse of a few minutes " +
			"against microbes on the husk: accept it there"},
	Judge: func(r finding.Rule, c *Case) {
		warm := c.Limit(vocabulary.LimitSteepWater, c.Profile.WarmWater+zeroC) - zeroC
		for _, w := range onceEach(c.wettings(), model.SoakStep) {
			low, high, place, ok := c.warmth(w.step)
			if !ok || high <= warm+1e-6 {
				continue
			}
			f := r.At(place, fmt.Sprintf("steep water of %s is warm for %s: %s is the most", c.Degrees(high), c.Profile.Grain.Name, c.Degrees(warm)))
			if hot := c.Profile.HotWater; low > hot+1e-6 && w.seconds > hotFor {
				f.Severity = finding.Fault
				f.Message = fmt.Sprintf("%s in water of %s is too hot for %s: 4 h is the most above %s", lasting(w.step, w.seconds), c.Degrees(low), c.Profile.Grain.Name, c.Degrees(hot))
			}
			if hint, ok := fahrenheitMeant(place.Text(), high); ok {
				f.Hint = hint
			}
			c.Note(f)
		}
	},
}

// hotFor is how long grain bears hot steep water (common practice), s.
const hotFor = 4 * hour
