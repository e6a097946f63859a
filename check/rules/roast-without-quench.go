package rules

import (
	"fmt"

	"maltwright/lang/finding"
	"maltwright/lang/model"
	"maltwright/lang/quantity"
	"maltwright/sim/forecast"
)

var roastWithoutQuench = Rule{
	Rule: finding.Rule{Name: "roast-without-quench", Severity: finding.Caution, // a note where room air cools a roast below 200 °C
		Title: "a dark roast is not cooled by water",
		Why: "dark malt goes on roasting by its own heat when the fire is out: it gets too dark, smoulders, and may catch fire in the cooling air; " +
			"drums are quenched with water at the wanted colour (common practice)",
		Do: "cool it at once with a measured spray of water, and spread it thin: cool to malt 30 °C with water 0.3 l",
		Bad: `kiln "base kiln" { area 0.5 m2; draught fan; reaches 25 to 240 °C; heater 3 kW; fired electric; accept heater-on-extension because "an example" }
make black malt
stir every 10 min
roast at malt 215 °C for 45 min
cool to malt 30 °C`,
		Good:   "cure at air-on 82 °C for 5 h\ncool to malt 30 °C",
		Limits: "it goes by what the kiln is set to, and says so where the forecast stays below. It does not judge roasts below 180 °C: room air cools that malt soon enough"},
	Judge: eachKilning(func(r finding.Rule, c *Case, st *model.Kilning, _ *model.Kiln) {
		var dark *roast
		for _, s := range roastsOf(st) {
			if s.top.SI-zeroC >= smokesAt-sameHeat {
				dark = &s
			}
		}
		if dark == nil {
			return
		}
		cool := coolAfter(st, dark.Step)
		if cool != nil && cool.Water != nil {
			return
		}
		reached, short := c.reached(st, *dark)
		f := r.At(dark.Place(), fmt.Sprintf("malt that is roasted at %s is not cooled", c.roastedAt(st, *dark)))
		if cool != nil {
			f = r.At(cool.Place(), fmt.Sprintf("malt that is roasted at %s is cooled by room air alone", c.roastedAt(st, *dark)))
			if min(dark.top.SI, reached.SI)-zeroC < catchesAt-sameHeat {
				f.Severity = finding.Note
			}
			f.Related = []finding.Related{{Place: dark.Place(), Message: "the roast"}}
		}
		if malt := c.maltOn(st); malt > 0 {
			less := ""
			if least := reached.SI - zeroC; short && least > steamsAt {
				less = fmt.Sprintf("; from %s %s", reached, c.waterFor(malt, reached))
			} else if short {
				less = fmt.Sprintf("; from %s none", reached)
			}
			f.Hint = fmt.Sprintf("about %s of water, all of it leaving as steam, takes this malt from %s to %s (a balance of heat%s): %s",
				c.waterFor(malt, dark.top), dark.top, dark.top.Like(steamsAt+zeroC), less, r.Do)
		}
		c.Note(f)
	}),
}

// maltOn is the malt on the kiln of a stage, kg: its dry matter by the forecast, or else the
// charge; 0 where neither is known.
func (c *Case) maltOn(st *model.Kilning) float64 {
	switch k := c.onKiln(st); {
	case k != nil && k.DryMass > 0:
		return k.DryMass
	case c.Process.Charge != nil:
		return c.Process.Charge.SI
	}
	return 0
}

// coolAfter is the first cooling of a stage behind a step, nil for none.
func coolAfter(st *model.Kilning, behind model.Step) *model.Cool {
	past := false
	for _, s := range st.Steps {
		if cool, ok := s.(*model.Cool); ok && past {
			return cool
		}
		past = past || s.Place() == behind.Place()
	}
	return nil
}

// steamsAt is where malt no longer steams off the water on it, °C: what falls on it then makes it wet.
const steamsAt = 100.0

// waterFor writes the water that takes so many kg of malt from a temperature to where it no longer
// steams.
func (c *Case) waterFor(malt float64, from quantity.Quantity) string {
	return c.Process.Units().Room(forecast.QuenchedBy(malt, from.SI-zeroC) / 1000)
}
