package rules

import (
	"fmt"

	"maltwright/lang/finding"
	"maltwright/lang/model"
	"maltwright/lang/quantity"
)

var roastWithoutQuench = Rule{
	Rule: finding.Rule{Name: "roast-without-quench", Severity: finding.Caution, // a note where room air cools a roast below 200 °C
		Title: "a dark roast is not cooled by water",
		Why: "malt that is roasted dark goes on roasting by its own heat once the fire is out: it gets darker than was meant, smoulders, and may catch fire in the air that is to cool it; " +
			"drums are quenched with water at the colour that is wanted (common practice)",
		Do: "cool it at once with a measured spray of water, and spread it thin: cool to malt 30 °C with water 0.3 l",
		Bad: `kiln "base kiln" { area 0.5 m2; draught fan; reaches 25 to 240 °C; heater 3 kW; fired electric; accept heater-on-extension because "an example" }
make black malt
stir every 10 min
roast at malt 215 °C for 45 min
cool to malt 30 °C`,
		Good:   "cure at air-on 82 °C for 5 h\ncool to malt 30 °C",
		Limits: "it goes by what the kiln is set to. Below 180 °C it is not judged, where room air cools malt soon enough"},
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
		f := r.At(dark.Place(), fmt.Sprintf("malt that is roasted at %s is not cooled", dark.top))
		if cool != nil {
			f = r.At(cool.Place(), fmt.Sprintf("malt that is roasted at %s is cooled by room air alone", dark.top))
			if dark.top.SI-zeroC < catchesAt-sameHeat {
				f.Severity = finding.Note
			}
			f.Related = []finding.Related{{Place: dark.Place(), Message: "the roast"}}
		}
		if malt := c.maltOn(st); malt > 0 {
			unit := "l"
			if units := c.Process.Units(); units.British {
				unit = units.Gallon()
			}
			f.Hint = fmt.Sprintf("some %s of water, as steam, take so much malt from there to %s (a balance of heat): %s",
				quantity.About(quenches(malt, dark.top.SI-zeroC), unit), dark.top.Like(steamsAt+zeroC), r.Do)
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

const (
	steamsAt    = 100.0  // °C, below which water makes malt wet
	dryMaltHeat = 1.7e3  // J/(kg K) of roasted malt (handbook: 1.6 to 1.8 for dry cereals, from memory)
	steamHeat   = 2.61e6 // J/kg of water of 15 °C that leaves as steam (steam tables)
)

// quenches is the water, m³, that takes so many kg of malt from t °C to where it no longer
// steams, all of it leaving as steam.
func quenches(malt, t float64) float64 { return malt * dryMaltHeat * (t - steamsAt) / steamHeat / 1000 }
