package rules

import (
	"fmt"

	"maltwright/lang/finding"
	"maltwright/lang/model"
)

var bedUneven = Rule{
	Forecast: true,
	Rule: finding.Rule{Name: "bed-uneven", Severity: finding.Caution,
		Title: "the top of a bed with air through it is much warmer than its bottom",
		Why:   "air warms on its way by 1,060 K times the heat of the grain in kW over the airflow in m3/h, whatever the depth, so the top grows days ahead of the bottom; houses aim at 2 to 3 °C, and 4 °C is found (a balance of heat)",
		Do:    "blow more air while the growth is strongest; colder air does not make the difference smaller, nor does leading air round",
		Bad: `floor "base tray" { area 0.02 m2; airflow 1.3 m3/h; heater 100 W; cooler 200 W }
germinate on "base tray" {
  hold bed at 14 to 16 °C
  turn every 8 h
  until acrospire at least 3/4 and rub is chalky
  allow 4 to 8 days
}`,
		Good: `floor "base tray" { area 0.02 m2; airflow 3 m3/h; heater 100 W; cooler 200 W }
germinate on "base tray" {
  hold bed at 14 to 16 °C
  turn every 8 h
  until acrospire at least 3/4 and rub is chalky
  allow 4 to 8 days
}`,
		Limits: "it looks at a bed through which the same air has passed since its last turn; a drum has no top"},
	Judge: func(r finding.Rule, c *Case) {
		for _, p := range c.Forecast.Pieces {
			if p.Blown == nil || p.Blown.Uneven.Difference() <= mostUneven || p.Stage != model.GerminateStage {
				continue
			}
			u, units := p.Blown.Uneven, c.Process.Units()
			f := r.At(p.Place, fmt.Sprintf("with %s of air the bed comes to %s at its bottom and %s at its top", units.AboutAirflow(u.Flow), c.Degrees(u.Bottom), c.Degrees(u.Top)))
			f.Hint = fmt.Sprintf("%s would bring the difference to %.0f %s: %s", units.AboutAirflow(u.Flow*u.Difference()/evenEnough), evenEnough*units.Step(), units.Degree(), r.Do)
			if floor := pieceFloor(p.Of); floor != nil {
				f.Related = []finding.Related{{Place: floor.Airflow.Place, Message: "its fan"}}
			}
			c.Note(f)
		}
	},
}

const (
	mostUneven = 4.5 // K; 3.5 to 4.5 at 500 m³/h for a tonne (derived)
	evenEnough = 3.0 // K, what is aimed at (handbooks, from memory)
)
