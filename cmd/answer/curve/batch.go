package curve

import (
	"cmp"
	"context"
	"math"
	"time"

	"maltwright/cmd/answer"
	"maltwright/cmd/answer/outlook"
	"maltwright/cmd/answer/progress"
	"maltwright/lang/model"
	"maltwright/sim/forecast"
	"maltwright/sim/infer/evidence"
	"maltwright/sim/infer/follow"
	"maltwright/sim/work"
)

// Batch is the curve of a batch that was followed: what has been and what is to come of the forecast at its
// centre, bands over members drawn by its readings, and the readings. Its start is its own. It returns the
// error of a context that is cancelled, and work.ErrPool where the forecasts cost too much.
func Batch(ctx context.Context, f *follow.Following, o Options) (Curve, error) {
	b := f.Trial.Batch
	seen, err := looked(f.Centre, o.Every, func(c *forecast.Course) (*forecast.Forecast, error) { return f.Along(ctx, c) })
	if err != nil {
		return Curve{}, err
	}
	c := of(seen, b.Began.Time, outlook.BagOfBatch(b))
	c.Batch, c.Astray = b.Name, !f.Trusted()
	if f.Now < float64(c.To) {
		c.Now = answer.Seconds(f.Now)
	}
	for i, r := range progress.ReadingsOf(f) {
		c.read(f.Judged[i].Observation, f.Centre, r)
	}
	if o.Members >= 0 {
		courses, err := f.Courses(ctx, c.times(), cmp.Or(o.Members, DefaultMembers), follow.Options{Progress: o.Progress})
		if err != nil {
			return c, err
		}
		c.Bands = bandsOf(&courses)
	}
	return c, ctx.Err()
}

// Likely is the curve of a batch by the lot and house that fit its readings best as if all went in straight
// lines, as of a time; the zero time of one that is over. It has no bands, and of doubted readings only those
// that cannot be are marked; it costs some dozen forecasts where Batch asks for hundreds. Its errors are those
// of a batch that cannot be held beside a forecast, and work.ErrPool.
func Likely(ctx context.Context, b *model.Batch, at time.Time, o Options) (Curve, error) {
	t, err := evidence.New(b, at)
	if err != nil {
		return Curve{}, err
	}
	t.Bound(ctx, work.NewPool(work.Records))
	z := make([]float64, len(t.Axes))
	if len(t.Observations) > 0 {
		g, err := t.Linearise(ctx)
		if err != nil {
			return Curve{}, err
		}
		z = g.Likely()
	}
	plain, err := t.Run(z, false)
	if err != nil {
		return Curve{}, err
	}
	seen, err := looked(plain, o.Every, func(c *forecast.Course) (*forecast.Forecast, error) { return t.Along(z, c) })
	if err != nil {
		return Curve{}, err
	}
	c := of(seen, b.Began.Time, outlook.BagOfBatch(b))
	c.Batch = b.Name
	if t.Now > 0 && t.Now < float64(c.To) {
		c.Now = answer.Seconds(t.Now)
	}
	for i := range t.Observations {
		x := &t.Observations[i]
		c.read(x, plain, progress.ReadingOf(follow.Judged{Observation: x, Residual: math.NaN()}))
	}
	return c, ctx.Err()
}
