package rules

import (
	"fmt"
	"math"

	"maltwright/lang/finding"
	"maltwright/lang/model"
)

var castMoistureOutside = Rule{
	Rule: finding.Rule{Name: "cast-moisture-outside", Severity: finding.Caution, // a fault where the raw grain holds as much
		Title: "the steep aims at a moisture that is not usual for grain and malt",
		Why:   "too dry, grain grows poorly and stops early; too wet, it grows wild, heats, and loses much of its substance (handbooks and published practice)",
		Do:    "aim at the usual moisture, or write accept with the reason",
		Bad: `steep in "base tub" to moisture 36 to 38 % {
  soak 6 h in water at 13 °C
  rest 10 h in air at 14 °C
  soak 3 h in water at 13 °C
}`,
		Good: usualSteep,
		Limits: "a target that overlaps the usual band is left alone. Where there is no target, the rule judges the forecast, " +
			"with 2 points to spare for its error. Water sprinkled on the floor later is not counted"},
	Judge: func(r finding.Rule, c *Case) {
		steeps := model.Every[*model.Steep](c.Process)
		for i, st := range steeps {
			c.castOutside(r, st, i == len(steeps)-1, len(steeps) > 1)
		}
	},
}

// castOutside judges the end of a steep. Of several it is the last that brings the grain to
// the moisture of its growth; one that wets growing grain again goes higher.
func (c *Case) castOutside(r finding.Rule, st *model.Steep, last, several bool) {
	usual := c.Profile.CastBand()
	if several {
		usual.High = max(usual.High, resteeped)
	}
	band := fmt.Sprintf("%.4g to %s is usual for %s of %s", 100*usual.Low, Percent(usual.High), c.kindOfMalt(), c.Profile.Grain.Name)
	tooDry := func(w float64) bool { return last && w < usual.Low }
	switch {
	case st.Target != nil && (tooDry(st.Target.High.SI) || st.Target.Low.SI > usual.High || c.noWetterThanRaw(st.Target)):
		c.Note(c.drierThanRaw(r.At(st.Target.Place, fmt.Sprintf("the steep aims at %s, and %s", st.Target, band)), st.Target))
	case st.Target != nil:
	case c.Forecast == nil:
		c.NotJudged(r, "no target is given, and there is no forecast")
	default:
		if w := c.castAt(st); tooDry(w+castSpare) || w > usual.High+castSpare {
			c.Note(r.At(st.Place(), fmt.Sprintf("the steep ends at %s, and %s", Percent(w), band)))
		}
	}
}

// resteeped is the most that growing grain is steeped again to (common practice: 50 to 52 %).
const resteeped = 0.52

// castAt is the moisture with which the grain leaves a steep; not a number where the
// forecast does not come so far.
func (c *Case) castAt(st *model.Steep) float64 {
	stages := c.Forecast.Stages
	for i, run := range stages {
		n, broke := len(run.Steps), c.Forecast.BrokenOff() && i == len(stages)-1
		if run.Of == model.Stage(st) && n > 0 && !broke {
			return run.Steps[n-1].MoistureEnd
		}
	}
	return math.NaN()
}

// noWetterThanRaw tells of a target that the raw grain has come to before it is steeped.
func (c *Case) noWetterThanRaw(target *model.Range) bool {
	g := c.Process.Grain
	return g != nil && g.Moisture != nil && target.High.SI <= g.Moisture.SI
}

// drierThanRaw makes a fault of a target that the raw grain has come to before it is steeped.
func (c *Case) drierThanRaw(f finding.Finding, target *model.Range) finding.Finding {
	if !c.noWetterThanRaw(target) {
		return f
	}
	g := c.Process.Grain
	f.Message = fmt.Sprintf("the steep aims at %s, and the raw grain already holds %s", target, g.Moisture)
	f.Hint = "look at the number and its decimal point"
	f.Severity = finding.Fault
	f.Related = []finding.Related{{Place: g.Moisture.Place, Message: "the raw grain"}}
	return f
}

// castSpare is how far the forecast of a steep may be off.
const castSpare = 0.02

// kindOfMalt is "pale malt".
func (c *Case) kindOfMalt() string { return c.Profile.Malt.Name + " malt" }
