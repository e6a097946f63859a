package main

import (
	"errors"
	"fmt"
	"time"

	"maltwright/cmd/answer/timetable"
	"maltwright/cmd/words"
	"maltwright/cmd/write/ics"
	"maltwright/cmd/write/json"
	"maltwright/cmd/write/text"
	"maltwright/lang/model"
	"maltwright/sim/forecast"
)

// Visits writes the timetable of a batch.
type Visits struct {
	File    string `arg:"" optional:"" help:"A process file; - is standard input. By default the one process of this folder."`
	Process string `help:"Which process, where the file holds several." placeholder:"NAME"`
	Start   string `help:"When the first soak begins, such as tomorrow 7am or 2026-03-06T07:00." placeholder:"TIME"`
	Ready   string `help:"When the malt is to be ready, its rootlets off; reckons back to the first soak." placeholder:"TIME"`
	Format  string `enum:"text,json,ics" default:"text" help:"How to write: text, json, or ics for a calendar."`
	Root    string `help:"Folder outside of which use reads nothing; by default the folder of the file." placeholder:"FOLDER"`
}

// Help is the longer help of the command.
func (Visits) Help() string {
	return `Every time somebody has to go to the batch, from the first filling to the end of
the rest in store: what to do, how moist the grain should be and what the whole
batch should weigh, and which visits fall in the night, when by its site nobody is
awake. Then the hour of that day to begin at, so that the fewest do.

Times are those of the computer's time zone, over the change of the clocks too; a
time may name its own offset, as in 2026-03-06T07:00+01:00, or be said as people say
it: fri 18:00, tomorrow 7am, in 2 h. What was understood is told. A calendar reads the
file that --format ics makes, and reminds a quarter of an hour before.

Of the record of a batch it lists what is yet to come, by what was read of it; the
record says itself when it began.

Examples:

  maltwright visits 26-03.malt
  maltwright visits pale.malt --start 2026-03-06T07:00
  maltwright visits pale.malt --ready 2026-03-14T12:00
  maltwright visits pale.malt --start 2026-03-06T07:00 --format ics > pale.ics

Exit code: 0 the timetable was made, 1 the process must be put right first, or
the forecast broke off, 2 the command line cannot be understood, 3 the file cannot
be read.`
}

// Run forecasts and writes the timetable.
func (c Visits) Run(w *World) error {
	if c.File == "" {
		file, err := w.theProcess("visits")
		if err != nil {
			return err
		}
		c.File = file
	}
	var record isRecord
	if c.Start == "" && c.Ready == "" && c.File != "-" {
		if _, _, err := (Forecast{File: c.File, Process: c.Process, Root: c.Root}).asks(w, "visits"); errors.As(err, &record) {
			return c.ofRecord(w, record)
		}
	}
	when, err := c.when(w)
	if err != nil {
		return err
	}
	f, err := c.forecast(w, when)
	if errors.As(err, &record) {
		return c.ofRecord(w, record)
	}
	if err != nil {
		return err
	}
	r, err := timetable.Of(f, when, c.Ready != "")
	if err != nil {
		return failure{ExitFindings, fmt.Errorf("%s: %w", c.File, err)}
	}
	if err := timetableWriters[c.Format](w, r, words.Of(f.Process)); err != nil {
		return failed("cannot write: %v", err)
	}
	return nil
}

// mostReckoned is how often a start is reckoned back: where something stands at the clock, how
// long the batch takes hangs on when it begins.
const mostReckoned = 5

// forecast forecasts a batch that begins at a time or, with --ready, is ready then.
func (c Visits) forecast(w *World, when time.Time) (*forecast.Forecast, error) {
	of := Forecast{File: c.File, Process: c.Process, Root: c.Root}
	begun := when
	if c.Ready != "" {
		begun = time.Time{}
	}
	f, err := of.made(w, "visits", begun)
	for range mostReckoned {
		if err != nil || c.Ready == "" || !model.ByClock(f.Process) {
			break
		}
		next := timetable.Begins(f, when)
		if next.Equal(begun) {
			break
		}
		begun = next
		f, err = of.made(w, "visits", begun)
	}
	return f, err
}

// timetableWriters write a timetable, by format.
var timetableWriters = map[string]func(*World, timetable.Result, words.House) error{
	"text": func(w *World, r timetable.Result, h words.House) error {
		return text.Timetable(w.Out, r, h, w.options())
	},
	"json": func(w *World, r timetable.Result, h words.House) error { return json.Write(w.Out, r, h.Say) },
	"ics":  func(w *World, r timetable.Result, h words.House) error { return ics.Write(w.Out, r, h) },
}

// when is the time given with either flag.
func (c Visits) when(w *World) (time.Time, error) {
	switch {
	case c.Start == "" && c.Ready == "":
		return time.Time{}, usage("visits needs the time of the first soak, --start 2026-03-06T07:00, or that at which the malt is to be ready, --ready 2026-03-14T12:00")
	case c.Start != "" && c.Ready != "":
		return time.Time{}, usage("--start and --ready stand together; one follows from the other, so give one")
	case c.Start != "":
		return w.said("--start", c.Start, false)
	}
	r := w.reader(false)
	r.Dated = true // a batch takes days, so that the next 14:00 is hardly meant
	return w.saidTo(r, "--ready", c.Ready)
}
