package rules

import (
	"fmt"

	"maltwright/lang/finding"
	"maltwright/lang/model"
	"maltwright/lang/source"
	"maltwright/sim/forecast"
)

// The least air of a steep, m³/s for each kg of grain as received: blown through a soak,
// and drawn through a rest (Haley and Stokes 1987).
const (
	leastBlown = 1.95 / 1000 / hour
	leastDrawn = 7.8 / 1000 / hour
)

var steepAirLittle = Rule{
	Forecast: true,
	Rule: finding.Rule{Name: "steep-air-little", Severity: finding.Caution,
		Title: "the grain gets too little air in the steep",
		Why: "a tonne of grain under water needs 1.95 m3/h of air and more; in its rests 7.8 m3/h and more carries its carbon dioxide off, " +
			"which is heavier than air, lies at the bottom of the bed and chokes it (Haley and Stokes 1987, MBAA Tech. Q. 24:33)",
		Do: "give more air, or less grain",
		Bad: `steep in "base tub" to moisture 42 to 46 % {
  soak 6 h in water at 13 °C
  rest 10 h in air at 14 °C with airflow 0.02 m3/h
  soak 7 h in water at 13 °C
  rest 9 h in air at 14 °C
  soak 6 h in water at 13 °C
}`,
		Good: `steep in "base tub" to moisture 42 to 46 % {
  soak 6 h in water at 13 °C
  rest 10 h in air at 14 °C with airflow 0.1 m3/h
  soak 7 h in water at 13 °C
  rest 9 h in air at 14 °C
  soak 6 h in water at 13 °C
}`,
		Limits: "it judges only air with a stated airflow. The model does not let carbon dioxide slow the growth; " +
			"a bed that is turned, or open below, loses carbon dioxide by itself"},
	Judge: func(r finding.Rule, c *Case) {
		told := map[source.Place]bool{}
		note := func(flow model.Quantity, each, least float64, what string) {
			if each >= least*(1-1e-9) || told[flow.Place] {
				return
			}
			told[flow.Place] = true
			enough := flow.Like(flow.SI * least / each)
			c.Note(r.At(flow.Place, fmt.Sprintf("%s%s for this charge, and %s is the least", flow, what, enough)))
		}
		for _, t := range forecast.Troubles[forecast.AirBlown](c.Forecast) {
			note(t.Flow, t.Each, leastBlown, " is blown through the water")
		}
		for _, t := range forecast.Troubles[forecast.AirDrawn](c.Forecast) {
			note(t.Flow, t.Each, leastDrawn, fmt.Sprintf(" is drawn through the grain, of which %.1f %% becomes carbon dioxide,", 100*t.CO2))
		}
	},
}
