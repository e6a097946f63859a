package main

import (
	"context"
	"errors"
	"fmt"
	"slices"
	"time"

	"maltwright/cmd/answer/outlook"
	"maltwright/cmd/answer/progress"
	"maltwright/cmd/answer/timetable"
	"maltwright/cmd/words"
	"maltwright/lang/model"
	"maltwright/sim/forecast"
	"maltwright/sim/infer/evidence"
	"maltwright/sim/infer/follow"
	"maltwright/sim/visits"
	"maltwright/sim/work"
)

// isRecord is the outcome of asking a file for a process that holds records of batches alone.
type isRecord struct {
	in      input
	batches []*model.Batch
}

func (e isRecord) Error() string {
	return fmt.Sprintf("%s holds the record of a batch, but no process", e.in.name)
}

// ongoing is a batch that goes on: its forecast by its own start, process and changes, and
// as its readings have it, where there are any.
type ongoing struct {
	in       input
	batch    *model.Batch
	at       time.Time         // as of when
	follow   *follow.Following // nil where nothing was read of it
	forecast *forecast.Forecast
}

// goingOn makes the forecast of the batch of a record, on behalf of a command.
func (w *World) goingOn(e isRecord, command string) (*ongoing, error) {
	b, err := Follow{File: e.in.name}.pick(&model.House{Batches: e.batches})
	switch {
	case len(e.batches) > 1:
		return nil, usage("%s holds %d batches; %s takes one, and follow says with --batch which", e.in.name, len(e.batches), command)
	case err != nil:
		return nil, err
	}
	at, _ := progress.When(b, w.now())
	r := &ongoing{in: e.in, batch: b, at: at}
	if command != "forecast" && r.weighedOut() { // nothing need be forecast to see that
		return nil, isOver(e.in.name, b)
	}
	w.tellPin(b)
	ctx, stop := w.interruptible()
	defer stop()
	if r.read() {
		r.follow, err = Follow{File: e.in.name, Members: usualMembers}.followed(ctx, w, b, at)
		if err == nil {
			r.forecast = r.follow.Middle()
		}
		return r, err
	}
	t, err := evidence.New(b, at)
	if err == nil {
		t.Bound(ctx, nil)
		r.forecast, err = t.Run(make([]float64, len(t.Axes)), false) // with what was changed in it
	}
	return r, notFollowed(ctx, e.in.name, b, err)
}

// usualMembers is how many forecasts follow weighs where nothing else is asked.
const usualMembers = 200

// read tells whether anything was read of the batch by then.
func (r *ongoing) read() bool {
	for _, x := range r.batch.Readings {
		if !x.When().After(r.at) {
			return true
		}
	}
	return false
}

// weighedOut tells whether the clean malt was weighed by then.
func (r *ongoing) weighedOut() bool {
	return slices.ContainsFunc(r.batch.Readings, func(x model.Reading) bool { return model.Clean(x) && !x.When().After(r.at) })
}

// isOver refuses to plan a batch of which nothing is left to do.
func isOver(file string, b *model.Batch) error {
	return usage("%s: batch %q is over; nothing is left to do", file, b.Name)
}

// due are the visits that are yet to come.
func (r *ongoing) due() []visits.Visit {
	if r.follow != nil {
		return r.follow.Due
	}
	const justNow = 60 // s
	return slices.DeleteFunc(visits.Gather(visits.List(r.forecast)), func(v visits.Visit) bool {
		return v.At < r.at.Sub(r.batch.Began.Time).Seconds()-justNow
	})
}

// tell says what the forecast goes by.
func (r *ongoing) tell(w *World) {
	by := "by its start and its process; it has no readings yet"
	if r.follow != nil {
		by = fmt.Sprintf("by its readings until %s; how sure it is says: %s", r.at.Format("2006-01-02 15:04"), commandLine("follow", r.in.name))
	}
	w.aside(fmt.Sprintf("batch %s, begun %s, %s", words.Safe(r.batch.Name), r.batch.Began.Format("2006-01-02 15:04"), by))
}

// notFollowed gives an error of a batch that could not be followed its exit code.
func notFollowed(ctx context.Context, file string, b *model.Batch, err error) error {
	switch {
	case err == nil:
		return nil
	case ctx.Err() != nil:
		return errInterrupted
	case errors.Is(err, work.ErrPool):
		return failure{ExitFindings, fmt.Errorf("%s: batch %q: %w; %s", file, b.Name, err, words.Dearest)}
	}
	return failure{ExitFindings, fmt.Errorf("%s: batch %q: %s", file, b.Name, houseOf(b.Process).Cause(err))}
}

// ofRecord writes the forecast of a batch that goes on.
func (c Forecast) ofRecord(w *World, e isRecord) error {
	switch {
	case c.Start != "":
		return usage("%s says itself when its batch began; leave --start out", e.in.name)
	case c.Spread || c.Worst || c.Course != "" || len(c.Change) > 0:
		return usage("%s is the record of a batch; how sure its forecast is says: %s", e.in.name, commandLine("follow", e.in.name))
	}
	r, err := w.goingOn(e, "forecast")
	if err != nil {
		return err
	}
	r.tell(w)
	a := outlook.Of(r.forecast, r.batch.Began.Time)
	w.shown = c.Shown
	if err := outlookWriters[c.Format](w, a, words.OfBatch(r.forecast.Process, r.batch)); err != nil {
		return failed("cannot write: %v", err)
	}
	if !a.Complete {
		return errFindings
	}
	return nil
}

// ofRecord writes the visits that a batch under way still needs.
func (c Visits) ofRecord(w *World, e isRecord) error {
	if c.Start != "" || c.Ready != "" {
		return usage("%s says itself when its batch began; leave --start and --ready out", e.in.name)
	}
	r, err := w.goingOn(e, "visits")
	if err != nil {
		return err
	}
	if r.follow != nil && r.follow.Over() {
		return isOver(e.in.name, r.batch)
	}
	r.tell(w)
	a, err := timetable.Ahead(r.forecast, r.due(), r.batch.Began.Time)
	if err != nil {
		return failure{ExitFindings, fmt.Errorf("%s: %w", e.in.name, err)}
	}
	if err := timetableWriters[c.Format](w, a, words.OfBatch(r.forecast.Process, r.batch)); err != nil {
		return failed("cannot write: %v", err)
	}
	return nil
}
