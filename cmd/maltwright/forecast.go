package main

import (
	"errors"
	"fmt"
	"time"

	"maltwright/cmd/words"
	"maltwright/cmd/write/text"
	"maltwright/lang/finding"
	"maltwright/lang/model"
	"maltwright/sim/forecast"
	"maltwright/sim/work"
)

// Forecast forecasts a process.
type Forecast struct {
	File    string   `arg:"" optional:"" help:"A process file; - is standard input. By default the one process of this folder."`
	Process string   `help:"Which process, where the file holds several." placeholder:"NAME"`
	Start   string   `help:"When the first soak begins, such as tomorrow 7am or 2026-03-06T07:00, to show clock times." placeholder:"TIME"`
	Format  string   `enum:"text,json,csv" default:"text" help:"How to write: text, json or csv."`
	Spread  bool     `help:"Also say how sure it is: the spread over likely lots, houses and weather, and what drives it."`
	Members int      `help:"How many forecasts make up the spread, 10 to 10000." default:"400" placeholder:"N"`
	Worst   bool     `help:"Also forecast every corner of the site's bands, and say which breaks a gate or a promise."`
	Course  string   `help:"Also write the course of the batch, a line each so long, such as 1h; with json and csv." placeholder:"TIME"`
	Change  []string `sep:"none" help:"What if: a step or a fact otherwise than written, such as 'soak 1 to 6 h' or 'site air to 41 °F'; the forecast with it beside that without. May stand several times." placeholder:"LINE"`
	Shown
	Root string `help:"Folder outside of which use reads nothing; by default the folder of the file." placeholder:"FOLDER"`
}

// Help is the longer help of the command.
func (Forecast) Help() string {
	return `Each step: how long it lasts and when it ends, its temperature, how wet the grain
is then, what the drained batch should weigh, and what ends the step: its time, its
condition or its latest time, whichever comes first. Then the totals.
Above them stand in a line each what the forecast had to assume and what can hurt
somebody; --assumed and --cautions show them in full.

The record of a batch is forecast from its own start, with its own charge and what was
changed in it, and by its readings until now.

Examples:

  maltwright forecast pale.malt
  maltwright forecast pale.malt --start "fri 18:00"
  maltwright forecast pale.malt --start 2026-03-06T07:00
  maltwright forecast pale.malt --spread --worst
  maltwright forecast house.malt --process "Loft pale" --format csv
  maltwright forecast pale.malt --format csv --course 1h > course.csv
  maltwright forecast pale.malt --change 'soak 1 to 6 h'
  maltwright forecast pale.malt --change 'from 5 kg of "Far field 2026"'
  maltwright forecast pale.malt --change 'kiln airflow to 80 m3/h'

Exit code: 0 the forecast was made, 1 the process must be put right first, or
the forecast broke off, 2 the
command line cannot be understood, 3 the file cannot be read.`
}

// Run forecasts and writes.
func (c Forecast) Run(w *World) error {
	if c.File == "" {
		file, err := w.theProcess("forecast")
		if err != nil {
			return err
		}
		c.File = file
	}
	o, err := c.options(w)
	if err != nil {
		return err
	}
	if len(c.Change) > 0 {
		return c.supposed(w, o.Start)
	}
	f, err := c.made(w, "forecast", o.Start)
	var record isRecord
	if errors.As(err, &record) {
		return c.ofRecord(w, record)
	}
	if err != nil {
		return err
	}
	r, err := c.asked(w, f, o)
	if err != nil {
		return err
	}
	w.shown = c.Shown
	if err := outlookWriters[c.Format](w, r, words.Of(f.Process)); err != nil {
		return failed("cannot write: %v", err)
	}
	if !r.Complete {
		return errFindings
	}
	return nil
}

// made forecasts the process that is asked for, on behalf of a command. Begun is when its
// first soak begins, the zero time where that is not known.
func (c Forecast) made(w *World, command string, begun time.Time) (*forecast.Forecast, error) {
	in, err := w.oneFile(command, c.File, c.Root)
	if err != nil {
		return nil, err
	}
	return c.madeOf(w, in, begun)
}

// madeOf forecasts the process of a file that was read.
func (c Forecast) madeOf(w *World, in input, begun time.Time) (*forecast.Forecast, error) {
	_, p, err := c.asksOf(w, in)
	if err != nil {
		return nil, err
	}
	ctx, release := w.interruptible()
	defer release()
	stop := w.progress("forecast of " + p.Name)
	f, err := forecast.Run(p, forecast.Options{Begun: begun, Meter: work.NewMeter(ctx, nil)})
	stop()
	switch {
	case ctx.Err() != nil:
		return nil, errInterrupted
	case err != nil:
		return nil, failure{ExitFindings, fmt.Errorf("%s: %s", c.File, words.Of(p).Cause(err))}
	}
	return f, nil
}

// asks reads the file, and gives the process that is asked for.
func (c Forecast) asks(w *World, command string) (input, *model.Process, error) {
	in, err := w.oneFile(command, c.File, c.Root)
	if err != nil {
		return input{}, nil, err
	}
	return c.asksOf(w, in)
}

// asksOf gives the process that is asked for in a file that was read.
func (c Forecast) asksOf(w *World, in input) (input, *model.Process, error) {
	house, found, err := in.load()
	if err != nil {
		return input{}, nil, err
	}
	if worst, any := finding.Worst(found); any && worst >= finding.Fault {
		w.tellFaults(found)
		return input{}, nil, failure{ExitFindings, errors.New("no forecast: put these right first")}
	}
	c.File = in.name
	if len(house.Processes) == 0 && len(house.Batches) > 0 && c.Process == "" {
		return in, nil, isRecord{in, house.Batches}
	}
	p, err := c.pick(house)
	return in, p, err
}

// tellFaults shows what keeps a file from being used.
func (w World) tellFaults(found []finding.Finding) {
	_ = text.Findings(w.Err, atLeast(found, finding.Fault), text.Options{Width: w.Width, Colour: w.colour() && w.ErrTerm, Folder: w.Folder})
}

// start reads --start; the zero time is none.
func (c Forecast) start(w *World) (time.Time, error) {
	if c.Start == "" {
		return time.Time{}, nil
	}
	return w.said("--start", c.Start, false)
}

func (c Forecast) pick(h *model.House) (*model.Process, error) {
	var names []string
	for _, p := range h.Processes {
		if p.Name == c.Process || c.Process == "" && len(h.Processes) == 1 {
			return p, nil
		}
		names = append(names, fmt.Sprintf("%q", p.Name))
	}
	switch {
	case len(names) == 0:
		return nil, failure{ExitFindings, fmt.Errorf("%s holds no process to forecast", c.File)}
	case c.Process == "":
		return nil, usage("%s holds %d processes; choose one with --process: %s", c.File, len(names), joined(names))
	}
	return nil, usage("no process of %s is called %q; it holds %s", c.File, c.Process, joined(names))
}

func joined(names []string) string {
	out := ""
	for i, n := range names {
		if i > 0 {
			out += ", "
		}
		out += n
	}
	return out
}

func atLeast(found []finding.Finding, level finding.Severity) []finding.Finding {
	var list []finding.Finding
	for _, f := range found {
		if f.Severity >= level {
			list = append(list, f)
		}
	}
	return list
}

// load reads the input as far as its meaning.
func (in input) load() (*model.House, []finding.Finding, error) {
	h, found, err := in.as().Load()
	return h, found, exitOf(err)
}
