package outlook

import (
	"math"

	"maltwright/cmd/answer"
	"maltwright/lang/source"
	"maltwright/sim/forecast"
)

// AskedOf is what the process of a forecast asks for, and whether it comes about.
func AskedOf(f *forecast.Forecast) Asked {
	out := Asked{Gates: []Gate{}, Expects: []Expect{}, NotGiven: []Trouble{}}
	for _, g := range f.Gates {
		out.Gates = append(out.Gates, gateOf(f, g))
	}
	for _, l := range f.Left {
		out.Left = append(out.Left, leftOf(f, l))
	}
	for _, e := range f.Expects {
		one := Expect{Text: e.Test.Place.Text(), Holds: e.Holds, Unjudged: e.Unjudged}
		if e.Test.Bound != nil && !e.Unjudged {
			one.Forecast = &Amount{e.Value, e.Test.Bound.Range.Low}
		}
		out.Expects = append(out.Expects, one)
	}
	for _, t := range f.Trouble {
		switch t.(type) {
		case forecast.KilnShort, forecast.CannotCool, forecast.StillWarm, forecast.BedOff, forecast.BedFrozen,
			forecast.AirOnShort, forecast.FanShort, forecast.BandOff, forecast.RanHot, forecast.Drowned, forecast.HeatsItself:
			out.NotGiven = append(out.NotGiven, Trouble{t})
		}
	}
	return out
}

// StepEndedBy is the name of the step, as dry 1, in whose statement a condition stands; ""
// where it is one of its own.
func StepEndedBy(f *forecast.Forecast, at source.Place) string {
	for _, st := range f.Stages {
		for _, s := range st.Steps {
			if p := s.Place; s.Number > 0 && p.File == at.File && p.Start <= at.Start && at.End <= p.End {
				return s.Label
			}
		}
	}
	return ""
}

// Awaits names what waits for the condition: the step, or else the stage.
func (g *Gate) Awaits() string { return Awaits(g.StageName, g.Step, g.Hold) }

// Awaits names what waits for a condition: the step that it ends, a gate of a stage, or the stage.
func Awaits(stage StageName, step string, hold bool) string {
	switch {
	case hold:
		return stage.Called() + " gate"
	case step != "":
		return step
	}
	return stage.Called()
}

func gateOf(f *forecast.Forecast, g forecast.Gate) Gate {
	out := Gate{StageName: NameOf(f.Process, g.Of), Step: StepEndedBy(f, g.Place), Text: g.Text, Hold: g.Hold, Met: g.Met, Reached: answer.Seconds(g.Reached), Moisture: answer.Share(g.Moisture),
		Waited: answer.Seconds(g.Waited), Needs: answer.Seconds(g.Needs), Unjudged: g.Unjudged}
	if g.Failed != nil && g.Failed.Bound != nil {
		out.Measure, out.Measured = g.Failed.Measure, &Amount{g.Measured, g.Failed.Bound.Range.Low}
	}
	out.Never = g.Searching && math.IsNaN(g.Needs)
	return out
}

// Left is a condition that did not hold when the record of a batch says that what waits for it had ended.
type Left struct {
	StageName
	Step     string // the step that it ends, as a record names it; "" of a gate statement and of what ends a whole stage
	Text     string // as written
	Hold     bool   // a gate statement
	At       answer.Seconds
	Moisture answer.Share // wet basis, then
	Failed   []Failed     // what did not hold, by the forecast
}

// Failed is a test that did not hold, and what it came to: a figure or a word; neither where that is not told.
type Failed struct {
	Measure string
	Came    *Amount // in the unit of the condition
	Word    string
}

// Awaits names what waits for the condition.
func (l *Left) Awaits() string { return Awaits(l.StageName, l.Step, l.Hold) }

func leftOf(f *forecast.Forecast, l forecast.Left) Left {
	out := Left{StageName: NameOf(f.Process, l.Of), Step: StepEndedBy(f, l.Place), Text: l.Text, Hold: l.Hold, At: answer.Seconds(l.At), Moisture: answer.Share(l.Moisture)}
	for _, t := range l.Tests {
		if t.Holds {
			continue
		}
		one := Failed{Measure: t.Test.Measure, Word: t.Word}
		if t.Test.Bound != nil && !math.IsNaN(t.SI) {
			one.Came = &Amount{t.SI, t.Test.Bound.Range.Low}
		}
		out.Failed = append(out.Failed, one)
	}
	return out
}
