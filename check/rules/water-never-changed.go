package rules

import (
	"fmt"
	"slices"

	"maltwright/lang/finding"
	"maltwright/lang/model"
)

var waterNeverChanged = Rule{
	Rule: finding.Rule{Name: "water-never-changed", Severity: finding.Caution,
		Title: "the water of the steep is never changed",
		Why:   "the first water takes up dirt, tannin and microbes from the husk; then it froths and smells, with the grain in it (common practice)",
		Do:    "drain it after some hours, give the grain air, and go on in fresh water",
		Bad: `steep in "base tub" to moisture 42 to 46 % {
  soak 36 h in water at 13 °C with air
}`,
		Good: usualSteep,
		Limits: "air alone does not keep the water clean, so it judges aerated soaks; soak-too-long and oxygen-gone judge a long soak in still water. " +
			"An overflow, however small, counts as changing the water all the time"},
	Judge: func(r finding.Rule, c *Case) {
		for _, steep := range c.eachSteep() {
			soaks := slices.DeleteFunc(slices.Clone(steep), func(w wetting) bool { return w.step.Kind() != model.SoakStep })
			if len(soaks) != 1 || !c.aired(soaks[0]) || soaks[0].step.(*model.Soak).Overflow != nil {
				continue
			}
			if most := max(waterKeeps, c.Profile.SoakLong*hour); soaks[0].seconds > most {
				c.Note(r.At(timeAt(soaks[0].step), fmt.Sprintf("the water of the steep is not changed for %s, and %s is the most", lasting(soaks[0].step, soaks[0].seconds), lasting(soaks[0].step, most))))
			}
		}
	},
}

// waterKeeps is how long steep water stays fit, where no longer soak is usual for the
// grain (common practice).
const waterKeeps = 12 * hour
