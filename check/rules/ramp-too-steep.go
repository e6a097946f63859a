package rules

import (
	"fmt"

	"maltwright/lang/finding"
	"maltwright/lang/model"
	"maltwright/lang/quantity"
	"maltwright/lang/vocabulary"
)

var rampTooSteep = Rule{
	Forecast: true,
	Rule: finding.Rule{Name: "ramp-too-steep", Severity: finding.Caution,
		Title:  "the kiln is heated up fast while the malt is still wet",
		Why:    "above 50 °C heat must not run ahead of drying: a steep rise cooks the outside of the kernel while its middle is wet, and the kernel turns glassy (common practice)",
		Do:     "rise more slowly, or dry the malt to 10 % moisture first",
		Bad:    "dry at air-on 50 °C until moisture at most 20 % allow 3 to 16 h\ndry from air-on 50 to 80 °C over 1 h",
		Good:   "dry at air-on 50 °C until moisture at most 20 % allow 3 to 16 h\ndry from air-on 52 to 62 °C over 4 h until moisture at most 10 %",
		Limits: "It judges only rises, written as from … to … over …; hot-while-wet judges a step that is set hotter at once. A rise that ends at 50 °C is only warming up."},
	Judge: func(r finding.Rule, c *Case) {
		if !c.Profile.Malt.NeedsEnzymes {
			return
		}
		most := c.Limit(vocabulary.LimitRiseRate, usualRise)
		for _, s := range c.steps(model.KilnStage) {
			run, from, over := c.run(s), s.Warmth().From, s.Warmth().Over
			if run == nil || from == nil || over == nil || over.SI <= 0 || run.MoistureStart <= dryMalt+nearlyDry {
				continue
			}
			rate := (from.High.SI - from.Low.SI) / over.SI
			if rate <= most*(1+1e-9) || from.High.SI-zeroC <= warmsUp+sameHeat {
				continue
			}
			f := r.At(from.Place, fmt.Sprintf("the heat rises by %s while the malt holds %s moisture, and %s is the most", rise(rate, s), Percent(run.MoistureStart), rise(most, s)))
			f.Hint = fmt.Sprintf("take %s for the rise, or dry the malt to 10 %% moisture first", over.Lasting((from.High.SI-from.Low.SI)/most))
			c.Note(f)
		}
	},
}

const (
	usualRise = 10.0 / hour // K/s
	warmsUp   = 50.0        // °C: wet malt bears it
)

// rise writes a rate, K/s, in the degrees in which the step is written.
func rise(rate float64, s model.Step) string {
	if s.Warmth().From.High.Unit() == "°F" {
		return quantity.Say(rate, "°F/h")
	}
	return quantity.Say(rate, "°C/h")
}
