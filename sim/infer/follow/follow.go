// Package follow says how a batch under way stands, by what was read of it: how moist
// it is, how much longer what is open will take, what falls due, what is late, and
// which readings cannot be right.
//
// # How it works
//
// The record is held beside forecasts of likely lots, houses and weather
// (sim/infer/evidence), and each forecast is weighed by how well it agrees (condition.go).
// The weighed forecasts are the answer to every question: the state now (stand.go),
// the time that is left (wait.go), the steps to come. A reading that even they do not
// agree with is in doubt, and doubt.go seeks a slip that would explain it.
//
// Times are in seconds from the first soak, as in a forecast.
package follow

import (
	"context"
	"fmt"
	"slices"
	"time"

	"maltwright/lang/model"
	"maltwright/sim/forecast"
	"maltwright/sim/infer/evidence"
	"maltwright/sim/visits"
)

// Following is how a batch stands.
type Following struct {
	*Posterior
	Centre  *forecast.Forecast // at the mean of all axes: the one forecast that stands for all
	Now     float64            // s from the first soak
	Stand   Stand
	Waits   []Wait // conditions that are open or to come
	Due     []visits.Visit
	Late    []Late
	Judged  []Judged // every reading beside what is expected
	Doubts  []Doubt
	Ignored []model.Reading // readings that are yet to come at that time

	plan *forecast.Forecast // of the process alone, while nothing was read; else nil
}

// Of follows a batch as it stands at a time. It returns the errors of Condition, and
// those of a batch that cannot be held beside a forecast.
func Of(ctx context.Context, b *model.Batch, at time.Time, o Options) (*Following, error) {
	t, err := evidence.New(b, at)
	if err != nil {
		return nil, err
	}
	if gap := silent(b, at); gap > longestSilence {
		return nil, Forgotten{gap, longestSilence}
	}
	p, err := Condition(ctx, t, o)
	if err != nil {
		return nil, err
	}
	f := &Following{Posterior: p, Now: t.Now}
	if f.Centre, err = t.Run(p.Mean, false); err != nil {
		return nil, err
	}
	if len(t.Observations) == 0 {
		if f.plan, err = t.Run(make([]float64, len(t.Axes)), false); err != nil {
			return nil, err
		}
	}
	for _, x := range b.Readings {
		if !x.When().IsZero() && x.When().After(at) {
			f.Ignored = append(f.Ignored, x)
		}
	}
	f.Stand = f.stand()
	f.Waits = f.waits()
	f.Due = f.due()
	f.Judged = f.judge()
	f.Doubts = f.doubts()
	f.Late = f.late()
	return f, nil
}

// longestSilence is how long a batch is followed of which nothing more is written: far
// longer than any stage lasts, s.
const (
	day            = 86400.0
	longestSilence = 30 * day
)

// Forgotten is a batch of which nothing is written for so long, s, that it is not
// followed, though nothing says that it was finished. Its text is for programmers.
type Forgotten struct{ Silent, Most float64 }

func (e Forgotten) Error() string {
	return fmt.Sprintf("nothing is written of the batch for %.0f s, more than %.0f s", e.Silent, e.Most)
}

// silent tells for how long, s, nothing is written of a batch; 0 for one that was
// finished.
func silent(b *model.Batch, at time.Time) float64 {
	last := b.Began.Time
	for _, x := range b.Readings {
		if model.Clean(x) && !x.When().After(at) {
			return 0
		}
		if x.When().After(last) && !x.When().After(at) {
			last = x.When().Time
		}
	}
	return at.Sub(last).Seconds()
}

// Over tells whether all that is followed is done: the rootlets are off.
func (f *Following) Over() bool {
	return f.Now >= f.Centre.Totals.Total-justNow && !f.Centre.BrokenOff()
}

// justNow is how far back a task still counts as due, s: what a reading has just
// ended asks for the next at the same time.
const justNow = 60.0

// due are the visits from now on, by the middle of the forecasts, or by the process alone.
func (f *Following) due() []visits.Visit {
	list := f.hot().later(visits.List(f.middle()))
	list = slices.DeleteFunc(list, func(t visits.Task) bool { return t.At < f.Now-justNow })
	return visits.Gather(list)
}
