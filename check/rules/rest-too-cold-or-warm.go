package rules

import (
	"fmt"
	"slices"

	"maltwright/lang/finding"
	"maltwright/lang/model"
	"maltwright/lang/source"
)

var restTemperature = Rule{
	Rule: finding.Rule{Name: "rest-too-cold-or-warm", Severity: finding.Caution, // a fault where it is hot or freezes
		Title: "a rest of the steep is too cold or too warm for the grain, or its air needs a heater or cooler that is not there",
		Why:   "the grain wakes in its rests: too cold, it stays asleep and the next soak drowns it; too warm, it chits unevenly, heats and dries out (common practice)",
		Do:    "rest the grain where it is as warm as a growing bed should be",
		Bad:   `rest 10 h in air at 26 °C`,
		Good:  `rest 10 h in air at 15 °C`,
		Limits: "a rest of less than two hours is only draining, and is not judged; it takes the middle of the site's air temperature. " +
			"A difference of six degrees from the air of the site is not reported: water and grain keep some of their warmth. " +
			"It does not follow drained grain that heats itself in a deep vessel"},
	Judge: func(r finding.Rule, c *Case) {
		usual := c.Profile.Rest
		for _, w := range onceEach(c.wettings(), model.RestStep) {
			low, high, place, ok := c.warmth(w.step)
			if !ok || w.seconds < draining {
				continue
			}
			if low >= usual.Low-1e-6 && high <= usual.High+1e-6 {
				c.restNotKept(r, w, low, high, place)
				continue
			}
			f := r.At(place, fmt.Sprintf("a rest at %s is cold for %s: %s is the least", c.Degrees(low), c.Profile.Grain.Name, c.Degrees(usual.Low)))
			if high > usual.High+1e-6 {
				f = r.At(place, fmt.Sprintf("a rest at %s is warm for %s: %s is the most", c.Degrees(high), c.Profile.Grain.Name, c.Degrees(usual.High)))
			}
			switch {
			case high < 0:
				f.Severity = finding.Fault
				f.Message = fmt.Sprintf("a rest at %s freezes the wet grain", c.Degrees(high))
			case low > c.Profile.GrowsHot:
				f.Severity = finding.Fault
				f.Message += fmt.Sprintf(", and above %s it is lost", c.Degrees(c.Profile.GrowsHot))
			}
			c.Note(f)
		}
	},
}

// draining is how long a rest may be that is none, s.
const draining = 2 * hour

// besideSite is how far from the air of its site a rest may be asked for, K, with nothing
// there that warms or cools it (common practice: swollen grain keeps its warmth for hours).
const besideSite = 6.0

// restNotKept reports the first rest in air that is far from that of the site, where
// nothing is said of what makes it so: the next ones want it as well.
func (c *Case) restNotKept(r finding.Rule, w wetting, low, high float64, place source.Place) {
	if c.has(r.Name) || w.step.Warmth().At == nil || c.Process.Site == nil || c.Process.Site.Air == nil {
		return
	}
	air := c.Process.Site.Air
	coldest, warmest := air.Low.SI-zeroC, air.High.SI-zeroC
	verb, machine := "warms", "a heater"
	switch {
	case low > warmest+besideSite+1e-6 && !c.tempered(w, low, vesselHeater):
	case high < coldest-besideSite-1e-6 && !c.tempered(w, high, vesselCooler):
		verb, machine = "cools", "a cooler"
	default:
		return
	}
	f := r.At(place, fmt.Sprintf("the process rests the grain in air at %s, and the air of the room is %s: it does not say what %s it", w.step.Warmth().At.Range.Range, air.Range, verb))
	f.Hint = fmt.Sprintf("leave out at, to rest it in the air of the room; give its vessel %s; or, if it stands in another room, accept %s and say so", machine, r.Name)
	f.Related = c.roomSaid()
	c.Note(f)
}

func vesselHeater(v *model.Vessel) *model.Quantity { return v.Grows.Heater }
func vesselCooler(v *model.Vessel) *model.Quantity { return v.Grows.Cooler }

// tempered tells whether a vessel of the steep has the machine, or the room is held near
// so many °C for the growing.
func (c *Case) tempered(w wetting, t float64, machine func(*model.Vessel) *model.Quantity) bool {
	if w.of != nil && slices.ContainsFunc(w.of.Vessels(), func(v *model.Vessel) bool { return machine(v) != nil }) {
		return true
	}
	return slices.ContainsFunc(c.holds(), func(h *model.Hold) bool {
		low, high := celsius(h.At)
		return ofRoom(h.At) && t > low-besideSite && t < high+besideSite
	})
}
