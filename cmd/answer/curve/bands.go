package curve

import (
	"context"

	"maltwright/cmd/answer"
	"maltwright/cmd/answer/outlook"
	"maltwright/sim/ensemble"
	"maltwright/sim/forecast"
)

// DefaultMembers is how many members the bands are drawn over where nothing is said. Their 10 and 90 %
// points then lie within a fifth of their distance of those of many more.
const DefaultMembers = 100

// Bands are what many members come to at the same times: below P10 lies one in ten, below P90 nine. What
// fewer than half of them have then, such as an acrospire on the kiln, is NaN.
type Bands struct {
	Members   int
	At        []answer.Seconds
	Moisture  []answer.Spread[answer.Share]
	Weight    []answer.Spread[answer.Kilograms]
	Grain     []answer.Spread[answer.Celsius] // until it comes to a kiln
	Chit      []answer.Spread[answer.Share]
	Acrospire []answer.Spread[answer.Number]
	Spread    *outlook.Spread // of a plan: the rest of what its members say; nil of a batch
}

// How many times the bands are told at, at the most, of the whole and of one kiln.
const (
	bandPoints     = 180
	kilnBandPoints = 60

	soon = 600.0 // s after a step begins, by when the water of a soak hangs on the grain
)

// times are those at which the bands of a curve are told.
func (c *Curve) times() []float64 {
	to := float64(c.To)
	times := upTo(nil, 0, to, interval(to, bandPoints))
	for _, b := range c.Stages {
		if from, to := float64(b.From), float64(b.To); b.Stage == kilnStage {
			times = upTo(times, from, to, interval(to-from, kilnBandPoints))
		}
	}
	for _, s := range c.Steps {
		if s.To-s.From > 2*soon {
			times = append(times, float64(s.From), float64(s.From)+soon)
		}
	}
	return rising(append(times, to))
}

// planned are the bands of a plan, over likely lots, houses and weather.
func planned(ctx context.Context, f *forecast.Forecast, c *Curve, o Options) (*Bands, error) {
	e, err := ensemble.Run(ctx, f.Process, ensemble.Options{Begun: f.Begun, Members: o.Members, Looks: c.times(), Progress: o.Progress})
	if err != nil {
		return nil, err
	}
	b := bandsOf(&e.Courses)
	b.Spread = outlook.SpreadOf(e, f.Process)
	return b, nil
}

func bandsOf(c *ensemble.Courses) *Bands {
	b := &Bands{Members: len(c.Members)}
	for _, t := range c.Times {
		b.At = append(b.At, answer.Seconds(t))
	}
	b.Moisture = over[answer.Share](c, func(l *ensemble.Look) float64 { return l.Moisture })
	b.Weight = over[answer.Kilograms](c, func(l *ensemble.Look) float64 { return l.Weight })
	b.Grain = over[answer.Celsius](c, func(l *ensemble.Look) float64 { return l.Grain })
	b.Chit = over[answer.Share](c, func(l *ensemble.Look) float64 { return l.Chit })
	b.Acrospire = over[answer.Number](c, func(l *ensemble.Look) float64 { return l.Acrospire })
	return b
}

const half = 0.5

// over is a figure of the members at each time.
func over[T answer.Single](c *ensemble.Courses, of func(*ensemble.Look) float64) []answer.Spread[T] {
	list := c.Over(of)
	out := make([]answer.Spread[T], len(list))
	for i, s := range list {
		if s.Share < half {
			s = ensemble.Spread{P10: nan, P50: nan, P90: nan, Share: s.Share}
		}
		out[i] = outlook.Points[T](s)
	}
	return out
}
