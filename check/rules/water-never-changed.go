package rules

import (
	"fmt"
	"slices"

	"maltwright/lang/finding"
	"maltwright/lang/model"
)

var waterNeverChanged = Rule{
	Rule: finding.Rule{Name: "water-never-changed", Severity: finding.Caution,
		Title: "the whole steep stands in one water",
		Why:   "the first water takes up dirt, tannin of the husk and what lives on it; the grain lies in that brew, and it froths and smells (common practice)",
		Do:    "drain it after some hours, give the grain air, and go on in fresh water",
		Bad: `steep in "base tub" to moisture 42 to 46 % {
  soak 36 h in water at 13 °C with air
}`,
		Good: usualSteep,
		Limits: "air alone does not keep the water clean, so it speaks of aerated soaks; a long soak in still water is soak-too-long or oxygen-gone. " +
			"An overflow changes the water all the time, however little runs"},
	Judge: func(r finding.Rule, c *Case) {
		for _, steep := range c.eachSteep() {
			soaks := slices.DeleteFunc(slices.Clone(steep), func(w wetting) bool { return w.step.Kind() != model.SoakStep })
			if len(soaks) != 1 || !c.aired(soaks[0]) || soaks[0].step.(*model.Soak).Overflow != nil {
				continue
			}
			if most := max(waterKeeps, c.Profile.SoakLong*hour); soaks[0].seconds > most {
				c.Note(r.At(timeAt(soaks[0].step), fmt.Sprintf("the one water of the steep is not changed for %s, and %s is the most", lasting(soaks[0].step, soaks[0].seconds), lasting(soaks[0].step, most))))
			}
		}
	},
}

// waterKeeps is how long steep water stays fit, where no longer soak is usual for the
// grain (common practice).
const waterKeeps = 12 * hour
