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
