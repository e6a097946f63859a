package rules

import (
	"slices"

	"maltwright/lang/finding"
	"maltwright/lang/model"
	"maltwright/lang/quantity"
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
			"It does not report malt that is less than three degrees too hot by the air, or too hot for less than half an hour or in less than a fifth of the bed. Air-on of 60 to 65 °C from the start is usual on a large kiln (Owens 2001): drying malt stays near 25 °C, and the layer that meets the air first is warm before the rest. " +
			"Nobody measures the air that leaks from an oven without a fan: where malt above 20 % moisture goes into such an oven hot, it is forecast with half of that air too, and what is then a fault is told as a caution" + assumedOnly,
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
		if !c.has(r.Name) {
			c.hangsOnLeak(r)
		}
	},
}

const (
	wetIn    = 0.20 // moisture from which on malt that goes into a hot oven dries by what leaks alone
	ovenHot  = 60.0 // °C of it
	halfLeak = 0.5  // of its air: nobody measures what leaks from an oven, and half of a usual figure is as likely
)

// hangsOnLeak finds malt that goes wet into a hot still oven, and gets too hot so wet with half of
// the air: whether it dries in time hangs on what leaks.
func (c *Case) hangsOnLeak(r finding.Rule) {
	if c.trial || !slices.ContainsFunc(c.Forecast.Stages, ovenTakesWet) {
		return
	}
	flows := map[string]float64{}
	for _, a := range c.Forecast.Assumed {
		if a, ok := a.(forecast.OvenAir); ok {
			flows[a.Called] = a.Flow
		}
	}
	tried := c.tryOut(c.inKilns(func(st *model.Kilning, k *model.Kiln) {
		flow := flows[c.Process.Called(st)]
		if st.Kiln.Airflow != nil {
			flow = st.Kiln.Airflow.SI
		}
		if forecast.Still(st.Kiln) && flow > 0 {
			k.Airflow = &model.Quantity{Quantity: quantity.Quantity{SI: halfLeak * flow, Dimension: quantity.Flow}, Place: st.Kiln.Place}
		}
	}))
	if tried == nil {
		return
	}
	for _, t := range tried.hotWet() {
		if k := c.kilnAt(t.Place); t.ByAir || k == nil || !forecast.Still(k) {
			continue
		}
		f := r.At(t.Place, "whether the malt is dry before it is hot hangs on the air that leaks from the oven; with half of it, "+tried.said(t))
		f.Severity = finding.Caution
		f.Hint = "dry it to 20 % or less in moving air before it goes into the oven, or set the oven no hotter than so wet malt bears"
		c.Note(f)
		return
	}
}

// ovenTakesWet tells whether malt goes into a hot oven without a fan so wet that only what leaks dries it.
func ovenTakesWet(st forecast.Stage) bool {
	return forecast.InStillOven(st.Of) && slices.ContainsFunc(st.Steps, func(s forecast.Step) bool {
		return s.MoistureStart > wetIn && s.Temperature.Known && s.Temperature.From > ovenHot
	})
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
