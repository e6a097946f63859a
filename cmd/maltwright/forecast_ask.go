package main

import (
	"errors"
	"fmt"
	"io"

	"maltwright/cmd/answer"
	"maltwright/cmd/answer/outlook"
	"maltwright/cmd/words"
	"maltwright/cmd/write/csv"
	"maltwright/cmd/write/json"
	"maltwright/cmd/write/text"
	"maltwright/lang/quantity"
	"maltwright/sim/ensemble"
	"maltwright/sim/forecast"
	"maltwright/sim/work"
)

// options are what the flags ask for.
func (c Forecast) options(w *World) (o outlook.Options, err error) {
	if o.Start, err = c.start(w); err != nil {
		return o, err
	}
	if c.Members < ensemble.LeastMembers || c.Members > ensemble.MostMembers {
		return o, usage("--members %d: a spread takes %d to %d forecasts", c.Members, ensemble.LeastMembers, ensemble.MostMembers)
	}
	if c.Spread {
		o.Members = c.Members
	}
	o.Worst = c.Worst
	o.Every, err = c.every()
	return o, err
}

// every reads --course; 0 is none.
func (c Forecast) every() (answer.Seconds, error) {
	if c.Course == "" {
		return 0, nil
	}
	q, err := quantity.Parse(c.Course)
	switch every := answer.Seconds(q.SI); {
	case err != nil || q.Dimension != quantity.Time:
		return 0, usage("--course %q is no length of time; write it as 1h or 10min", c.Course)
	case every < outlook.LeastEvery:
		return 0, usage("--course %s: its lines lie %s apart or more", c.Course, words.Span(outlook.LeastEvery))
	case c.Format == "text":
		return 0, usage("--course goes with --format json or csv: it is a table for other programs")
	default:
		return every, nil
	}
}

// asked makes the answer. An interrupt ends it.
func (c Forecast) asked(w *World, f *forecast.Forecast, o outlook.Options) (outlook.Result, error) {
	ctx, release := w.interruptible()
	defer release()
	done := w.counter("forecast")
	o.Progress = done.say
	r, err := outlook.Ask(ctx, f, o)
	done.wipe()
	var many *outlook.TooManyError
	switch {
	case ctx.Err() != nil:
		return r, errInterrupted
	case errors.As(err, &many), errors.Is(err, outlook.ErrTooOften):
		return r, usage("--course %s: %v", c.Course, err)
	case errors.Is(err, work.ErrPool):
		return r, failure{ExitFindings, fmt.Errorf(
			"%s: no spread, because each forecast would take over %d steps of the model; %s", c.File, work.Shared, words.DearestOf(f))}
	}
	return r, err
}

// outlookWriters write an outlook, by format.
var outlookWriters = map[string]func(*World, outlook.Result, words.House) error{
	"text": func(w *World, r outlook.Result, h words.House) error {
		return text.Outlook(w.Out, r, h, w.options())
	},
	"json": func(w *World, r outlook.Result, h words.House) error { return json.Write(w.Out, r, h.Say) },
	"csv":  func(w *World, r outlook.Result, _ words.House) error { return writeOutlookCSV(w.Out, r) },
}

// writeOutlookCSV writes a line a step or, where it is asked for, a point of the course.
func writeOutlookCSV(w io.Writer, r outlook.Result) error {
	var without []string
	if r.Start.IsZero() {
		without = []string{"time", "start_time", "end_time"}
	}
	if r.Course != nil {
		rows := csv.New[outlook.Point](w, without...)
		for _, p := range r.Course {
			rows.Write(p)
		}
		return rows.Close()
	}
	rows := csv.New[outlook.Row](w, without...)
	r.Rows(rows.Write)
	return rows.Close()
}
