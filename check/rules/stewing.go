package rules

import (
	"slices"

	"maltwright/lang/model"
	"maltwright/lang/vocabulary"
	"maltwright/sim/forecast"
)

// What tells a malt that is stewed from a pale one.

// plainly tells whether the process is plainly that of a pale malt, although one is
// claimed to which much is allowed: it is neither stewed nor hotter than pale malt is cured.
// A drying that is so hot that it stews, and is not called so, counts only where it
// colours the malt as claimed: else the heat is a slip.
func (c *Case) plainly() bool {
	_, top, at := c.hottestStep()
	most := c.Claim.AsPale().Malt.Cure.High
	least := c.Claim.Malt.Least
	switch {
	case !least.ElsePale || !at.Known() || top.SI-zeroC > most+sameHeat:
		return false
	case least.Stew > 0:
		return !c.stewed(least.Stew) || !c.stewsByName(least.Stew) && c.paler(least.Colour)
	}
	return top.SI-zeroC < least.Heat
}

const (
	stewsWet  = 0.30 // so wet malt is stewed in the heat, whatever the step is called
	stewsFor  = hour / 2
	stewsMalt = 60.0 // °C of the malt itself, where only the air is set
	stewsMost = 80.0 // °C, above which it is dried and not stewed
)

// stewed tells whether the malt is kept wet at t °C or more. Where only the air is set,
// malt that dries stays cooler, and its own heat counts.
func (c *Case) stewed(t float64) bool {
	for _, s := range c.steps(model.KilnStage) {
		top, _, ok := peak(s)
		if !ok || top.SI-zeroC < t-sameHeat {
			continue
		}
		if s.Kind() == model.StewStep || c.stewsUnnamed(s) {
			return true
		}
	}
	return false
}

// stewsByName tells whether a step is called a stew, at t °C or more.
func (c *Case) stewsByName(t float64) bool {
	return slices.ContainsFunc(c.steps(model.KilnStage), func(s model.Step) bool {
		top, _, ok := peak(s)
		return ok && s.Kind() == model.StewStep && top.SI-zeroC >= t-sameHeat
	})
}

// paler tells whether the forecast makes the malt paler than so many EBC.
func (c *Case) paler(colour float64) bool {
	return colour > 0 && c.kilned() != nil && c.Forecast.Totals.Quality.Colour < colour
}

func (c *Case) stewsUnnamed(s model.Step) bool {
	run := c.run(s)
	if run == nil || run.MoistureStart < stewsWet || run.End-run.Start < stewsFor {
		return false
	}
	if top, _, _ := peak(s); top.SI-zeroC > stewsMost {
		return false
	}
	if run.Temperature.Place == vocabulary.PlaceMalt || run.Temperature.Place == vocabulary.PlaceOven {
		return true
	}
	for _, x := range c.troubles(forecast.HotWet) {
		if x.Place == s.Place() && x.Value >= stewsMalt {
			return true
		}
	}
	return false
}
