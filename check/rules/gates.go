package rules

import (
	"fmt"
	"math"

	"maltwright/lang/finding"
	"maltwright/lang/model"
	"maltwright/lang/vocabulary"
	"maltwright/sim/forecast"
)

// judgeGates reports the gate statements (hold) or the until conditions that the
// forecast does not meet.
func judgeGates(r finding.Rule, c *Case, hold bool) {
	for i := range c.Forecast.Gates {
		g := &c.Forecast.Gates[i]
		if g.Met || g.Hold != hold {
			continue
		}
		f := r.At(g.Place, fmt.Sprintf("%s is not met%s: %s", g.Text, after(g.Waited), measured(g)))
		f.Hint = longer(g, r.Do)
		if c.noBreakToSee(g) {
			f.Hint = "a bed so thin dries all through at once, and air-off rises from the start: wait for a moisture instead, until moisture at most 12 %"
		}
		c.Note(c.rests(r, f, c.gateRestsOn(g)...))
	}
}

// gateRestsOn are the assumptions that can decide whether a condition is met: of a kiln, the
// kiln; of a growing piece its room. A gate that would be met by waiting rests on how long it
// is taken to be waited at.
func (c *Case) gateRestsOn(g *forecast.Gate) (on []forecast.Assumption) {
	switch g.Stage {
	case model.KilnStage:
		on = append(on, kilnKnown...)
	case model.GerminateStage:
		on = append(on, roomKnown...)
	}
	for _, s := range model.Only[*model.Gate](model.StepsOf(g.Of)) {
		if g.Hold && s.Asks != nil && s.Asks.Place == g.Place && s.Allow == nil && g.Searching && !math.IsNaN(g.Needs) {
			on = append(on, forecast.GateWait{})
		}
	}
	return on
}

// noBreakToSee tells whether a break is waited for in a bed too thin to show one.
func (c *Case) noBreakToSee(g *forecast.Gate) bool {
	k := c.onKiln(g.Of)
	return g.Failed != nil && g.Failed.Measure == vocabulary.MeasureBreak && k != nil && k.Depth < trayDeep
}

// after says how long it was waited, where it was.
func after(waited float64) string {
	if waited < 1 {
		return ""
	}
	return " after " + Hours(waited)
}

// measured says what the forecast has in place of what was asked.
func measured(g *forecast.Gate) string {
	switch t := g.Failed; {
	case t == nil:
		return "the condition is met only later"
	case t.Word != "":
		return fmt.Sprintf("%s is %s", t.Measure, g.Word)
	case t.Bound == nil:
		return fmt.Sprintf("there is no %s yet", t.Measure)
	default:
		return fmt.Sprintf("%s is %s", t.Measure, t.Bound.Missed(g.Measured))
	}
}

func longer(g *forecast.Gate, otherwise string) string {
	switch {
	case !g.Searching:
		return otherwise
	case math.IsNaN(g.Needs):
		return "the condition is not met within 4 days at these settings: " + otherwise
	}
	return fmt.Sprintf("the step needs %s more: %s", Hours(g.Needs), otherwise)
}
