package noted

import (
	"context"
	"math"
	"slices"
	"strings"
	"time"

	"maltwright/cmd/answer"
	"maltwright/cmd/answer/outlook"
	"maltwright/lang/model"
	"maltwright/sim/forecast"
	"maltwright/sim/infer/evidence"
	"maltwright/sim/visits"
	"maltwright/sim/work"
)

// Standing is how a batch stands by the forecast of the lot and house that fit its readings.
type Standing struct {
	Batch string
	At    time.Time // as of when
	outlook.OnScale[answer.Kilograms]
	Stage    model.StageKind // "" where it is in none
	Step     string          // as a record names it
	Moisture answer.Share    // wet basis; NaN where it is not known
	Weight   answer.Kilograms
	Ends     time.Time // when the step ends; zero where that is not known
	Waits    *Waiting  // where a step goes on though what it waits for has come about by the forecast
	Ready    time.Time // when the rootlets are off; zero where the forecast breaks off
	Visits   []Visit   // from the beginning to the end of the rest in store
	Lines    []Line
	Plan     *forecast.Forecast // that of the visits
}

// Line is a reading of the record, with what it comes to.
type Line struct {
	Of     model.Reading
	Result Result // without what is next
}

// Waiting is a step that goes on.
type Waiting struct {
	Since time.Time // when it may have ended
	Until string    // the condition, as written
}

// Stand says how a batch stands at a time, what each of its readings comes to, and every visit. It costs
// what Of costs, however many readings there are. It is false where the batch cannot be forecast.
func Stand(ctx context.Context, b *model.Batch, at time.Time, pool *work.Pool) (s Standing, ok bool) {
	t, err := evidence.New(b, at)
	if err != nil {
		return s, false
	}
	t.Bound(ctx, pool)
	h := holdingOf(ctx, t, nil)
	if h == nil {
		return s, false
	}
	s = Standing{Batch: b.Name, At: at, Plan: h.best, Moisture: answer.Share(math.NaN()), Weight: answer.Kilograms(math.NaN())}
	s.now(h)
	s.Visits = Visits(b, t.Process, visits.Gather(visits.List(h.best)))
	if !h.best.BrokenOff() {
		s.Ready = outlook.ClockAt(b.Began.Time, answer.Seconds(h.best.Totals.Total))
	}
	for i := range t.Observations {
		h.seat = i
		x := Line{Of: t.Observations[i].Reading}
		x.Result = Result{Batch: b.Name, At: at}
		x.Result.read(h)
		s.Lines = append(s.Lines, x)
	}
	return s, true
}

// now reads off the forecast how the batch stands.
func (s *Standing) now(h *holding) {
	began := h.trial.Batch.Began.Time
	if n := len(h.best.Seen); n > 0 && h.trial.Seen(h.best) {
		sight := h.best.Seen[n-1]
		s.Stage, s.Step = sight.Stage, sight.Step
		s.Moisture, s.Weight = answer.Share(sight.Moisture), answer.Kilograms(sight.Weight)
		if sight.Of != nil && !math.IsNaN(sight.Weight) {
			s.OnScale = outlook.BagOfBatch(h.trial.Batch).On(model.HolderOf(sight.Of), sight.Weight)
		}
	}
	for _, st := range h.best.Stages {
		for _, step := range st.Steps {
			if step.Start <= h.trial.Now && step.End > h.trial.Now {
				s.Ends = outlook.ClockAt(began, answer.Seconds(step.End))
			}
		}
	}
	s.Waits = waitingOf(h)
}

// waitingOf tells of what the batch waits for now, where that has come about by the forecast.
func waitingOf(h *holding) *Waiting {
	now := h.trial.Now
	i := slices.IndexFunc(h.best.Gates, func(g forecast.Gate) bool { return g.Ended >= now-1 })
	if i < 0 {
		return nil
	}
	g := h.best.Gates[i]
	if at := g.Came(); at < now-justNow {
		return &Waiting{outlook.ClockAt(h.trial.Batch.Began.Time, answer.Seconds(at)), strings.Join(strings.Fields(g.Text), " ")}
	}
	return nil
}

// Visits are visits to a batch, with whether they fall in the night and who is there.
func Visits(b *model.Batch, p *model.Process, list []visits.Visit) (out []Visit) {
	clock := visits.From(b.Began.Time)
	for _, v := range list {
		one := visitOf(b, v)
		if p.Site != nil && p.Site.Said() {
			night := clock.Night(p.Site.Hours, v.At, v.Waits)
			up := !night && clock.Awake(p.Site.Hours, v.At)
			one.Night, one.Awake = &night, &up
			one.There(v, clock, p.Site.Hours)
		}
		out = append(out, one)
	}
	return out
}
