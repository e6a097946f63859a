package command

import (
	"errors"
	"fmt"
	"io"
	"time"

	"maltwright/cmd/answer"
	"maltwright/cmd/answer/outlook"
	"maltwright/cmd/words"
	"maltwright/cmd/write/csv"
	"maltwright/cmd/write/json"
	"maltwright/cmd/write/text"
	"maltwright/lang/finding"
	"maltwright/lang/model"
	"maltwright/lang/quantity"
	"maltwright/lang/read"
	"maltwright/sim/ensemble"
	"maltwright/sim/forecast"
	"maltwright/sim/work"
)

// Forecast forecasts a process.
type Forecast struct {
	File    string `arg:"" help:"A process file; - is standard input."`
	Process string `help:"Which process, where the file holds several." placeholder:"NAME"`
	Start   string `help:"When the first soak begins, such as 2026-03-06T07:00, to show clock times." placeholder:"TIME"`
	Format  string `enum:"text,json,csv" default:"text" help:"How to write: text, json or csv."`
	Spread  bool   `help:"Also say how sure it is: the spread over likely lots, houses and weather, and what drives it."`
	Members int    `help:"How many forecasts make up the spread, 10 to 10000." default:"400" placeholder:"N"`
	Worst   bool   `help:"Also forecast every corner of the site's bands, and say which breaks a gate or a promise."`
	Course  string `help:"Also write the course of the batch, a line each so long, such as 1h; with json and csv." placeholder:"TIME"`
	Root    string `help:"Folder outside of which use reads nothing; by default the folder of the file." placeholder:"FOLDER"`
}

// Help is the longer help of the command.
func (Forecast) Help() string {
	return `Each step with its times, its temperature, the moisture of the grain, what the
drained batch should weigh, and what ended the step: its time, a gate (what it
waited for came about) or its guard (its latest time came first). Then the
totals, and everything the forecast had to assume.

Examples:

  maltwright forecast pale.malt
  maltwright forecast pale.malt --start 2026-03-06T07:00
  maltwright forecast pale.malt --spread --worst
  maltwright forecast house.malt --process "Loft pale" --format csv
  maltwright forecast pale.malt --format csv --course 1h > course.csv

Exit code: 0 the forecast was made, 1 the process must be put right first, or
the forecast broke off, 2 the
command line cannot be understood, 3 the file cannot be read.`
}

// startLayouts are the ways in which --start may be written.
var startLayouts = []string{"2006-01-02T15:04", "2006-01-02 15:04", "2006-01-02T15:04:05", "2006-01-02T15:04Z07:00", time.RFC3339}

// Run forecasts and writes.
func (c Forecast) Run(w *World) error {
	o, err := c.options()
	if err != nil {
		return err
	}
	f, err := c.made(w, "forecast")
	if err != nil {
		return err
	}
	r, err := c.asked(w, f, o)
	if err != nil {
		return err
	}
	if err := outlookWriters[c.Format](w, r, words.Of(f.Process)); err != nil {
		return failed("cannot write: %v", err)
	}
	if !r.Complete {
		return errFindings
	}
	return nil
}

// options are what the flags ask for.
func (c Forecast) options() (o outlook.Options, err error) {
	if o.Start, err = c.start(time.Local); err != nil {
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
	case errors.As(err, &many):
		return r, usage("--course %s: %v", c.Course, err)
	case errors.Is(err, work.ErrPool):
		return r, failure{ExitFindings, fmt.Errorf(
			"%s: no spread, for the forecasts would take over %d steps of the model each; %s", c.File, work.Shared, work.Dearest)}
	}
	return r, err
}

// made forecasts the process that is asked for, on behalf of a command.
func (c Forecast) made(w *World, command string) (*forecast.Forecast, error) {
	files, err := w.gather([]string{c.File}, c.Root)
	if err != nil {
		return nil, err
	}
	if len(files) != 1 {
		return nil, usage("%s is a folder; %s takes one file", c.File, command)
	}
	house, found, err := files[0].load()
	if err != nil {
		return nil, err
	}
	if worst, any := finding.Worst(found); any && worst >= finding.Fault {
		_ = text.Findings(w.Err, atLeast(found, finding.Fault), text.Options{Width: w.Width, Colour: w.colour() && w.ErrTerm, Folder: w.Folder})
		return nil, failure{ExitFindings, errors.New("no forecast: put these right first")}
	}
	p, err := c.pick(house)
	if err != nil {
		return nil, err
	}
	ctx, release := w.interruptible()
	defer release()
	stop := w.progress("forecast of " + p.Name)
	f, err := forecast.Run(p, forecast.Options{Meter: work.NewMeter(ctx, nil)})
	stop()
	switch {
	case ctx.Err() != nil:
		return nil, errInterrupted
	case err != nil:
		return nil, failure{ExitFindings, fmt.Errorf("%s: %w", c.File, err)}
	}
	return f, nil
}

// outlookWriters write an outlook, by format.
var outlookWriters = map[string]func(*World, outlook.Result, words.House) error{
	"text": func(w *World, r outlook.Result, h words.House) error {
		return text.Outlook(w.Out, r, h, w.sheetOptions())
	},
	"json": func(w *World, r outlook.Result, h words.House) error { return json.Write(w.Out, r, h.Say) },
	"csv":  func(w *World, r outlook.Result, _ words.House) error { return writeOutlookCSV(w.Out, r) },
}

// writeOutlookCSV writes a line a step or, where it is asked for, a point of the course.
func writeOutlookCSV(w io.Writer, r outlook.Result) error {
	if r.Course != nil {
		rows := csv.New[outlook.Point](w)
		for _, p := range r.Course {
			rows.Write(p)
		}
		return rows.Close()
	}
	var without []string
	if r.Start.IsZero() {
		without = []string{"start_time", "end_time"}
	}
	rows := csv.New[outlook.Row](w, without...)
	r.Rows(rows.Write)
	return rows.Close()
}

// start reads --start as a time of the zone; the zero time is none. A time that the clocks leave out there
// would be read an hour off, and is refused.
func (c Forecast) start(zone *time.Location) (time.Time, error) {
	if c.Start == "" {
		return time.Time{}, nil
	}
	for _, layout := range startLayouts {
		t, err := time.ParseInLocation(layout, c.Start, zone)
		if err != nil {
			continue
		}
		if layout != time.RFC3339 && t.Format(layout) != c.Start {
			return time.Time{}, usage("--start %q does not come about: the clocks are put forward over it", c.Start)
		}
		return t, nil
	}
	return time.Time{}, usage("--start %q is no time; write it as 2026-03-06T07:00", c.Start)
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
	root, err := read.OpenRoot(in.root)
	if err != nil {
		return nil, nil, failed("%s: %s", in.root, plainError(err))
	}
	defer root.Close()
	h, found := read.Load(in.name, in.text, in.dir, root)
	return h, found, nil
}
