package rules

import (
	"fmt"

	"maltwright/lang/finding"
	"maltwright/lang/model"
	"maltwright/lang/source"
	"maltwright/lang/vocabulary"
)

var endMoistureHigh = Rule{
	Forecast: true,
	Rule: finding.Rule{Name: "end-moisture-high", Severity: finding.Caution, // a note up to some 6 %, a fault where it moulds
		Title:  "the malt leaves the kiln moister than its type should",
		Why:    "moist malt loses its aroma, goes slack in store and mills badly; from about 14 % on it moulds (common practice)",
		Do:     "dry it longer before the cure, or cure it longer; a gate after the cure makes sure of it: gate moisture at most 4.5 %",
		Bad:    "cure at air-on 80 °C for 1 h\ncool to malt 30 °C",
		Good:   "cure at air-on 80 °C for 5 h\ngate moisture at most 5 %\ncool to malt 30 °C",
		Limits: "The forecast of the last per cent is good to about half a per cent" + assumedOnly},
	Judge: func(r finding.Rule, c *Case) {
		if c.kilned() == nil {
			return
		}
		own := c.Profile.FinishedMost()
		most, w := c.Limit(vocabulary.LimitEndMoisture, own), c.Forecast.Totals.FinalMoisture
		if !(w > most+closeMoisture) { // or it is not forecast
			return
		}
		said := fmt.Sprintf("%s malt should hold %s at most", c.Profile.Malt.Name, Percent(most))
		if most != own {
			said = fmt.Sprintf("%s is the most in this house", Percent(most))
		} else if c.Profile.Grain.EndMost >= c.Profile.Malt.EndMost {
			said = fmt.Sprintf("malt of %s should hold %s at most", c.Profile.Grain.Name, Percent(most))
		}
		f := r.At(c.lastDried(), fmt.Sprintf("the malt leaves the kiln with %s moisture by the forecast, and %s", Percent(w), said))
		f.Hint = fmt.Sprintf("dry it longer, or cure it longer; a gate at the end of the kiln makes sure of it: gate moisture at most %s", Percent(most))
		if cool, before := c.wetted(); cool != nil && before <= most+closeMoisture {
			f.Place = cool.Water.Place
			f.Message = fmt.Sprintf("the %[2]s of water on the malt leaves it with %[1]s moisture by the forecast, and %[3]s", Percent(w), cool.Water, said)
			f.Hint = fmt.Sprintf("the malt holds %s before the water: pour less, or let air alone cool it", Percent(before))
		}
		switch {
		case w > moulds:
			f.Severity = finding.Fault
		case most == own && w <= max(own, moistMalt)+forecastError:
			f.Severity = finding.Note
		}
		c.Note(c.rests(r, f, kilnKnown...))
	},
}

const (
	closeMoisture = 0.002 // within which the forecast cannot tell
	moistMalt     = 0.06  // moister than this no malt is sold (common practice)
	forecastError = 0.005 // of the last per cent
	moulds        = 0.14
)

// wetted is the last cooling if water is poured in it, and the moisture of the malt before; nil for none.
func (c *Case) wetted() (cool *model.Cool, before float64) {
	steps := c.steps(model.KilnStage)
	for _, s := range steps {
		if s, ok := s.(*model.Cool); ok {
			cool = s
		}
	}
	if cool == nil || cool.Water == nil {
		return nil, 0
	}
	run := c.run(cool)
	if run == nil {
		return nil, 0
	}
	return cool, run.MoistureStart
}

// lastDried is the last of the kiln that asks for a moisture, or its last heat.
func (c *Case) lastDried() source.Place {
	place, at := c.lastKilnHead(), -1
	for i, s := range c.steps(model.KilnStage) {
		if _, _, ok := peak(s); ok {
			place, at = s.Place(), i
		}
	}
	for _, w := range c.dried(vocabulary.MeasureMoisture) {
		if w.step >= at && w.step >= 0 {
			place = w.test.Place
		}
	}
	return place
}
