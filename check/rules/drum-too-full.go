package rules

import (
	"fmt"

	"maltwright/check/tell"
	"maltwright/lang/finding"
	"maltwright/sim/forecast"
)

var drumTooFull = Rule{
	Forecast: true,
	Rule: finding.Rule{Name: "drum-too-full", Severity: finding.Caution,
		Title: "a drum is so full that its malt does not tumble",
		Why: "what lies on the shell burns and what lies in the middle stays pale, unless all of it is thrown about: malt fills a third to a half of a drum " +
			"(common practice)",
		Do: "roast less at a time",
		Bad: `grain "Bought" { species barley; already kilned malt; moisture 4 % }
site "Shed" { air 15 °C; humidity 60 %; water 12 °C; altitude 100 m }
kiln "roaster" { holds 20 l; tumbles yes; airflow 4 m3/h; heater 3 kW; reaches 60 to 230 °C; fired gas by indirect }
process "Amber" {
  make amber malt
  from 8 kg of "Bought"
  at "Shed"
  kiln in "roaster" { roast at malt 150 °C for 50 min; cool to malt 30 °C }
  store in "lidded drum" for at least 3 weeks
}`,
		Good: `grain "Bought" { species barley; already kilned malt; moisture 4 % }
site "Shed" { air 15 °C; humidity 60 %; water 12 °C; altitude 100 m }
kiln "roaster" { holds 20 l; tumbles yes; airflow 4 m3/h; heater 3 kW; reaches 60 to 230 °C; fired gas by indirect }
process "Amber" {
  make amber malt
  from 4 kg of "Bought"
  at "Shed"
  kiln in "roaster" { roast at malt 150 °C for 50 min; cool to malt 30 °C }
  store in "lidded drum" for at least 3 weeks
}`,
		Limits: "it takes malt to lie as loosely as any that has grown, and reads holds as the whole drum"},
	Judge: func(r finding.Rule, c *Case) {
		for _, t := range forecast.Troubles[forecast.DrumFull](c.Forecast) {
			f := r.At(t.Place, tell.Trouble(t, c.Process.Units()))
			if t.Malt > t.Holds {
				f.Severity = finding.Fault
			}
			f.Hint = fmt.Sprintf("half of it takes %s of this malt", c.Process.Units().Weight(t.Takes))
			c.Note(f)
		}
	},
}
