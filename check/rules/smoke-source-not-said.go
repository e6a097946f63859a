package rules

import (
	"fmt"

	"maltwright/lang/finding"
	"maltwright/lang/model"
)

var smokeSourceNotSaid = Rule{
	Rule: finding.Rule{Name: "smoke-source-not-said", Severity: finding.Caution,
		Title: "the process dries malt in smoke, and the kiln has nothing that smokes",
		Why:   "the fuel decides how the malt tastes, and whether it is safe to breathe its smoke and drink its beer; an electric heater or a clean flame gives no smoke to flavour malt with (common practice)",
		Do: "write what smokes: fired wood by direct, or fired peat by direct; where a smoke box stands beside another heat, accept it with the reason: " +
			`accept smoke-source-not-said because "beech chips in a smoke box"`,
		Bad: "make smoked malt\naccept claim-not-kept because \"an example\"\ndry at air-on 50 °C with smoke until moisture at most 20 % allow 3 to 16 h",
		Good: `make smoked malt
accept smoke-clean because "beech, split and dry"
kiln "base kiln" { area 0.5 m2; airflow 90 m3/h; draught fan; reaches 25 to 110 °C; heater 3 kW; fired wood by direct; accept direct-fired because "out of doors" }
dry at air-on 50 °C with smoke until moisture at most 20 % allow 3 to 16 h`,
		Limits: "a wood fire with a flue of its own counts as one that smokes"},
	Judge: eachKilning(func(r finding.Rule, c *Case, st *model.Kilning, k *model.Kiln) {
		for _, s := range st.Steps {
			if !model.Smoked(s) || k == nil {
				continue
			}
			switch {
			case k.Fired.Text == "":
				c.NotJudged(r, fmt.Sprintf("%q does not say what it is fired with", k.Name))
			case !smokes(k):
				f := r.At(s.Place(), fmt.Sprintf("this step needs smoke, and %q says fired %s: what smokes is not written", k.Name, k.Fired.Text))
				f.Related = []finding.Related{{Place: k.Fired.Place, Message: "what it is fired with"}}
				c.Note(f)
			}
			return
		}
	}),
}
