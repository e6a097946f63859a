package rules

import (
	"fmt"

	"maltwright/lang/finding"
	"maltwright/lang/process"
)

var deculmMissing = Rule{
	Rule: finding.Rule{Name: "deculm-missing", Severity: finding.Caution, // a danger where shoots and roots are poison
		Title:  "the rootlets are never taken off",
		Why:    "rootlets are bitter, and draw water into the malt in store; those of sorghum hold dhurrin, which gives off prussic acid (common practice)",
		Do:     "rub and sieve them off while they are brittle: deculm within 12 h",
		Bad:    "kiln in \"tray kiln\" { … }  store in \"lidded drum\" for 3 weeks",
		Good:   "kiln in \"tray kiln\" { … }  deculm within 12 h  store in \"lidded drum\" for 3 weeks",
		Limits: "green malt that never comes to a kiln is left alone, but not that of sorghum"},
	Judge: func(r finding.Rule, c *Case) {
		p := c.Process
		kilned := p.Stage(process.KilnStage)
		switch {
		case p.Stage(process.Deculm) != nil:
		case c.Profile.RootsOff && p.Stage(process.Germinate) != nil:
			f := r.At(p.Place, fmt.Sprintf("the shoots and roots of %s are never taken off, and they are poison", c.Profile.Grain.Name))
			f.Severity = finding.Danger
			f.Hint = "rub and sieve off every shoot and root before anything is milled, with deculm; follow local codes and licensed practice"
			c.Note(f)
		case kilned != nil:
			f := r.At(p.Place, fmt.Sprintf("%q never takes the rootlets off", p.Name))
			f.Related = []finding.Related{{Place: kilned.Place, Message: "it would come after this"}}
			c.Note(f)
		}
	},
}
