// Package evidence holds a batch's record beside what a forecast expects of it.
//
// # How it works
//
// A Trial is a batch with its process. The record fixes when steps ended, when the
// piece was turned and what was changed; that is the course (course.go) to which a
// forecast of the trial keeps. What a process leaves open - the lot, the house, the
// weather - and how far the thermometer is off are its axes. Each axis is measured in
// standard deviations of what is usual, so that the usual batch is the zero vector and
// every axis weighs the same.
//
// Each reading is an Observation (observation.go): what was read, its standard error,
// and what a forecast gives for it. Their difference over the error is the residual.
// The likelihood takes residuals by Student's distribution of four degrees of freedom,
// which takes small ones as the normal one does but never bends everything to one slip
// of the pen [lange-1989]. Readings of one kind that are near each other count for less
// than one each (serial.go). The prior of the axes is the standard normal distribution.
//
// Linearise (linear.go) tells from a dozen forecasts which readings are far off.
//
// Fit (fit.go) finds the mode of the posterior by Gauss and Newton's method (search.go,
// slopes.go, normal.go), with the covariance there. MostLikely (likely.go) is the forecast at it.
// FitTogether (together.go) does so for several trials with axes in common.
package evidence

import (
	"context"
	"errors"
	"fmt"
	"math"
	"time"

	"gonum.org/v1/gonum/stat/distuv"

	"maltwright/lang/model"
	"maltwright/lang/quantity"
	"maltwright/sim/ensemble"
	"maltwright/sim/forecast"
	"maltwright/sim/work"
)

// Trial is a batch beside its process, up to a time.
type Trial struct {
	Batch        *model.Batch
	Process      *model.Process // with the moisture that the batch's own sample has
	Axes         []Axis
	Observations []Observation
	Now          float64 // s from the first soak; 0 where the batch is over

	course forecast.Course
	byHeat []forecast.Assumption // steps that the record does not name; see takeHeat
	whole  bool                  // some observation is of the end of a step, so that a brief forecast would not do
	usual  *forecast.Forecast    // of the usual lot, house and weather, once Affordable has made it
	ctx    context.Context
	pool   *work.Pool
}

// Bound ends the forecasts of the trial with a context, and has them spend from a pool,
// which may be nil.
func (t *Trial) Bound(ctx context.Context, pool *work.Pool) { t.ctx, t.pool = ctx, pool }

// Meter is that of one forecast of the trial.
func (t *Trial) Meter() *work.Meter { return work.NewMeter(t.ctx, t.pool) }

// Axis is something that the record can tell of.
type Axis struct {
	ensemble.Unknown
	Thermometer bool    // its offset, which moves no forecast but what is read
	middle, sd  float64 // K, of the offset before anything is read
}

// Errors of a batch that cannot be held beside a forecast.
var (
	ErrNoProcess = errors.New("the batch names no process that can be forecast")
	ErrNotBegun  = errors.New("the batch does not say when it began")
)

// OffsetSpread is how far the thermometer of a house is usually off, K (common
// practice: a dial or a cheap probe, unchecked).
const OffsetSpread = 0.8

// New makes the trial of a batch with what was read until a time; the zero time means
// that the batch is over, and all of it counts.
func New(b *model.Batch, until time.Time) (*Trial, error) {
	switch {
	case b.Process == nil:
		return nil, ErrNoProcess
	case b.Began.IsZero():
		return nil, ErrNotBegun
	}
	t := &Trial{Batch: b, Process: withSample(b), ctx: context.Background()}
	if !until.IsZero() {
		t.Now = until.Sub(b.Began.Time).Seconds()
		if t.Now < 0 {
			return nil, fmt.Errorf("%s lies before the batch began, %s", until.Format(stampLayout), b.Began.Format(stampLayout))
		}
		t.Now = max(t.Now, atOnce)
	}
	for _, u := range ensemble.UnknownsOf(t.Process) {
		t.Axes = append(t.Axes, Axis{Unknown: u})
	}
	t.Axes = append(t.Axes, thermometer(t.Process))
	t.takeCourse()
	t.takeObservations()
	return t, nil
}

// atOnce is as near to the first soak as a time is taken, s: 0 is a batch that is over.
const atOnce = 1.0

const stampLayout = "2006-01-02 15:04"

func thermometer(p *model.Process) Axis {
	a := Axis{Thermometer: true, sd: OffsetSpread, Unknown: ensemble.Unknown{Open: ensemble.ThermometerOffset}}
	if l := p.Learnt(); l != nil && l.Thermometer != nil {
		a.middle = l.Thermometer.Value.SI
		if e := l.Thermometer.Error; e != nil {
			a.sd = e.SI
		}
	}
	a.Scatter = ensemble.Scatter{Middle: a.middle, SD: a.sd}
	return a
}

// Unlearnt gives the batch as if its house had learnt nothing yet.
func Unlearnt(b *model.Batch) *model.Batch {
	if b.Process == nil || b.Process.Learnt() == nil {
		return b
	}
	house, p, plain := *b.Process.House, *b.Process, *b
	house.Learnt = nil
	p.House, plain.Process = &house, &p
	return &plain
}

// Value is where the axis lies at z standard deviations of what is usual: of the
// thermometer K, of a factor its value beside the model's.
func (a Axis) Value(z float64) float64 {
	if a.Thermometer {
		return a.middle + a.sd*z
	}
	return a.At(distuv.UnitNormal.CDF(z))
}

// withSample gives the process with the moisture of the batch's own sample, where raw
// grain can have it.
func withSample(b *model.Batch) *model.Process {
	w, can := b.SampleMoisture()
	if !can || b.Process.Grain == nil {
		return b.Process
	}
	moist, err := quantity.Make(quantity.Part{Number: fmt.Sprintf("%.2f", 100*w), Unit: "%"})
	if err != nil {
		return b.Process
	}
	p, g := *b.Process, *b.Process.Grain
	g.Moisture = &model.Quantity{Quantity: moist, Place: b.Sample.Wet.Place}
	p.Grain = &g
	return &p
}

// Options are those of the forecast at a point of the axes.
func (t *Trial) Options(z []float64) forecast.Options {
	o := forecast.Options{Begun: t.Batch.Began.Time, Like: t.usual}
	for i, a := range t.Axes {
		if !a.Thermometer {
			a.Set(&o, distuv.UnitNormal.CDF(z[i]))
		}
	}
	return o
}

// Run forecasts the trial at a point of its axes: the whole of it, or as far as there
// are readings.
func (t *Trial) Run(z []float64, brief bool) (*forecast.Forecast, error) {
	return t.metered(z, brief, t.Meter())
}

// Along forecasts the whole of the trial at a point of its axes, with other looks than those of its
// readings: at the times and the ends that the course asks for, of which nothing else counts. No reading is to
// be sought in such a forecast.
func (t *Trial) Along(z []float64, looks *forecast.Course) (*forecast.Forecast, error) {
	o, c := t.Options(z), t.course
	c.Looks, c.AtStarts, c.AtEnds, c.Layers, c.Brief = looks.Looks, looks.AtStarts, looks.AtEnds, looks.Layers, false
	o.Meter, o.Course = t.Meter(), &c
	return forecast.Run(t.Process, o)
}

func (t *Trial) metered(z []float64, brief bool, m *work.Meter) (*forecast.Forecast, error) {
	o, c := t.Options(z), t.course
	o.Meter = m
	c.Brief = brief && !t.whole
	o.Course = &c
	return forecast.Run(t.Process, o)
}

// Seen tells whether a forecast came as far as the last look, which is that of now.
func (t *Trial) Seen(f *forecast.Forecast) bool { return len(f.Seen) == len(t.course.Looks) }

// Offset is that of the thermometer at a point of the axes, K.
func (t *Trial) Offset(z []float64) float64 {
	for i, a := range t.Axes {
		if a.Thermometer {
			return a.Value(z[i])
		}
	}
	return 0
}

// Residuals are those of all observations for a forecast made at z; of one that is struck
// it is 0.
func (t *Trial) Residuals(f *forecast.Forecast, z []float64) []float64 {
	out := make([]float64, len(t.Observations))
	for i := range t.Observations {
		if o := &t.Observations[i]; !o.Struck {
			out[i] = o.misses(f, t.Offset(z))
		}
	}
	return out
}

// freedom is how many degrees it has: of the Student distribution of a residual.
const freedom = 4.0

// LogLikelihood is that of the residuals of the observations, but for a constant: each as
// much as it is worth.
func (t *Trial) LogLikelihood(residuals []float64) float64 {
	sum := 0.0
	for i, r := range residuals {
		sum -= t.Observations[i].Worth * logStudent(r)
	}
	return sum
}

// logStudent is minus the logarithm of Student's density at a residual, but for a constant.
func logStudent(r float64) float64 {
	return (freedom + 1) / 2 * math.Log1p(r*r/freedom)
}

// pull is how much a residual bends the fit, beside a small one of a reading that stands
// alone.
func (m *Observation) pull(r float64) float64 {
	return m.Worth * (freedom + 1) / (freedom + r*r)
}

// LogPrior is that of a point of the axes, but for a constant.
func LogPrior(z []float64) float64 {
	sum := 0.0
	for _, v := range z {
		sum -= v * v / 2
	}
	return sum
}
