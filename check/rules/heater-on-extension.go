package rules

import (
	"fmt"

	"maltwright/lang/finding"
	"maltwright/lang/model"
	"maltwright/lang/vocabulary"
)

var heaterOnExtension = Rule{
	Rule: finding.Rule{Name: "heater-on-extension", Severity: finding.Note,
		Title: "a heater too strong to run for hours on an extension lead",
		Why: "a coiled lead, a socket strip or a timer carries a kettle for minutes; 1.5 kW and more for a day and a night heats it until it burns " +
			"(common practice of makers of heaters: straight into the wall)",
		Do:     "plug it straight into the wall, on a circuit with nothing else on it, and feel the plug after an hour" + localCodes,
		Bad:    `kiln "base kiln" { area 0.5 m2; airflow 60 m3/h; draught fan; heater 2.4 kW; fired electric }`,
		Good:   `kiln "base kiln" { area 0.5 m2; airflow 60 m3/h; draught fan; heater 1.5 kW; fired electric }`,
		Limits: "above 3.7 kW a heater is wired in and has no plug, and an oven with still air is taken to be wired in as well"},
	Judge: eachKiln(func(r finding.Rule, c *Case, _ *model.Kilning, k *model.Kiln) {
		switch {
		case k.Fired.Text != vocabulary.FiredElectric || k.Draught.Text == vocabulary.DraughtStill:
			return
		case k.Heater == nil:
			c.NotJudged(r, fmt.Sprintf("%q does not say the power of its heater", k.Name))
			return
		case k.Heater.SI <= leadBears || k.Heater.SI > plugBears:
			return
		}
		c.Note(r.At(k.Heater.Place, fmt.Sprintf("a heater of %s runs for hours: that is too much for an extension lead", k.Heater)))
	}),
}

const (
	leadBears = 1500.0 // W for hours (common practice of makers of heaters)
	plugBears = 3700.0 // W: 16 A at 230 V, the most that a household plug is made for
)
