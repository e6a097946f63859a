package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"runtime"
	"slices"
	"strings"

	"maltwright/cmd/answer/curve"
	"maltwright/cmd/answer/ledger"
	"maltwright/cmd/chart"
	"maltwright/cmd/chart/figures"
	charthtml "maltwright/cmd/chart/html"
	chartpaper "maltwright/cmd/chart/onpaper"
	"maltwright/cmd/chart/svg"
	"maltwright/cmd/chart/term"
	"maltwright/cmd/words"
)

// Chart draws a batch over time.
type Chart struct {
	Paths   []string `arg:"" optional:"" name:"path" help:"A process file, or the record of a batch; several records or a folder are drawn over each other; - is standard input. By default the one batch under way in this folder, or else its one process."`
	Of      *string  `enum:"moisture,weight,heat,growth,bed,drivers,lengths,all" help:"What to draw: moisture, weight, heat, growth, bed (of a kiln or a box, by its depth), drivers (of the spread), lengths (of the stages of several batches), or all. By default the moisture, in html and pdf all." placeholder:"WHAT"`
	Format  string   `enum:"term,svg,html,pdf" default:"term" help:"How to draw: term with letters, svg one picture, html a page that needs nothing else, pdf a page for each picture."`
	Start   string   `help:"When the first soak of a process begins, such as tomorrow 7am or 2026-03-06T07:00, to show clock times and nights." placeholder:"TIME"`
	Spread  bool     `help:"Of a process also show how sure it is: the band in which eight in ten of likely lots, houses and weather lie. A record under way has it anyway."`
	Members int      `default:"200" help:"How many forecasts make up a band, 20 to 10000." placeholder:"N"`
	At      string   `help:"Of a record: as of this time, as in follow." placeholder:"TIME"`
	Process string   `help:"Which process, where the file holds several." placeholder:"NAME"`
	Batch   string   `help:"Which batch, where the file holds several." placeholder:"NAME"`
	NoCache bool     `help:"Do not use or keep results for the next time; the figures are the same."`
	Root    string   `help:"Folder outside of which use reads nothing; by default the folder of the file." placeholder:"FOLDER"`
}

// Help is the longer help of the command.
func (Chart) Help() string {
	return `A process is drawn as it is forecast. A record is drawn by its readings, as follow
has it: what was read stands on the curve, what is in doubt is marked, and beyond
now is a band in which eight in ten cases lie. Several records, or a folder, are
drawn over each other by what was weighed and read. Conditions of the process
are dotted lines with their words; night is a thick axis.

Examples:

  maltwright chart pale.malt
  maltwright chart pale.malt --of heat --start "fri 18:00"
  maltwright chart 26-03.malt --of weight
  maltwright chart batches
  maltwright chart pale.malt --spread --of drivers
  maltwright chart pale.malt --format svg > pale.svg
  maltwright chart 26-03.malt --format html > 26-03.html

Exit code: 0 it was drawn, 1 the process or the record must be put right first, or
the forecast broke off, 2 the command line cannot be understood, 3 the file cannot be
read.`
}

// drawing is what is to be drawn: charts in the order of a page.
type drawing struct {
	charts   []charthtml.Laid
	complete bool
}

// Run makes the charts and writes them.
func (c Chart) Run(w *World) error {
	if err := w.noTerminal(c.Format); err != nil {
		return err
	}
	d, err := c.drawn(w)
	if err != nil {
		return err
	}
	if len(d.charts) == 0 {
		return failure{ExitFindings, fmt.Errorf("there is nothing to draw of %s in it", c.what())}
	}
	if n := len(d.charts); n > 1 && c.Format == "svg" {
		return usage("an svg holds one picture, and there are %d of %s; write --format html", n, c.what())
	}
	if err := chartWriters[c.Format](w, d.charts); err != nil {
		return failed("cannot write: %v", err)
	}
	if !d.complete {
		return errFindings
	}
	return nil
}

const (
	ofAll     = "all"
	ofDrivers = "drivers"
	ofLengths = "lengths"
)

// what is to be drawn where nothing is said.
func (c Chart) what() string {
	switch {
	case c.Of != nil:
		return *c.Of
	case c.Format == "html", c.Format == "pdf":
		return ofAll
	}
	return figures.OfMoisture
}

// chartWriters write charts, by format.
var chartWriters = map[string]func(*World, []charthtml.Laid) error{
	"term": func(w *World, list []charthtml.Laid) error { return w.chartsInLetters(list) },
	"svg": func(w *World, list []charthtml.Laid) error {
		return svg.Write(w.Out, list[0], svg.Options{})
	},
	"html": func(w *World, list []charthtml.Laid) error {
		return charthtml.Write(w.Out, titleOf(list[0]), list...)
	},
	"pdf": func(w *World, list []charthtml.Laid) error {
		return w.onPaper(chartpaper.Write(w.Out, list, chartpaper.Options{}))
	},
}

// titleOf is what a chart is called.
func titleOf(x charthtml.Laid) string {
	switch x := x.(type) {
	case chart.Chart:
		return x.Title
	case chart.Bars:
		return x.Title
	}
	return ""
}

// chartsInLetters writes charts one below another.
func (w *World) chartsInLetters(list []charthtml.Laid) error {
	o := term.Options{Width: w.Width, Colour: w.colour(), Plain: !w.patterns()}
	for i, x := range list {
		if i > 0 {
			if _, err := io.WriteString(w.Out, "\n"); err != nil {
				return err
			}
		}
		var err error
		switch x := x.(type) {
		case chart.Chart:
			err = term.Write(w.Out, x, o)
		case chart.Bars:
			err = term.WriteBars(w.Out, x, o)
		}
		if err != nil {
			return err
		}
	}
	return nil
}

// patterns tells whether Out shows patterns of dots: its locale is of UTF-8, and it is not the console of Linux,
// whose letters have none.
func (w World) patterns() bool {
	if w.Env("TERM") == "linux" {
		return false
	}
	for _, name := range []string{"LC_ALL", "LC_CTYPE", "LANG"} {
		if locale := strings.ToLower(w.Env(name)); locale != "" {
			return strings.Contains(locale, "utf-8") || strings.Contains(locale, "utf8")
		}
	}
	return runtime.GOOS == "windows"
}

// drawn makes the charts of what the paths stand for.
func (c Chart) drawn(w *World) (drawing, error) {
	if c.Members < leastBand || c.Members > mostBand {
		return drawing{}, usage("--members %d: a band is made of %d to %d forecasts", c.Members, leastBand, mostBand)
	}
	if c.Format == "svg" && c.what() == ofAll {
		return drawing{}, usage("an svg holds one picture; say of what with --of, or write --format html")
	}
	if len(c.Paths) == 0 {
		return c.ofFolder(w)
	}
	files, err := w.gather(c.Paths, c.Root)
	if err != nil {
		return drawing{}, err
	}
	if len(files) > 1 {
		return c.ofSeason(w, files)
	}
	return c.ofFile(w, c.Paths[0])
}

// A band is made of so many forecasts.
const leastBand, mostBand = 20, 10000

// ofFolder draws the one batch under way in the working folder, or else its one process.
func (c Chart) ofFolder(w *World) (drawing, error) {
	on, err := w.underway("chart", c.Batch, c.Root, w.now())
	var none failure
	switch {
	case err == nil:
		w.aside(fmt.Sprintf("chart of %s, in which batch %s is under way", words.Safe(on.in.name), words.Safe(on.name)))
		c.Batch = on.name
		return c.ofRecord(w, on.in.name)
	case c.Batch != "", errors.As(err, &none) && none.code != ExitUsage:
		return drawing{}, err
	}
	file, other := w.theProcess("chart")
	if other != nil {
		return drawing{}, other
	}
	return c.ofFile(w, file)
}

// ofFile draws a process or, of a file that holds records alone, its batch or its batches.
func (c Chart) ofFile(w *World, file string) (drawing, error) {
	of := Forecast{File: file, Process: c.Process, Root: c.Root}
	if c.Batch != "" || c.At != "" {
		return c.ofRecord(w, file)
	}
	begun, err := Forecast{Start: c.Start}.start(w)
	if err != nil {
		return drawing{}, err
	}
	f, err := of.made(w, "chart", begun)
	var record isRecord
	switch {
	case errors.As(err, &record) && len(record.batches) > 1:
		return c.ofSeason(w, []input{record.in})
	case errors.As(err, &record):
		return c.ofRecord(w, file)
	case err != nil:
		return drawing{}, err
	}
	o := curve.Options{Start: begun}
	if c.Spread || c.what() == ofDrivers {
		o.Members = c.Members
	}
	h := words.Of(f.Process)
	return c.curve(w, h, o, func(ctx context.Context, o curve.Options) (curve.Curve, error) { return curve.Forecast(ctx, f, o) })
}

// ofRecord draws the batch of a record, by its readings.
func (c Chart) ofRecord(w *World, file string) (drawing, error) {
	switch {
	case c.Start != "":
		return drawing{}, usage("%s says itself when its batch began; leave --start out", file)
	case c.what() == ofDrivers:
		return drawing{}, usage("%s is the record of a batch; what drives its spread says: %s", file, commandLine("follow", file))
	}
	follow := Follow{File: file, Batch: c.Batch, At: c.At, Members: c.Members, NoCache: c.NoCache, Root: c.Root}
	b, err := follow.batch(w)
	if err != nil {
		return drawing{}, err
	}
	at, _, err := follow.time(w, b)
	if err != nil {
		return drawing{}, err
	}
	w.tellPin(b)
	ctx, stop := w.interruptible()
	defer stop()
	f, err := follow.followed(ctx, w, b, at)
	if err != nil {
		return drawing{}, err
	}
	h := words.OfBatch(f.Trial.Process, f.Trial.Batch)
	return c.curve(w, h, curve.Options{Members: c.Members}, func(ctx context.Context, o curve.Options) (curve.Curve, error) { return curve.Batch(ctx, f, o) })
}

// curve draws what is asked of a curve.
func (c Chart) curve(w *World, h words.House, o curve.Options, of func(context.Context, curve.Options) (curve.Curve, error)) (drawing, error) {
	ctx, stop := w.interruptible()
	defer stop()
	done := w.counter("forecast")
	o.Progress = done.say
	x, err := of(ctx, o)
	done.wipe()
	switch {
	case ctx.Err() != nil:
		return drawing{}, errInterrupted
	case err != nil:
		return drawing{}, failure{ExitFindings, fmt.Errorf("%s: %s", strings.Join(c.Paths, " "), h.Cause(err))}
	}
	d := drawing{complete: x.Complete}
	drivers := func() {
		if x.Bands != nil && x.Bands.Spread != nil {
			if b := figures.Drivers(x.Bands.Spread.Drivers, h); len(b.Groups) > 0 {
				d.charts = append(d.charts, b)
			}
		}
	}
	switch what := c.what(); what {
	case ofLengths:
		return drawing{}, usage("--of lengths takes several records, or a folder of them")
	case ofDrivers:
		drivers()
	case ofAll:
		d.take(figures.All(&x, h))
		drivers()
	default:
		list, _ := figures.Named(what, &x, h)
		d.take(list)
	}
	return d, nil
}

func (d *drawing) take(list []chart.Chart) {
	for _, x := range list {
		d.charts = append(d.charts, x)
	}
}

// ofSeason draws batches over each other.
func (c Chart) ofSeason(w *World, files []input) (drawing, error) {
	if what := c.what(); slices.Contains([]string{figures.OfGrowth, figures.OfBed, ofDrivers}, what) {
		return drawing{}, usage("several batches are drawn over each other by what was read: --of moisture, weight, heat, lengths or all")
	}
	ctx, release := w.interruptible()
	defer release()
	stop := w.progress("reading records")
	book := ledger.New(ctx, nil)
	read, err := Seasons{}.enter(book, files)
	stop()
	if ctx.Err() != nil {
		return drawing{}, errInterrupted
	}
	if err != nil {
		return drawing{}, err
	}
	r := book.Result()
	if err := read.tell(w, len(r.Batches), c.Paths, "to draw"); err != nil {
		return drawing{}, err
	}
	tellCostly(w, r)
	s, h := curve.SeasonOf(r), words.Of(r.Batches[0].Written)
	d := drawing{complete: len(read.faults) == 0}
	if what := c.what(); what != ofLengths {
		if x := season(figures.Season(s, h), what); len(x.Panels) > 0 {
			d.charts = append(d.charts, x)
		}
	}
	if what := c.what(); what == ofLengths || what == ofAll {
		if b := figures.Lengths(s); len(b.Groups) > 0 {
			d.charts = append(d.charts, b)
		}
	}
	return d, nil
}

// season is the chart of a season with one of its panels, or all.
func season(x chart.Chart, what string) chart.Chart {
	at := slices.Index([]string{figures.OfWeight, figures.OfMoisture, figures.OfHeat}, what)
	if at >= 0 {
		x.Panels = slices.DeleteFunc(x.Panels, func(p chart.Panel) bool { return p.Name != seasonPanels[at] })
	}
	return x
}

// seasonPanels are the names of the panels of a season, as figures has them.
var seasonPanels = []string{"weight", "moisture", "bed"}
