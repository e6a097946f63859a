package folder

import (
	"context"
	"slices"
	"time"

	"maltwright/cmd/answer/progress"
	"maltwright/sim/forecast"
	"maltwright/sim/visits"
)

// Ahead is what is to come at a batch under way, for whatever writes it on paper: the visits that Batch.Due tells, by the same forecast.
type Ahead struct {
	Forecast *forecast.Forecast
	Visits   []visits.Visit // from now on, or from its last reading where it seems left
	Followed bool           // the forecast is the middle of those that agree with all readings, and else the one that fits them best
	At       time.Time      // as of when it is followed; the zero time where it is not
}

// Ahead tells what is to come at a batch. It costs nothing where Look was asked before. Errors: *Gone, *Unsound, *Failed, and that of the context.
func (d *Folder) Ahead(ctx context.Context, id ID, now time.Time) (a Ahead, err error) {
	p, err := d.index.find(id, true)
	if err != nil {
		return a, err
	}
	s := p.unit.batches[p.nth]
	if !s.sound() {
		return a, &Unsound{p.unit.Name, p.unit.faults()}
	}
	if was := d.watching.of(s.id); was != nil && was.of == s && was.f != nil {
		a = Ahead{Forecast: was.f.Middle(), Visits: was.f.Due, Followed: true, At: was.said.At}
	} else {
		x, err := s.stood(ctx, now)
		if err != nil {
			return a, err
		}
		if !x.ok {
			return a, &Unsound{p.unit.Name, nil}
		}
		a = Ahead{Forecast: x.of.Plan, Visits: visits.Gather(visits.List(x.of.Plan))}
	}
	at, _ := progress.When(s.batch, now)
	elapsed := at.Add(-overdue).Sub(s.batch.Began.Time).Seconds()
	a.Visits = slices.DeleteFunc(slices.Clone(a.Visits), func(v visits.Visit) bool { return v.At <= elapsed })
	return a, nil
}
