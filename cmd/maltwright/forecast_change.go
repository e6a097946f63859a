package main

import (
	"errors"
	"time"

	"maltwright/cmd/answer/effect"
	"maltwright/cmd/answer/whatif"
	"maltwright/cmd/write/json"
	"maltwright/cmd/write/text"
	"maltwright/lang/read"
	"maltwright/lang/source"
)

// supposed forecasts what would be with the changes that are asked for, beside what is
// written.
func (c Forecast) supposed(w *World, begun time.Time) error {
	if c.Spread || c.Worst || c.Course != "" || c.Format == "csv" {
		return usage("--change sets two forecasts side by side, as text or json; without --spread, --worst and --course")
	}
	in, p, err := c.asks(w, "forecast")
	if err != nil {
		return err
	}
	root, err := read.OpenRoot(in.root)
	if err != nil {
		return failed("%s: %s", in.root, plainError(err))
	}
	defer root.Close()
	ctx, release := w.interruptible()
	defer release()
	stop := w.progress("forecast of " + p.Name)
	r, err := whatif.Ask(ctx, p, whatif.Case{
		Name: in.name, Text: in.text, Dir: in.dir, Reader: root, Begun: begun, Changes: c.Change,
		Below: func(f *source.File) string { return below(in, root, f) },
	})
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
