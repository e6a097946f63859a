package rules

import (
	"fmt"

	"maltwright/lang/finding"
	"maltwright/lang/model"
	"maltwright/sim/forecast"
)

var stirBeforeBreak = Rule{
	Forecast: true,
	Rule: finding.Rule{Name: "stir-before-break", Severity: finding.Caution,
		Title: "a deep bed is stirred before the drying front has passed through it",
		Why:   "a deep bed mats and tears when it is stirred wet, and mixing wets the dry, warm malt again; the bed is left alone until the break (common practice)",
		Do:    "stir later, or not at all: in an unstirred bed the drying front rises, and air-off warms when it is through",
		Bad: `kiln "base kiln" { area 0.025 m2; airflow 10 m3/h; fired electric }   # 40 cm deep
stir every 2 h
dry at air-on 50 °C until moisture at most 20 % allow 3 to 48 h`,
		Good: `kiln "base kiln" { area 0.025 m2; airflow 10 m3/h; fired electric }
dry at air-on 50 °C until moisture at most 20 % allow 3 to 48 h`,
		Limits: "It does not judge beds below 30 cm: on a slatted floor they are turned from the start. The forecast does not know that a bed mats."},
	Judge: eachKilning(func(r finding.Rule, c *Case, st *model.Kilning, _ *model.Kiln) {
		k := c.onKiln(st)
		if st.Stir == nil || k == nil || k.Stirred == nil {
			return
		}
		if k.Depth < bedDeep || k.Stirred.Broken || k.Stirred.Moisture <= forecast.WitheredMoisture {
			return
		}
		c.Note(r.At(st.Stir.Place, fmt.Sprintf("a bed %s deep is first stirred after %s, before the drying front is through: it then holds %s moisture", c.Process.Units().Depth(k.Depth), Hours(k.Stirred.At), Percent(k.Stirred.Moisture))))
	}),
}
