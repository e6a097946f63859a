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
		Title: "so little fresh air is blown that its carbon dioxide holds the growth back",
		Why:   "only fresh air carries off the carbon dioxide of the grain, and what is led round brings it back; above 1 % or so it checks the growth, which some houses want in the last days and none at the peak (common practice), and whoever leans into the box breathes it",
		Do:    "lead less air round, or blow more: only fresh air carries it off",
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
		Limits: "it takes the share led round to be what is written, all the time, and knows of no check by carbon dioxide itself"},
	Judge: func(r finding.Rule, c *Case) {
		for _, p := range c.Forecast.Pieces {
			floor := pieceFloor(p.Of)
			if p.Blown == nil || p.Blown.CO2 <= mostCO2 || floor == nil {
				continue
			}
			place, do := littleAir(p, floor), "blow more: only fresh air carries it off"
			fresh := p.Blown.Fastest
			if floor.Returns != nil && floor.Returns.SI > 0 {
				place, do = floor.Returns.Place, r.Do
				fresh *= 1 - floor.Returns.SI
			}
			f := r.At(place, fmt.Sprintf("at its strongest growth the bed gives off air with %s of carbon dioxide", Percent(p.Blown.CO2)))
			f.Hint = fmt.Sprintf("%s of fresh air keep it below 1 %%: %s", c.Process.Units().AboutAirflow(fresh*p.Blown.CO2/mostCO2), do)
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
