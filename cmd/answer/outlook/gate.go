package outlook

import (
	"math"

	"maltwright/cmd/answer"
	"maltwright/lang/model"
	"maltwright/sim/forecast"
)

// AskedOf is what the process of a forecast asks for, and whether it comes about.
func AskedOf(f *forecast.Forecast) Asked {
	out := Asked{Gates: []Gate{}, Expects: []Expect{}, NotGiven: []Trouble{}}
	for _, g := range f.Gates {
		out.Gates = append(out.Gates, gateOf(f.Process, g))
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

func gateOf(p *model.Process, g forecast.Gate) Gate {
	out := Gate{StageName: NameOf(p, g.Of), Text: g.Text, Hold: g.Hold, Met: g.Met, Reached: answer.Seconds(g.Reached), Moisture: answer.Share(g.Moisture),
		Waited: answer.Seconds(g.Waited), Needs: answer.Seconds(g.Needs), Unjudged: g.Unjudged}
	if g.Failed != nil && g.Failed.Bound != nil {
		out.Measure, out.Measured = g.Failed.Measure, &Amount{g.Measured, g.Failed.Bound.Range.Low}
	}
	out.Never = g.Searching && math.IsNaN(g.Needs)
	return out
}
