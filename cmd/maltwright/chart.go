package main

import (
	"fmt"

	"maltwright/cmd/chart/figures"
	charthtml "maltwright/cmd/chart/html"
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
	title    string // of all of them
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
	if err := chartWriters[c.Format](w, d); err != nil {
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
