package rules

import (
	"slices"

	"maltwright/lang/finding"
	"maltwright/lang/model"
	"maltwright/lang/source"
	"maltwright/sim/forecast"
)

var hotWhileWet = Rule{
	Forecast: true,
	Rule: finding.Rule{Name: "hot-while-wet", Severity: finding.Fault, // a caution where only the air is set, or only a part gets so hot
		Title: "the malt itself gets hot while it is still wet",
		Bad:   "dry at malt 70 °C for 6 h   # at 40 % moisture",
		Good:  "dry at air-on 50 °C until moisture at most 12 % allow 6 to 20 h",
		Limits: "It judges the malt, by the forecast: in strong air wet malt stays far cooler than the air. It is a caution where only the air heats the malt, or only the part next to the air gets too hot; it is a fault where the step is set by the malt or in an oven. " +
			"It does not report malt that is less than three degrees too hot by the air, or too hot for less than half an hour or in less than a fifth of the bed. Air-on of 60 to 65 °C from the start is usual on a large kiln (Owens 2001): drying malt stays near 25 °C, and the layer that meets the air first is warm before the rest" + assumedOnly,
		Why: "enzymes die in wet malt at temperatures that they stand in dry malt: about 50 °C above 25 % moisture, 65 °C above 12 %, 80 °C above 10 % (common practice)",
		Do:  "dry the malt further before it is heated: put a gate before this step, or lengthen the step before"},
	Judge: func(r finding.Rule, c *Case) {
		if !c.Profile.Malt.NeedsEnzymes {
			return
		}
		for _, t := range c.hotWet() {
			f := r.At(t.Place, c.said(t))
			if t.ByAir {
				f.Severity = finding.Caution
			}
			if !c.comesWet(t.Place) { // else nothing of the kiln decides how wet it is
				f = c.rests(r, f, kilnKnown...)
			}
			c.Note(f)
		}
	},
}

// comesWet tells whether a step is the first on a kiln.
func (c *Case) comesWet(step source.Place) bool {
	steps := c.steps(model.KilnStage)
	return len(steps) > 0 && steps[0].Place() == step
}

// hotWet lists where wet malt gets too hot. What the air alone heats by a degree or two
// more than it bears the forecast cannot tell from what it bears.
func (c *Case) hotWet() []forecast.HotWet {
	return slices.DeleteFunc(forecast.Troubles[forecast.HotWet](c.Forecast), func(t forecast.HotWet) bool {
		return t.ByAir && t.Temperature-t.Limit < hardlyHotter
	})
}

const hardlyHotter = 3.0 // K
