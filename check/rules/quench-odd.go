package rules

import (
	"fmt"

	"maltwright/check/tell"
	"maltwright/lang/finding"
	"maltwright/lang/model"
	"maltwright/sim/forecast"
)

var quenchOdd = Rule{
	Forecast: true,
	Rule: finding.Rule{Name: "quench-odd", Severity: finding.Caution,
		Title: "the water on a roast leaves the malt wet, or hot",
		Why: "each kilogram of water that boils off hot malt takes 2.6 MJ (a balance of heat), and water boils off only while the malt is hotter than " +
			"boiling water: too much wets the dry malt, and with too little the roast goes on by itself (common practice)",
		Do: "pour only enough to bring the malt to the boiling point of water, and let air cool it from there",
		Bad: `grain "Bought" { species barley; already kilned malt; moisture 4 % }
site "Shed" { air 15 °C; humidity 60 %; water 12 °C; altitude 100 m }
kiln "roaster" { holds 20 l; tumbles yes; airflow 4 m3/h; heater 3 kW; reaches 60 to 230 °C; fired gas by indirect }
process "Brown" {
  make brown malt
  from 4 kg of "Bought"
  at "Shed"
  kiln in "roaster" { roast at malt 175 °C for 50 min; cool to malt 30 °C with water 1 l }
  store in "lidded drum" for at least 3 weeks
}`,
		Good: `grain "Bought" { species barley; already kilned malt; moisture 4 % }
site "Shed" { air 15 °C; humidity 60 %; water 12 °C; altitude 100 m }
kiln "roaster" { holds 20 l; tumbles yes; airflow 4 m3/h; heater 3 kW; reaches 60 to 230 °C; fired gas by indirect }
process "Brown" {
  make brown malt
  from 4 kg of "Bought"
  at "Shed"
  kiln in "roaster" { roast at malt 175 °C for 50 min; cool to malt 30 °C with water 150 ml }
  store in "lidded drum" for at least 3 weeks
}`,
		Limits: "Water that runs off between the kernels counts as wetting them. Above 180 °C, where the forecast ends, it goes by the heat of the malt alone, and reports only water that leaves the malt at 9 % moisture or more."},
	Judge: func(r finding.Rule, c *Case) {
		for _, st := range model.Every[*model.Kilning](c.Process) {
			for _, cool := range model.Only[*model.Cool](st.Steps) {
				if cool.Water != nil {
					c.quenched(r, cool)
				}
			}
		}
	},
}

// quenched reports what the water of a cooling does that it should not.
func (c *Case) quenched(r finding.Rule, cool *model.Cool) {
	for _, t := range forecast.Troubles[forecast.Quenched](c.Forecast) {
		if t.Place == cool.Water.Place && (t.Wets() || t.Lacks()) {
			f := r.At(t.Place, tell.Trouble(t, c.Process.Units()))
			f.Hint = c.howMuch(t.Before, t.Enough)
			c.Note(f)
		}
	}
}

// howMuch says how much water ends a roast of malt of so many °C.
func (c *Case) howMuch(before, enough float64) string {
	units := c.Process.Units()
	if enough < tell.LeastSteam {
		return "the malt is no hotter than boiling water: let air alone cool it"
	}
	return fmt.Sprintf("about %s of water would bring it from %s to the boiling point, and all of it leaves as steam (a balance of heat); air cools it from there",
		units.Room(enough/1000), units.Degrees(before, 0))
}
