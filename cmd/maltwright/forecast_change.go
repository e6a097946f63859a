package main

import (
	"errors"
	"time"

	"maltwright/cmd/answer/effect"
	"maltwright/cmd/answer/whatif"
	"maltwright/cmd/folder"
	"maltwright/cmd/write/json"
	"maltwright/cmd/write/text"
	"maltwright/lang/model"
)

// supposed forecasts what would be with the changes that are asked for, beside what is
// written.
func (c Forecast) supposed(w *World, begun time.Time) error {
	if c.Spread || c.Worst || c.Course != "" || c.Format == "csv" {
		return usage("--change sets two forecasts side by side, as text or json; without --spread, --worst and --course")
	}
	in, p, err := c.asks(w, "forecast")
	var record isRecord
	if errors.As(err, &record) {
		return c.supposedOf(w, record)
	}
	if err != nil {
		return err
	}
	ctx, release := w.interruptible()
	defer release()
	stop := w.progress("forecast of " + p.Name)
	r, err := in.as().Suppose(ctx, p, begun, c.Change)
	stop()
	var misuse whatif.Misuse
	var unsound whatif.Unsound
	switch {
	case ctx.Err() != nil:
		return errInterrupted
	case errors.As(err, &misuse):
		return usage("--change: %v", misuse)
	case errors.As(err, &unsound):
		w.tellFaults(unsound)
		return failure{ExitFindings, errors.New("no forecast of the change: put it right first")}
	case errors.As(err, new(*folder.Failed)):
		return exitOf(err)
	case err != nil:
		return failure{ExitFindings, err}
	}
	if c.Format == "json" {
		err = json.Write(w.Out, r, houseOf(p).Say)
	} else {
		err = text.Supposed(w.Out, r, c.Change, houseOf(p), w.options())
	}
	if err != nil {
		return failed("cannot write: %v", err)
	}
	if r.Effects[0].NotForecast == effect.NewSide {
		return errFindings
	}
	return nil
}

// supposedOf says what to type instead of a change of a batch that goes on: of its process, begun
// when the batch was. What was read of the batch holds for what was done, and for nothing else.
func (c Forecast) supposedOf(w *World, e isRecord) error {
	b, err := Follow{File: e.in.name}.pick(&model.House{Batches: e.batches})
	if err != nil {
		return err
	}
	if b.Process == nil || !b.Process.Place.Known() || b.Began.IsZero() {
		return usage("%s is the record of a batch; --change supposes something of a process: name its file", e.in.name)
	}
	args := []string{"forecast", b.Process.Place.File.Name(), "--start", b.Began.Format("2006-01-02T15:04")}
	if c.Process != "" {
		args = append(args, "--process", c.Process)
	}
	for _, change := range c.Change {
		args = append(args, "--change", change)
	}
	return usage("%s is the record of a batch, and its readings hold for what was done; of its process, begun as it was, type: %s", e.in.name, commandLine(args...))
}
