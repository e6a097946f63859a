package follow

import (
	"cmp"
	"context"
	"slices"

	"maltwright/sim/ensemble"
	"maltwright/sim/forecast"
	"maltwright/sim/infer/evidence"
	"maltwright/sim/work"
)

// Along is the forecast at the centre with looks along its course, in place of those at its readings.
func (f *Following) Along(ctx context.Context, looks *forecast.Course) (*forecast.Forecast, error) {
	return f.bound(ctx, nil).Along(f.Mean, looks)
}

// Courses are what members see at the given times, s from the first soak, rising: past and to come. They
// are not kept while members are weighed, for most of those are dropped; each that is asked for is forecast
// once more. There are so many of them, or all if that is fewer, evenly out of the members; each counts the
// same. It returns the error of the context, and work.ErrPool where they cost too much.
func (f *Following) Courses(ctx context.Context, times []float64, members int, o Options) (ensemble.Courses, error) {
	members = min(members, len(f.Z))
	c := ensemble.Courses{Times: times, Members: make([][]ensemble.Look, members)}
	unlike := []int{} // those that are not the same as the one before them
	for i := range members {
		if i == 0 || !slices.Equal(f.Z[f.thinned(i, members)], f.Z[f.thinned(i-1, members)]) {
			unlike = append(unlike, i)
		}
	}
	pool := work.NewPool(members * work.Shared * 3 / 2)
	t := f.bound(ctx, pool)
	report := reporter(o.Progress, 0, len(unlike))
	err := ensemble.Each(ctx, o.Workers, len(unlike), func(k int) error {
		i := unlike[k]
		seen, err := t.Along(f.Z[f.thinned(i, members)], &forecast.Course{Looks: times})
		if err != nil {
			return err
		}
		c.Members[i] = ensemble.LooksOf(seen, len(times))
		report()
		return nil
	})
	for i := range c.Members {
		if c.Members[i] == nil && i > 0 {
			c.Members[i] = c.Members[i-1]
		}
	}
	return c, cmp.Or(err, pool.Err())
}

// bound is the trial with a context and a pool of its own, so that what was followed may be asked by several
// at a time.
func (f *Following) bound(ctx context.Context, pool *work.Pool) *evidence.Trial {
	t := *f.Trial
	t.Bound(ctx, pool)
	return &t
}

// thinned is the i-th of so many members that lie evenly among all.
func (f *Following) thinned(i, members int) int { return i * len(f.Z) / members }
