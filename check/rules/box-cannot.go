package rules

import (
	"fmt"

	"maltwright/lang/finding"
	"maltwright/lang/model"
	"maltwright/sim/forecast"
)

var boxCannot = Rule{
	Rule: finding.Rule{Name: "box-cannot", Severity: finding.Fault,
		Title: "the process asks for air through the bed that the floor cannot give",
		Why:   "the bed gets only what fan, cooler and heater can give: without a cooler, air is no colder than its spray makes it, the wet bulb of where it comes from (a balance of heat and water)",
		Do:    "say what fan, cooler and heater the floor has, or ask for what they can do",
		Bad: `floor "base tray" { area 0.2 m2 }
germinate on "base tray" {
  hold bed at 14 to 16 °C
  air at air-on 13.5 °C
  turn every 8 h
  until acrospire at least 3/4 and rub is chalky
  allow 4 to 8 days
}`,
		Good: `floor "base tray" { area 0.02 m2; airflow 3 m3/h; heater 100 W; cooler 200 W }
germinate on "base tray" {
  hold bed at 14 to 16 °C
  air at air-on 13.5 °C
  turn every 8 h
  until acrospire at least 3/4 and rub is chalky
  allow 4 to 8 days
}`,
		Limits: "half a degree is not reported; heat that passes through the walls of the box is not known"},
	Judge: func(r finding.Rule, c *Case) {
		for _, st := range c.Process.Stages {
			if piece := model.PieceOf(st); piece != nil {
				c.fanOf(r, piece)
			}
		}
		if c.Forecast == nil {
			return
		}
		for _, t := range forecast.Troubles[forecast.AirOnShort](c.Forecast) {
			f := r.At(t.Where(), c.said(t))
			f.Severity = finding.Caution
			f.Related = plantAt(c.blownFloor(t.Where().Start), t.Got > t.Asked)
			c.Note(f)
		}
	},
}

// fanOf reports air that no fan blows, or more of it than the fan drives.
func (c *Case) fanOf(r finding.Rule, piece *model.Piece) {
	for _, a := range piece.Blown {
		switch {
		case !piece.Floor.Blown():
			where := "where it lies"
			if piece.Floor != nil {
				where = fmt.Sprintf("floor %q", piece.Floor.Name)
			}
			f := r.At(a.Place(), fmt.Sprintf("the process blows air through the bed, and %s has no airflow", where))
			f.Hint = "write into the floor how much air its fan drives through the bed: airflow"
			if piece.Floor != nil {
				f.Related = []finding.Related{{Place: piece.Floor.Place, Message: "the floor"}}
			}
			c.Note(f)
		case a.Airflow != nil && a.Airflow.SI > piece.Floor.Airflow.SI*sameFlow:
			f := r.At(a.Airflow.Place, fmt.Sprintf("the process asks for an airflow of %s, and the fan drives %s", a.Airflow, piece.Floor.Airflow))
			f.Related = []finding.Related{{Place: piece.Floor.Airflow.Place, Message: "its fan"}}
			c.Note(f)
		}
	}
}

// sameFlow is how much more than the fan's own counts as the same: no fan is known better.
const sameFlow = 1.05

// blownFloor is the floor of the stage that a place lies in.
func (c *Case) blownFloor(at int) *model.Floor {
	var floor *model.Floor
	for _, st := range c.Process.Stages {
		if piece := model.PieceOf(st); piece != nil && st.Place().Start <= at {
			floor = piece.Floor
		}
	}
	return floor
}

// plantAt shows the cooler or the heater of a floor, or the floor where it has none.
func plantAt(f *model.Floor, cold bool) []finding.Related {
	switch {
	case f == nil:
		return nil
	case cold && f.Cooler != nil:
		return []finding.Related{{Place: f.Cooler.Place, Message: "its cooler"}}
	case !cold && f.Heater != nil:
		return []finding.Related{{Place: f.Heater.Place, Message: "its heater"}}
	}
	return []finding.Related{{Place: f.Place, Message: "the floor that has no airflow"}}
}
