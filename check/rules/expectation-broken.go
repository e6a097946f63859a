package rules

import (
	"fmt"
	"math"
	"slices"

	"maltwright/lang/finding"
	"maltwright/lang/vocabulary"
	"maltwright/sim/forecast"
)

var expectationBroken = Rule{
	Forecast: true,
	Rule: finding.Rule{Name: "expectation-broken", Severity: finding.Fault,
		Title:  "the forecast does not keep a promise of the process",
		Why:    "the process says so itself",
		Do:     "change the process until it keeps the promise, or promise what the forecast gives",
		Bad:    "expect total time at most 7 days",
		Good:   "expect total time at most 9 days",
		Limits: "the forecast takes the middle of every band; expectation-at-risk asks how often the promise is kept" + assumedOnly},
	Judge: func(r finding.Rule, c *Case) {
		for _, e := range c.Forecast.Expects {
			switch text := e.Test.Place.Text(); {
			case e.Holds && !c.Forecast.BrokenOff():
			case c.Forecast.BrokenOff():
				c.NotJudged(r, fmt.Sprintf("the forecast ends before %s can be judged", text))
			case e.Unjudged:
				c.NotJudged(r, fmt.Sprintf("%s is not forecast: the model ends before it", text))
			case math.IsNaN(e.Value) || e.Test.Bound == nil:
				c.NotJudged(r, fmt.Sprintf("the process has no %s", e.Test.Measure))
			case c.againstStated(&e.Test): // stated-total-differs says so
			default:
				f := r.At(e.Test.Place, fmt.Sprintf("the process promises %s, and the forecast gives %s", text, e.Test.Bound.Missed(e.Value)))
				c.Note(c.rests(r, f, promiseRestsOn(e.Test.Measure)...))
			}
		}
	},
}

// promiseRestsOn are the assumptions that can decide whether a promise is kept.
func promiseRestsOn(measure string) []forecast.Assumption {
	switch measure {
	case vocabulary.MeasureTotalTime:
		return slices.Concat(kilnKnown, roomKnown)
	case vocabulary.MeasureFinalMoisture:
		return kilnKnown
	case vocabulary.MeasureMaltWeight, vocabulary.MeasureYield:
		return rawKnown
	}
	return nil
}
