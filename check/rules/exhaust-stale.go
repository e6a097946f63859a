package rules

import (
	"fmt"

	"maltwright/lang/finding"
	"maltwright/lang/model"
	"maltwright/lang/source"
	"maltwright/sim/forecast"
)

var exhaustStale = Rule{
	Forecast: true,
	Rule: finding.Rule{Name: "exhaust-stale", Severity: finding.Caution,
		Title: "too little fresh air is blown, and carbon dioxide slows the growth",
		Why:   "only fresh air carries off the carbon dioxide of the grain; air led round brings it back. Above about 1 % it slows the growth, which some houses want in the last days and none at the peak (common practice), and whoever leans into the box breathes it",
		Do:    "lead less air round, or blow more: only fresh air carries carbon dioxide off",
		Bad: `floor "base tray" { area 0.02 m2; airflow 2.4 m3/h; heater 100 W; cooler 200 W; returns 95 % }
germinate on "base tray" {
  hold bed at 14 to 16 °C
  turn every 8 h
  until acrospire at least 3/4 and rub is chalky
  allow 4 to 8 days
}`,
		Good: `floor "base tray" { area 0.02 m2; airflow 2.4 m3/h; heater 100 W; cooler 200 W; returns 70 % }
germinate on "base tray" {
  hold bed at 14 to 16 °C
  turn every 8 h
  until acrospire at least 3/4 and rub is chalky
  allow 4 to 8 days
}`,
		Limits: "it takes the share led round as written, all the time; the forecast does not let carbon dioxide slow the growth"},
	Judge: func(r finding.Rule, c *Case) {
		for _, p := range c.Forecast.Pieces {
			floor := pieceFloor(p.Of)
			if p.Blown == nil || p.Blown.CO2 <= mostCO2 || floor == nil {
				continue
			}
			place, do := littleAir(p, floor), "blow more: only fresh air carries carbon dioxide off"
			fresh := p.Blown.Fastest
			if floor.Returns != nil && floor.Returns.SI > 0 {
				place, do = floor.Returns.Place, r.Do
				fresh *= 1 - floor.Returns.SI
			}
			f := r.At(place, fmt.Sprintf("the air off the bed holds %s of carbon dioxide at the strongest growth", Percent(p.Blown.CO2)))
			f.Hint = fmt.Sprintf("%s of fresh air keeps it below 1 %%: %s", c.Process.Units().AboutAirflow(fresh*p.Blown.CO2/mostCO2), do)
			f.Related = []finding.Related{{Place: p.Place, Message: "where it grows"}}
			c.Note(f)
		}
	},
}

// littleAir is where it is written how little air is blown: in the air of a stage where its
// fan could more, or else of the fan.
func littleAir(p forecast.Piece, floor *model.Floor) source.Place {
	for _, a := range model.PieceOf(p.Of).Blown {
		if a.Airflow != nil && a.Airflow.SI < floor.Airflow.SI && a.Airflow.SI <= p.Blown.Fastest*sameFlow {
			return a.Airflow.Place
		}
	}
	return floor.Airflow.Place
}

// mostCO2 is the share of carbon dioxide in the exhaust above which it is told (common
// practice).
const mostCO2 = 0.01

// pieceFloor is the floor of a stage that air is blown through, or nil.
func pieceFloor(st model.Stage) *model.Floor {
	if piece := model.PieceOf(st); piece != nil && piece.Floor.Blown() {
		return piece.Floor
	}
	return nil
}
