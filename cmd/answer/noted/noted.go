// Package noted says what a reading comes to that was just taken: beside the forecast of its
// batch, whether it can be right, and what is next.
//
// # How it works
//
// The record is held beside one forecast of the usual lot and house, which is the forecast
// that the reading stands beside, and beside one more for each thing that is open, which tell
// what the other readings make of it (evidence.Linearise). What is next is read off a last
// forecast, that of the lot and house which fit the readings. So an answer costs some dozen
// forecasts, and no sampling: the sampler of follow gives odds, and takes a hundred times as long.
package noted

import (
	"context"
	"math"
	"time"

	"maltwright/cmd/answer"
	"maltwright/cmd/answer/outlook"
	"maltwright/lang/model"
	"maltwright/sim/forecast"
	"maltwright/sim/infer/evidence"
	"maltwright/sim/work"
)

// Result is what a reading comes to. What is nil is not to be had.
type Result struct {
	Batch       string
	At          time.Time               // as of when it is told what is next
	Moisture    *Beside[answer.Share]   // of a weight: by the dry matter that the forecast has left
	Yield       *answer.Share           // of the clean malt: of the weight of the grain
	Chit        *Beside[answer.Share]   // of the kernels
	Acrospire   *Beside[answer.Number]  // mean length, as a part of the kernel
	Ahead       *answer.Seconds         // of a count: how long after it was read the forecast has it so; negative where the growth is behind
	Rub         *Beside[string]         // as it was felt, and as it is forecast
	Temperature *Beside[answer.Celsius] // what was read
	Held        *answer.Temperature     // what the process holds in that place then
	Hot         *outlook.HotBed         // a growing bed that is too warm, and warmer than it is held
	Due         *Visit                  // what begins now, with what the reading ended
	Next        *Visit                  // what is next
	Over        bool                    // nothing is left to do but to wait
	Passed      *outlook.Passed         // the steep needs no further soak
	Short       *outlook.Short          // it comes out of the steep too dry
	Apart       *answer.Share           // how far the moisture of steeped grain lies above its forecast, where that is far; negative where it is under it
	Doubt       *Doubt                  // why it may not be right
	Failed      bool                    // there is no forecast
}

// Beside is what was read beside what the forecast has for it.
type Beside[T any] struct {
	Read     T
	Forecast *T // nil where it has nothing
}

func beside[T ~float64](read, forecast float64) *Beside[T] {
	out := &Beside[T]{Read: T(read)}
	if !math.IsNaN(forecast) {
		f := T(forecast)
		out.Forecast = &f
	}
	return out
}

// Of says what a line of a batch comes to, as of a time. Line may be nil, for only what is
// next. Its forecasts spend from a pool.
func Of(ctx context.Context, b *model.Batch, line model.Dated, at time.Time, pool *work.Pool) Result {
	r, _ := Judge(ctx, b, line, nil, at, pool)
	return r
}

// Judge says the same, and of each of some lines why it may not be right: nil of what may, or is no weight. It
// costs what Of costs.
func Judge(ctx context.Context, b *model.Batch, line model.Dated, lines []model.Dated, at time.Time, pool *work.Pool) (Result, []*Doubt) {
	r, doubts := Result{Batch: b.Name, At: at}, make([]*Doubt, len(lines))
	t, err := evidence.New(b, at)
	if err != nil {
		r.Failed = true
		return r, doubts
	}
	t.Bound(ctx, pool)
	h := holdingOf(ctx, t, line)
	if h == nil {
		r.Failed = true
		return r, doubts
	}
	r.of(h)
	for i, x := range lines {
		doubts[i] = h.doubtOf(x)
	}
	return r, doubts
}

// of says what the line of a holding comes to, and what is next.
func (r *Result) of(h *holding) {
	r.read(h)
	r.next(h)
	if _, ok := h.line.(*model.Weighed); ok && r.Moisture != nil {
		r.Passed = outlook.PassedOf(h.best, h.trial.Now, float64(r.Moisture.Read))
	}
}

// holding is the record beside its forecasts.
type holding struct {
	trial *evidence.Trial
	line  model.Dated
	plan  *forecast.Forecast   // of the usual lot and house, as far as the reading at the least
	best  *forecast.Forecast   // of those that fit the readings
	lines *evidence.Linearised // nil where nothing was read, or it costs too much
	seat  int                  // of the line among the observations; -1 where it is none
}

func holdingOf(ctx context.Context, t *evidence.Trial, line model.Dated) *holding {
	h := &holding{trial: t, line: line, seat: -1}
	z := make([]float64, len(t.Axes))
	if len(t.Observations) > 0 {
		if g, err := t.Linearise(ctx); err == nil {
			h.lines, h.plan, z = &g, g.Centre, g.Likely()
		}
	}
	var err error
	if h.best, err = t.Run(z, false); err != nil {
		return nil
	}
	if h.plan == nil {
		h.plan = h.best
	}
	h.seat = seatOf(t, line)
	return h
}

// observed is the reading beside what the plan sees then, nil where it is none.
func (h *holding) observed() (*evidence.Observation, *forecast.Sight) {
	if h.seat < 0 {
		return nil, nil
	}
	o := &h.trial.Observations[h.seat]
	return o, o.Sight(h.plan)
}

// read says what the reading comes to.
func (r *Result) read(h *holding) {
	o, s := h.observed()
	if o == nil || s == nil {
		return
	}
	expected := o.Expect(h.plan, 0)
	switch x := o.Reading.(type) {
	case *model.Weighed:
		r.weighed(h, x, o, s)
	case *model.Counted:
		if x.What.Text == model.Chit {
			r.Chit = beside[answer.Share](o.Value, expected)
		} else {
			r.Acrospire = beside[answer.Number](o.Value, expected)
		}
		if later, ok := h.trial.Fits(h.seat, make([]float64, len(h.trial.Axes))); ok {
			ahead := answer.Seconds(later)
			r.Ahead = &ahead
		}
	case *model.Felt:
		r.Rub = &Beside[string]{Read: x.Rub.Text}
		if !math.IsNaN(expected) {
			r.Rub.Forecast = rubAt(expected)
		}
	case *model.Read:
		r.Temperature = beside[answer.Celsius](o.Value, expected)
		r.Held = h.held(x, s)
		if s.Stage == model.GerminateStage && (r.Held == nil || r.Temperature.Read > max(r.Held.From, r.Held.To)) {
			r.Hot = outlook.HotBedOf(h.trial.Process, x)
		}
	}
}

// weighed reckons the moisture by the dry matter that the forecast has left.
func (r *Result) weighed(h *holding, x *model.Weighed, o *evidence.Observation, s *forecast.Sight) {
	if wet := 1 - s.Dry*o.Scale()/o.Value; s.Dry > 0 {
		r.Moisture = beside[answer.Share](wet, s.Moisture)
	}
	if c := h.trial.Process.Charge; x.Clean && c != nil && c.SI > 0 {
		y := answer.Share(o.Value / c.SI)
		r.Yield = &y
	}
	if s.Stage == model.SteepStage && r.Moisture != nil && !x.OfBag {
		r.steeped(h, x)
	}
	r.Doubt = h.doubt(x, o, s)
}

// farApart is how far from its forecast the moisture of steeped grain is told of.
const farApart = 0.05

// steeped says whether grain that was weighed in its steep is too dry at the end of that, or far from its forecast.
func (r *Result) steeped(h *holding, x *model.Weighed) {
	if x.After != nil {
		r.Short = outlook.ShortOf(h.best, x.After, float64(r.Moisture.Read))
	}
	if f := r.Moisture.Forecast; f != nil && r.Short == nil {
		if above := r.Moisture.Read - *f; math.Abs(float64(above)) >= farApart {
			r.Apart = &above
		}
	}
}

// held is what the process holds in the place of a thermometer then, nil where it holds none.
func (h *holding) held(x *model.Read, s *forecast.Sight) *answer.Temperature {
	for _, st := range h.plan.Stages {
		for _, step := range st.Steps {
			if t := step.Temperature; t.Known && t.Place == x.Temperature.Where && step.Start <= s.At && s.At <= step.End {
				return outlook.TemperatureOf(t)
			}
		}
	}
	return nil
}
