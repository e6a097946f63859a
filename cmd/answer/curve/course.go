package curve

import (
	"cmp"
	"context"
	"math"
	"slices"
	"time"

	"maltwright/cmd/answer"
	"maltwright/cmd/answer/outlook"
	"maltwright/lang/model"
	"maltwright/lang/sorted"
	"maltwright/sim/forecast"
	"maltwright/sim/grain"
	"maltwright/sim/work"
)

// Forecast is the curve of a plan. It returns the error of a context that is cancelled, and
// work.ErrPool where the forecasts of the bands cost too much together.
func Forecast(ctx context.Context, f *forecast.Forecast, o Options) (Curve, error) {
	seen, err := looked(f, o.Every, func(c *forecast.Course) (*forecast.Forecast, error) {
		return forecast.Run(f.Process, forecast.Options{Begun: f.Begun, Course: c, Meter: work.NewMeter(ctx, nil)})
	})
	if err != nil {
		return Curve{}, err
	}
	c := of(seen, o.Start, outlook.BagOf(f.Process))
	if o.Members > 0 {
		c.Bands, err = planned(ctx, f, &c, o)
	}
	return c, cmp.Or(err, ctx.Err())
}

// looked makes a forecast again with looks along it. Where that takes too many steps of the model,
// there are looks only where steps begin and end.
func looked(f *forecast.Forecast, every answer.Seconds, run func(*forecast.Course) (*forecast.Forecast, error)) (*forecast.Forecast, error) {
	seen, err := run(&forecast.Course{Looks: looksOf(f, float64(every)), AtStarts: true, AtEnds: true, Layers: true})
	if err == nil && seen.BrokenOff() && !f.BrokenOff() {
		seen, err = run(&forecast.Course{AtStarts: true, AtEnds: true, Layers: true})
	}
	return seen, err
}

// How many points a curve has at the most, of the whole and while the malt is on one kiln.
const (
	mostPoints  = 480
	kilnPoints  = 180
	wholeMinute = 60.0

	kilnStage = string(model.KilnStage)
)

var nan = math.NaN()

// even are the intervals to choose from, s.
var even = []float64{1, 2, 5, 10, 15, 20, 30, 60, 120, 180, 240, 360, 720, 1440}

// interval is the shortest even one of which a length of time has no more than so many, s.
func interval(length float64, most int) float64 {
	for _, minutes := range even {
		if length <= minutes*wholeMinute*float64(most) {
			return minutes * wholeMinute
		}
	}
	return length / float64(most)
}

// looksOf lists the times to look at, s.
func looksOf(f *forecast.Forecast, every float64) []float64 {
	total := f.Totals.Total
	if !(every > 0) || total/every > mostPoints {
		every = interval(total, mostPoints)
	}
	looks := upTo(nil, 0, total, every)
	for _, st := range f.Stages {
		if from, to := ends(st); st.Kind == model.KilnStage && to > from {
			looks = upTo(looks, from, to, min(every, interval(to-from, kilnPoints)))
		}
	}
	return rising(looks)
}

// rising sorts times, each once.
func rising(times []float64) []float64 {
	slices.Sort(times)
	return slices.Compact(times)
}

// upTo appends the whole multiples of an interval from one time to another.
func upTo(looks []float64, from, to, every float64) []float64 {
	for i := math.Ceil(from / every); i*every <= to; i++ {
		looks = append(looks, i*every)
	}
	return looks
}

// ends are the times at which a stage begins and ends; both 0 where it has no steps.
func ends(st forecast.Stage) (from, to float64) {
	if len(st.Steps) == 0 {
		return 0, 0
	}
	return st.Steps[0].Start, st.Steps[len(st.Steps)-1].End
}

// of makes the curve of a forecast that was looked at.
func of(f *forecast.Forecast, start time.Time, bag outlook.Bag) Curve {
	c := Curve{Head: outlook.HeadOf(f.Process), Start: start, To: answer.Seconds(f.Totals.Total), Now: answer.Seconds(nan),
		Complete: !f.BrokenOff(), BrokenOff: outlook.BreakOf(f), NotForecast: outlook.ModelEndOf(f), NoMalt: outlook.NoMaltOf(f)}
	if c.NoMalt != nil {
		c.To = c.NoMalt.At
	}
	c.spell(f)
	c.see(f, bag)
	c.Gates = gatesOf(f)
	c.Nights = nightsOf(f.Process, start, c.To)
	return c
}

// sameMoment is how near to one another two looks are one, s.
const sameMoment = 0.5

// see makes the points and the beds of what was seen, in the order of time.
func (c *Curve) see(f *forecast.Forecast, bag outlook.Bag) {
	sorted.Stable(f.Seen, func(a, b forecast.Sight) int { return cmp.Compare(a.At, b.At) })
	for i := range f.Seen {
		s := &f.Seen[i]
		if s.At > float64(c.To)+sameMoment {
			break
		}
		p := pointOf(s, bag)
		p.StageNumber = outlook.NameOf(f.Process, s.Of).Number
		if n := len(c.Points); n > 0 && float64(p.At-c.Points[n-1].At) < sameMoment && p.StageName() == c.Points[n-1].StageName() && p.StepName == c.Points[n-1].StepName {
			c.Points = c.Points[:n-1]
		}
		c.Points = append(c.Points, p)
		if len(s.Layers) > 0 {
			c.layers(outlook.NameOf(f.Process, s.Of), s)
		}
	}
}

func pointOf(s *forecast.Sight, bag outlook.Bag) Point {
	p := Point{Point: outlook.PointOf(s), Gross: answer.Kilograms(nan), Chit: answer.Share(s.Chit)}
	p.Stage, p.StepName = string(s.Stage), outlook.StepName{Kind: s.Step, Number: s.Number}
	if on := bag.On(model.HolderOf(s.Of), s.Weight); on.Gross != nil {
		p.Gross = on.Gross.Weight
	}
	if forecast.InStillOven(s.Of) {
		p.AirOff = answer.Celsius(nan)
	}
	if s.Growing {
		share := func(i int) answer.Share { return answer.Share(s.Classes[i]) }
		p.Classes = &outlook.Classes{None: share(grain.NoGrowth), ToQuarter: share(grain.ToQuarter), ToHalf: share(grain.ToHalf), ToThreeQuarters: share(grain.ToThreeQuarters), ToWhole: share(grain.ToFull), Overgrown: share(grain.Overgrown)}
	}
	return p
}

// layers adds a look at a bed.
func (c *Curve) layers(of outlook.StageName, s *forecast.Sight) {
	if n := len(c.Beds); n == 0 || c.Beds[n-1].StageName != of {
		c.Beds = append(c.Beds, Bed{StageName: of, Still: forecast.InStillOven(s.Of)})
	}
	b := &c.Beds[len(c.Beds)-1]
	look := BedLook{At: answer.Seconds(s.At)}
	for _, l := range s.Layers {
		look.Layers = append(look.Layers, Layer{answer.Metres(l.Depth), answer.Metres(l.Thick), answer.Share(l.Moisture), answer.Celsius(l.Malt), answer.Celsius(l.Air)})
	}
	if n := len(b.Looks); n > 0 && float64(look.At-b.Looks[n-1].At) < sameMoment {
		b.Looks = b.Looks[:n-1]
	}
	b.Looks = append(b.Looks, look)
}
