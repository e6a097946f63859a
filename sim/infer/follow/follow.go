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
}

// Of follows a batch as it stands at a time. It returns the errors of Condition, and
// those of a batch that cannot be held beside a forecast.
func Of(ctx context.Context, b *model.Batch, at time.Time, o Options) (*Following, error) {
	t, err := evidence.New(b, at)
	if err != nil {
		return nil, err
	}
	if days, forgotten := silent(b, at); forgotten {
		return nil, fmt.Errorf("nothing is written of it for %.0f days, and nothing says that it was finished; a batch is followed for %.0f days behind its last reading", days, longestSilence/day)
	}
	p, err := Condition(ctx, t, o)
	if err != nil {
		return nil, err
	}
	f := &Following{Posterior: p, Now: t.Now}
	if f.Centre, err = t.Run(p.Mean, false); err != nil {
		return nil, err
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

// silent tells for how many days nothing is written of a batch, and whether that is too
// long for one that was not finished.
func silent(b *model.Batch, at time.Time) (days float64, forgotten bool) {
	last := b.Began.Time
	for _, x := range b.Readings {
		if model.Clean(x) && !x.When().After(at) {
			return 0, false
		}
		if x.When().After(last) && !x.When().After(at) {
			last = x.When().Time
		}
	}
	gap := at.Sub(last).Seconds()
	return gap / day, gap > longestSilence
}

// Over tells whether all that is followed is done: the rootlets are off.
func (f *Following) Over() bool {
	return f.Now >= f.Centre.Totals.Total-justNow && !f.Centre.BrokenOff()
}

// justNow is how far back a task still counts as due, s: what a reading has just
// ended asks for the next at the same time.
const justNow = 60.0

// due are the visits from now on.
func (f *Following) due() []visits.Visit {
	list := visits.List(f.Centre)
	list = slices.DeleteFunc(list, func(t visits.Task) bool { return t.At < f.Now-justNow })
	return visits.Gather(list)
}
