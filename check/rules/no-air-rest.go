package rules

import (
	"fmt"

	"maltwright/lang/finding"
	"maltwright/lang/process"
)

var noAirRest = Rule{
	Rule: finding.Rule{Name: "no-air-rest", Severity: finding.Caution,
		Title: "soak follows soak with no rest in air",
		Why:   "drained grain breathes, gives off its carbon dioxide and drinks the film on its husk; without a rest it chits late and unevenly (common practice)",
		Do:    "drain it between the soaks and let it lie in air for 6 to 12 h",
		Bad: `steep in "base tub" to moisture 42 to 46 % {
  soak 9 h in water at 12 °C
  soak 9 h in water at 12 °C
}`,
		Good: `steep in "base tub" to moisture 42 to 46 % {
  soak 6 h in water at 13 °C
  rest 10 h in air at 14 °C
  soak 7 h in water at 13 °C
  rest 9 h in air at 14 °C
  soak 6 h in water at 13 °C
}`,
		Limits: "one soak that does it all is quick oats, or soak-too-long or water-never-changed. Soaks that all have air blown through are left alone, " +
			"and so are rests too short to help"},
	Judge: func(r finding.Rule, c *Case) {
		soaks, wet, still := 0, 0.0, false
		for _, w := range c.wettings() {
			if w.step.Kind == process.Rest {
				return
			}
			soaks++
			wet += w.seconds
			still = still || !w.step.Aerated
		}
		if most := 1.5 * c.Profile.SoakLong * hour; soaks > 1 && still && wet > most {
			st := c.Process.Stage(process.Steep)
			c.Note(r.At(st.Place, fmt.Sprintf("%d soaks keep the grain under water for %s with no rest in air", soaks, Hours(wet))))
		}
	},
}
