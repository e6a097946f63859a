package rules

import (
	"fmt"

	"maltwright/lang/finding"
	"maltwright/lang/model"
)

var smokeLate = Rule{
	Forecast: true,
	Rule: finding.Rule{Name: "smoke-late", Severity: finding.Caution,
		Title: "the smoke comes when the malt is dry",
		Why:   "smoke settles on moist corns and dissolves in their water; dry malt takes up little of it, however long it smokes (common practice)",
		Do:    "smoke from the first drying on, while the malt holds more than 20 % moisture; malt that is dry is damped first",
		Bad: `make smoked malt
accept smoke-clean because "beech, split and dry"
accept direct-fired because "out of doors"
fired wood by direct
dry from air-on 52 to 62 °C over 4 h until moisture at most 10 %
gate moisture at most 10 % allow 0 to 12 h
cure at air-on 82 °C for 5 h with smoke`,
		Good: `make smoked malt
accept smoke-clean because "beech, split and dry"
kiln "base kiln" { area 0.5 m2; airflow 90 m3/h; draught fan; reaches 25 to 110 °C; heater 3 kW; fired wood by direct; accept direct-fired because "out of doors" }
dry at air-on 50 °C with smoke until moisture at most 20 % allow 3 to 16 h`,
		Limits: "how smoky the malt gets is not forecast; it looks at the first step with smoke only"},
	Judge: func(r finding.Rule, c *Case) {
		for _, s := range c.steps(model.KilnStage) {
			if !model.Smoked(s) {
				continue
			}
			if run := c.run(s); run != nil && run.MoistureStart < takesSmoke {
				c.Note(r.At(s.Place(), fmt.Sprintf("the first smoke comes when the malt holds %s moisture", Percent(run.MoistureStart))))
			}
			return
		}
	},
}

// takesSmoke is the moisture, wet basis, below which malt takes up little smoke (common practice).
const takesSmoke = 0.15
