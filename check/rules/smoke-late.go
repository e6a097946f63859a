package rules

import (
	"fmt"
	"math"
	"slices"

	"maltwright/lang/finding"
	"maltwright/lang/model"
	"maltwright/sim/forecast"
)

var smokeLate = Rule{
	Forecast: true,
	Rule: finding.Rule{Name: "smoke-late", Severity: finding.Caution,
		Title: "the smoke comes when the malt is dry",
		Why:   "smoke settles on moist kernels and dissolves in their water; dry malt takes up little of it, however long it smokes (common practice)",
		Do:    "smoke from the first drying on, while the malt holds more than 20 % moisture; dampen dry malt first",
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
		Limits: "it does not forecast how smoky the malt gets, and looks only at the first step with smoke. Malt on an upper floor takes the smoke with the air of the floor below"},
	Judge: func(r finding.Rule, c *Case) {
		for _, s := range c.steps(model.KilnStage) {
			if !model.Smoked(s) {
				continue
			}
			if run := c.run(s); run != nil && run.MoistureStart < takesSmoke && !(c.smokedAbove(s, run) >= takesSmoke) {
				c.Note(r.At(s.Place(), fmt.Sprintf("the first smoke comes when the malt holds %s moisture", Percent(run.MoistureStart))))
			}
			return
		}
	},
}

// smokedAbove is the moisture, wet basis, of the malt on the floors above when the smoke of a step
// begins: that of this process as it lay there a cycle before. It is NaN where none does.
func (c *Case) smokedAbove(s model.Step, run *forecast.Step) float64 {
	most := math.NaN()
	for _, up := range model.Every[*model.Kilning](c.Process) {
		floors := c.Process.Floors(up)
		i := slices.IndexFunc(floors, func(low *model.Kilning) bool { return slices.Contains(low.Steps, s) })
		if i < 1 {
			continue
		}
		above, below := c.stageRun(up), c.stageRun(floors[i])
		if above == nil || below == nil || len(above.Steps) == 0 || len(below.Steps) == 0 {
			continue
		}
		at := above.Steps[0].Start + run.Start - below.Steps[0].Start
		for _, o := range above.Steps {
			if at >= o.Start && at < o.End && !(most >= o.MoistureStart) {
				most = o.MoistureStart + (at-o.Start)/(o.End-o.Start)*(o.MoistureEnd-o.MoistureStart)
			}
		}
	}
	return most
}

// stageRun is how a stage goes by the forecast, nil where it is not forecast.
func (c *Case) stageRun(st model.Stage) *forecast.Stage {
	for i := range c.Forecast.Stages {
		if c.Forecast.Stages[i].Of == st {
			return &c.Forecast.Stages[i]
		}
	}
	return nil
}

// takesSmoke is the moisture, wet basis, below which malt takes up little smoke (common practice).
const takesSmoke = 0.15
