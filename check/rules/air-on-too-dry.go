package rules

import (
	"fmt"

	"maltwright/lang/finding"
	"maltwright/lang/model"
	"maltwright/sim/air"
)

var airOnTooDry = Rule{
	Rule: finding.Rule{Name: "air-on-too-dry", Severity: finding.Caution,
		Title: "the process asks for drier air than cooling the room air gives",
		Why:   "a cooler and a spray make air colder and moister: to dry it, it must be cooled below its dew point and warmed again, for several times the cold and heat that the forecast reckons (a balance of heat and water)",
		Do:    "ask for moist air, 95 % and more; to wither, warm the air instead",
		Bad: `floor "base tray" { area 0.02 m2; airflow 3 m3/h; heater 100 W; cooler 200 W }
germinate on "base tray" {
  air at air-on 13.5 °C
  humidity air-on 40 %
  turn every 8 h
  until acrospire at least 3/4 and rub is chalky
  allow 4 to 8 days
}`,
		Good: `floor "base tray" { area 0.02 m2; airflow 3 m3/h; heater 100 W; cooler 200 W }
germinate on "base tray" {
  air at air-on 13.5 °C
  humidity air-on 98 %
  turn every 8 h
  until acrospire at least 3/4 and rub is chalky
  allow 4 to 8 days
}`,
		Limits: "it does not report ten points or less. Air that the floor leads round is moister still, and is left out"},
	Judge: func(r finding.Rule, c *Case) {
		for _, st := range c.Process.Stages {
			if piece := model.PieceOf(st); piece != nil && piece.AirOnHumidity != nil && piece.Floor.Blown() && len(piece.Blown) > 0 {
				c.tooDry(r, piece)
			}
		}
	},
}

// dryNear is how much drier than the room's air, as a share, is left to what is not known
// of the day.
const dryNear = 0.10

func (c *Case) tooDry(r finding.Rule, piece *model.Piece) {
	site := c.Process.Site
	if site == nil || site.Air == nil || site.Humidity == nil {
		c.NotJudged(r, "the site does not say how warm and how moist its air is")
		return
	}
	warmest := piece.Blown[0]
	for _, a := range piece.Blown {
		if a.At.Mid() > warmest.At.Mid() {
			warmest = a
		}
	}
	on := middle(&warmest.At)
	has := min(site.Humidity.Mid()*air.Saturation(site.Air.Mid()-zeroC)/air.Saturation(on), 1)
	asked := piece.AirOnHumidity
	if asked.Range.High.SI >= has-dryNear {
		return
	}
	f := r.At(asked.Place, fmt.Sprintf("the process asks for air-on of %s, and the air of the room has %s at %s", asked, Percent(has), c.Degrees(on)))
	f.Related = []finding.Related{{Place: site.Humidity.Place, Message: "the air of the room"}}
	c.Note(f)
}
