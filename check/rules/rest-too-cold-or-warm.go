package rules

import (
	"fmt"

	"maltwright/lang/finding"
	"maltwright/lang/model"
)

var restTemperature = Rule{
	Rule: finding.Rule{Name: "rest-too-cold-or-warm", Severity: finding.Caution, // a fault where it is hot or freezes
		Title: "a rest of the steep is too cold or too warm for the grain",
		Why:   "in its rests the grain wakes: too cold and it sleeps on, so that the next soak only drowns it, too warm and it chits unevenly, heats and dries out (common practice)",
		Do:    "let it rest where growing grain would be comfortable too",
		Bad:   `rest 10 h in air at 26 °C`,
		Good:  `rest 10 h in air at 15 °C`,
		Limits: "a rest of less than two hours is only draining, and is left alone; of a site's air it takes the middle. " +
			"Drained grain that heats itself in a deep vessel is not followed"},
	Judge: func(r finding.Rule, c *Case) {
		usual := c.Profile.Rest
		for _, w := range onceEach(c.wettings(), model.RestStep) {
			low, high, place, ok := c.warmth(w.step)
			if !ok || w.seconds < draining || low >= usual.Low-1e-6 && high <= usual.High+1e-6 {
				continue
			}
			f := r.At(place, fmt.Sprintf("a rest at %s is cold for %s: %s is the least", c.Degrees(low), c.Profile.Grain.Name, c.Degrees(usual.Low)))
			if high > usual.High+1e-6 {
				f = r.At(place, fmt.Sprintf("a rest at %s is warm for %s: %s is the most", c.Degrees(high), c.Profile.Grain.Name, c.Degrees(usual.High)))
			}
			switch {
			case high < 0:
				f.Severity = finding.Fault
				f.Message = fmt.Sprintf("a rest at %s freezes the wet grain", c.Degrees(high))
			case low > c.Profile.GrowsHot:
				f.Severity = finding.Fault
				f.Message += fmt.Sprintf(", and above %s it is lost", c.Degrees(c.Profile.GrowsHot))
			}
			c.Note(f)
		}
	},
}

// draining is how long a rest may be that is none, s.
const draining = 2 * hour
