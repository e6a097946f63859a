package rules

import (
	"fmt"

	"maltwright/lang/finding"
	"maltwright/lang/model"
)

var restBeforeSoak = Rule{
	Rule: finding.Rule{Name: "rest-before-soak", Severity: finding.Caution,
		Title: "the steep begins with a rest, and the grain is still dry",
		Why:   "a rest in air lets wet grain breathe and drink the film on its husk; dry grain has nothing to drink, and the rest that wakes it stands between two soaks (common practice)",
		Do:    "put the first soak in front of it",
		Bad: `steep in "base tub" to moisture 42 to 46 % {
  rest 9 h in air at 14 °C
  soak 6 h in water at 13 °C
  rest 10 h in air at 14 °C
  soak 7 h in water at 13 °C
  soak 6 h in water at 13 °C
}`,
		Good:   usualSteep,
		Limits: "it also reports a rest that warms a cold lot before its first soak: accept it there"},
	Judge: func(r finding.Rule, c *Case) {
		for _, s := range c.wetSteps() {
			switch s.Kind() {
			case model.SoakStep:
				return
			case model.RestStep:
				f := r.At(s.Place(), "the grain lies in air before its first soak")
				if t, ok := lasts(s); ok {
					f.Message = fmt.Sprintf("the grain lies in air for %s before its first soak", Hours(t))
				}
				c.Note(f)
				return
			}
		}
	},
}
