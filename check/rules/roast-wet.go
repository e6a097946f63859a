package rules

import (
	"fmt"

	"maltwright/lang/finding"
	"maltwright/lang/model"
	"maltwright/lang/vocabulary"
)

var roastWet = Rule{
	Forecast: true,
	Rule: finding.Rule{Name: "roast-wet", Severity: finding.Caution,
		Title: "wet malt is roasted",
		Why: "wet malt stays at the boiling point of water until the water is gone, in clouds of steam. Its outside burns while the inside cooks: it puffs, sticks and roasts unevenly. " +
			"Amber, brown, chocolate and black malt are roasted from dried or kilned malt (common practice)",
		Do: "dry the malt first, and put a gate before the roast: gate moisture at most 7 %",
		Bad: `kiln "base kiln" { area 0.5 m2; airflow 90 m3/h; draught fan; reaches 25 to 240 °C; heater 7 kW; fired electric }
make brown malt
stir every 20 min
dry at air-on 50 °C until moisture at most 20 % allow 3 to 16 h
roast at air-on 165 °C for 50 min
cool to malt 30 °C
accept roast-fire because "an example"`,
		Good: `kiln "base kiln" { area 0.5 m2; airflow 90 m3/h; draught fan; reaches 25 to 240 °C; heater 7 kW; fired electric }
make amber malt
stir every 20 min
dry at air-on 50 °C until moisture at most 20 % allow 3 to 16 h
dry from air-on 52 to 62 °C over 4 h until moisture at most 10 %
gate moisture at most 7 % allow 0 to 12 h
roast at air-on 138 °C for 90 min
cool to malt 30 °C
expect final moisture 0 to 3 %`,
		Limits: "Caramel malt is stewed and roasted wet on purpose, and is not judged. The forecast of moisture ends where malt gets hotter than 180 °C."},
	Judge: eachKilning(func(r finding.Rule, c *Case, st *model.Kilning, _ *model.Kiln) {
		if c.Claim.Malt.Name == vocabulary.MaltCaramel {
			return
		}
		for _, hot := range roastsOf(st) {
			if run := c.run(hot.Step); run != nil && run.MoistureStart > dryForRoast {
				c.Note(r.At(hot.Place(), fmt.Sprintf("the roast at %s begins with malt at %s moisture", hot.top, Percent(run.MoistureStart))))
				return
			}
		}
	}),
}

// dryForRoast is the moisture above which malt is no dried malt, wet basis (common practice: 4 to
// 8 % for roasting).
const dryForRoast = 0.10
