package rules

import (
	"fmt"
	"math"

	"maltwright/lang/finding"
	"maltwright/lang/process"
	"maltwright/sim/forecast"
)

var gateNotReached = Rule{
	Rule: finding.Rule{Name: "gate-not-reached", Severity: finding.Fault,
		Title: "the forecast does not meet a gate in its time",
		Why:   "a gate guards what comes after it: malt that is heated before it is dry enough loses its enzymes, and malt that is stored too damp goes mouldy",
		Do:    "give the step before it more time, more air or more warmth"},
	Judge: func(r finding.Rule, c *Case) { judgeGates(r, c, true) },
}

var guardCameFirst = Rule{
	Rule: finding.Rule{Name: "guard-came-first", Severity: finding.Fault,
		Title: "the latest time of a step comes before what the step waits for",
		Why:   "the step ends by its guard, and the next begins with grain that is not ready for it",
		Do:    "give the step more time in its allow, or change what would bring it on"},
	Judge: func(r finding.Rule, c *Case) { judgeGates(r, c, false) },
}

func judgeGates(r finding.Rule, c *Case, hold bool) {
	for i := range c.Forecast.Gates {
		g := &c.Forecast.Gates[i]
		if g.Met || g.Hold != hold {
			continue
		}
		f := r.At(g.Place, fmt.Sprintf("%s is not met after %s: %s", g.Text, Hours(g.Waited), measured(g)))
		f.Hint = longer(g, r.Do)
		c.Note(f)
	}
}

// measured says what the forecast has in place of what was asked.
func measured(g *forecast.Gate) string {
	switch t := g.Failed; {
	case t == nil:
		return "it comes about only later"
	case t.Word != "":
		return fmt.Sprintf("%s is %s", t.Measure, g.Word)
	case t.Bound == nil:
		return fmt.Sprintf("%s has not come", t.Measure)
	default:
		return fmt.Sprintf("%s is %s", t.Measure, t.Bound.Range.Low.Like(g.Measured))
	}
}

func longer(g *forecast.Gate, otherwise string) string {
	switch {
	case !g.Searching:
		return otherwise
	case math.IsNaN(g.Needs):
		return "with everything left as it is it does not come about within 4 days: " + otherwise
	}
	return fmt.Sprintf("it would take %s more: %s", Hours(g.Needs), otherwise)
}

// Hours writes a length of time: 40 min, 9.5 h, 6.2 days.
func Hours(s float64) string {
	switch {
	case s < 90*60:
		return fmt.Sprintf("%.0f min", s/60)
	case s < 48*3600:
		return fmt.Sprintf("%.1f h", s/3600)
	}
	return fmt.Sprintf("%.1f days", s/86400)
}

var targetMissed = Rule{
	Rule: finding.Rule{Name: "target-missed", Severity: finding.Caution,
		Title: "the forecast leaves the steep outside the moisture that it aims at",
		Why:   "too dry and the corn grows unevenly, too wet and it grows too fast and may drown",
		Do:    "lengthen or shorten the last soak, and weigh the drained grain before the end"},
	Judge: func(r finding.Rule, c *Case) {
		for _, t := range c.troubles(forecast.TargetMissed) {
			f := r.At(t.Place, fmt.Sprintf("the steep ends at %.1f %% moisture, and %s is wanted", 100*t.Value, t.Place.Text()))
			f.Hint = t.Detail + "; weigh the drained grain to be certain"
			c.Note(f)
		}
	},
}

var expectationBroken = Rule{
	Rule: finding.Rule{Name: "expectation-broken", Severity: finding.Fault,
		Title: "the forecast does not keep a promise of the process",
		Why:   "the process says so itself",
		Do:    "change the process until it keeps the promise, or promise what it gives"},
	Judge: func(r finding.Rule, c *Case) {
		for _, e := range c.Forecast.Expects {
			if e.Holds {
				continue
			}
			f := r.At(e.Test.Place, fmt.Sprintf("%s is promised, and the forecast gives %s", e.Test.Place.Text(), e.Test.Bound.Range.Low.Like(e.Value)))
			c.Note(f)
		}
	},
}

var forecastUnable = Rule{
	Rule: finding.Rule{Name: "forecast-unable", Severity: finding.Fault,
		Title: "the forecast cannot go on",
		Why:   "what the process asks for lies outside what the models hold for, or cannot be done at all",
		Do:    "look at the value named, and at the step before"},
	Judge: func(r finding.Rule, c *Case) {
		for _, t := range c.troubles(forecast.NotForecast) {
			c.Note(r.At(t.Place, t.Detail))
		}
	},
}

// Unable makes the finding of a forecast that could not begin.
func Unable(p *process.Process, err error) finding.Finding {
	return forecastUnable.At(p.Place, fmt.Sprintf("%q cannot be forecast: %s", p.Name, err))
}
