package noted

import (
	"context"
	"math"
	"slices"
	"time"

	"maltwright/cmd/answer"
	"maltwright/cmd/answer/outlook"
	"maltwright/lang/model"
	"maltwright/sim/infer/evidence"
	"maltwright/sim/work"
)

// Late is a weight at the end of a step that is written down later than it was taken.
type Late struct {
	Step   string
	Ended  time.Time        // when the step ends by the forecast
	Weight answer.Kilograms // what the forecast has the grain weigh then
}

const (
	lateBy = 3 * 3600.0 // s behind the forecast end of its step, from which on a line is late
	asThen = 0.04       // of the weight, within which it is that of the forecast for then
)

// LateOf tells of a weight at the end of a step whether it is that of the forecast for the end of that
// step, some hours before the line is; nil where it is not.
func LateOf(ctx context.Context, b *model.Batch, x *model.Weighed, at time.Time, pool *work.Pool) *Late {
	if x.After == nil || x.OfBag || x.When().IsZero() {
		return nil
	}
	without := *b
	without.Readings = slices.DeleteFunc(slices.Clone(b.Readings), func(y model.Reading) bool { return y.Place() == x.Place() })
	t, err := evidence.New(&without, at)
	if err != nil {
		return nil
	}
	t.Bound(ctx, pool)
	f, err := t.Run(make([]float64, len(t.Axes)), false)
	if err != nil {
		return nil
	}
	written := x.When().Sub(b.Began.Time).Seconds()
	net, _, _ := b.Net(x)
	kind, number := x.After.Kind.Text, x.After.Number
	for _, st := range f.Stages {
		for _, s := range st.Steps {
			if string(s.Kind) != kind || number != 0 && s.Nth != number || written-s.End < lateBy {
				continue
			}
			l := &Late{s.Label, outlook.ClockAt(b.Began.Time, answer.Seconds(s.End)), answer.Kilograms(s.WeightEnd)}
			if math.Abs(net-s.WeightEnd) <= asThen*s.WeightEnd && !l.Ended.After(at) {
				return l
			}
		}
	}
	return nil
}
