package rules

import (
	"fmt"

	"maltwright/lang/finding"
	"maltwright/lang/model"
)

var deculmMissing = Rule{
	Rule: finding.Rule{Name: "deculm-missing", Severity: finding.Caution, // a danger where shoots and roots are poison
		Title: "the rootlets are never taken off",
		Why:   "rootlets are bitter, and draw water into the malt in store; those of sorghum hold dhurrin, which gives off prussic acid (common practice)",
		Do:    "rub and sieve them off while they are brittle: deculm within 12 h",
		Bad: `kiln in "base kiln" {
  dry at air-on 50 °C until moisture at most 10 % allow 6 to 24 h
  gate moisture at most 10 % allow 0 to 12 h
  cure at air-on 82 °C for 5 h
  cool to malt 30 °C
}
store in "lidded drum" for at least 3 weeks`,
		Good: `kiln in "base kiln" {
  dry at air-on 50 °C until moisture at most 10 % allow 6 to 24 h
  gate moisture at most 10 % allow 0 to 12 h
  cure at air-on 82 °C for 5 h
  cool to malt 30 °C
}
deculm within 12 h
store in "lidded drum" for at least 3 weeks`,
		Limits: "it does not judge green malt that never comes to a kiln, except sorghum"},
	Judge: func(r finding.Rule, c *Case) {
		p := c.Process
		kilned := model.Last[*model.Kilning](p)
		switch {
		case model.First[*model.Deculming](p) != nil || p.Grain.Kilned(): // they are off already
		case c.Profile.RootsOff && model.First[*model.Germination](p) != nil:
			f := r.At(p.Place, fmt.Sprintf("the shoots and roots of %s are never taken off, and they are poison", c.Profile.Grain.Name))
			f.Severity = finding.Danger
			f.Hint = "rub and sieve off every shoot and root before anything is milled, with deculm; follow local codes and licensed practice"
			c.Note(f)
		case kilned != nil:
			f := r.At(p.Place, fmt.Sprintf("%q never takes the rootlets off", p.Name))
			f.Related = []finding.Related{{Place: kilned.Place(), Message: "deculm belongs after this"}}
			c.Note(f)
		}
	},
}
