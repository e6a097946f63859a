package rules

import (
	"fmt"

	"maltwright/lang/finding"
	"maltwright/lang/model"
	"maltwright/lang/vocabulary"
	"maltwright/sim/forecast"
)

var witheringSlow = Rule{
	Forecast: true,
	Rule: finding.Rule{Name: "withering-slow", Severity: finding.Caution,
		Title: "the malt stays wet too long after it has grown",
		Why:   "above 20 % moisture malt goes on growing, sours and grows mould; it should be below within about two days (common practice)",
		Do:    "spread it thinner, warm or dry the air, or move more air; on the kiln, dry a smaller charge",
		Bad: `wither on "base floor" {
  air at 10 to 12 °C
  humidity 84 to 86 %
  turn every 6 h
  for 3 days
}`,
		Good: `wither on "base floor" {
  air at 18 to 20 °C
  turn every 6 h
  until moisture at most 38 %
  allow 4 to 30 h
}`,
		Limits: "It assumes air at 0.3 m/s over a withering piece."},
	Judge: func(r finding.Rule, c *Case) {
		wet := 0.0
		place := c.kilnHead()
		for _, p := range c.Forecast.Pieces {
			if p.Stage == model.WitherStage {
				wet, place = wet+p.Wet, p.Place
			}
		}
		for _, k := range c.Forecast.Kilns {
			wet += k.Wet
		}
		if most := c.Limit(vocabulary.LimitWitheringTime, 50*hour); wet > most {
			c.Note(r.At(place, fmt.Sprintf("the malt holds more than %s moisture for %s after its growth, and %s is the most", Percent(forecast.WitheredMoisture), Hours(wet), Hours(most))))
		}
	},
}
