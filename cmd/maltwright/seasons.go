package main

import (
	"fmt"
	"slices"

	"maltwright/cmd/answer/ledger"
	"maltwright/cmd/answer/trace"
	reports "maltwright/cmd/report"
	reporthtml "maltwright/cmd/report/html"
	"maltwright/cmd/words"
	"maltwright/cmd/write/csv"
	"maltwright/cmd/write/json"
	"maltwright/cmd/write/text"
)

// Seasons sets batches side by side.
type Seasons struct {
	Paths  []string `arg:"" optional:"" name:"path" help:"Files with records of batches, or folders; - is standard input. By default the whole of this folder."`
	Trace  string   `help:"Show instead what became of one lot, by its name or the number of a delivery: what came in, the batches, their malt, what is left." placeholder:"LOT"`
	Format string   `enum:"text,json,csv,html" default:"text" help:"How to write: text, json, csv, or html (one page with charts that needs nothing else)."`
	Root   string   `help:"Folder outside of which use reads nothing; by default the folder of each file." placeholder:"FOLDER"`
}

// Help is the longer help of the command.
func (Seasons) Help() string {
	return `Every batch that the files record, in the order in which they began, a column
each: hours, temperatures, moistures, growth, weights and yield, and what was
changed. From three on, their mean, lowest and highest stand behind them. A figure
with ~ is not measured, but taken from the forecast that agrees best with the
record. A folder stands for every .malt file below it; processes in it are passed
over.

Examples:

  maltwright seasons batches
  maltwright seasons 26-03.malt 27-03.malt
  maltwright seasons batches --format csv > batches.csv
  maltwright seasons batches --format html > season.html
  maltwright seasons batches --trace "Far field 2026"

Exit code: 0 the batches were shown, 1 there is none, or a record or its process
must be put right, or more was taken of the lot than came in, 2 the command line cannot be understood, 3 a file cannot be
read.`
}

// Run reads the records and writes them side by side.
func (c Seasons) Run(w *World) error {
	if err := w.noTerminal(c.Format); err != nil {
		return err
	}
	if len(c.Paths) == 0 {
		c.Paths = []string{"."}
	}
	files, err := w.gather(c.Paths, c.Root)
	if err != nil {
		return err
	}
	ctx, release := w.interruptible()
	defer release()
	stop := w.progress("reading records")
	book := ledger.New(ctx, nil)
	read, err := c.enter(book, files)
	stop()
	if ctx.Err() != nil {
		return errInterrupted
	}
	if err != nil {
		return err
	}
	r := book.Result()
	if c.Trace != "" {
		return c.trace(w, read, r)
	}
	if err := read.tell(w, len(r.Batches), c.Paths, "to show"); err != nil {
		return err
	}
	tellCostly(w, r)
	if err := seasonsWriters[c.Format](w, r); err != nil {
		return failed("cannot write: %v", err)
	}
	if len(read.faults) > 0 {
		return errFindings
	}
	return nil
}

var seasonsWriters = map[string]func(*World, ledger.Result) error{
	"text": func(w *World, r ledger.Result) error { // in the units of the first
		return text.Ledger(w.Out, r, words.Of(r.Batches[0].Written), w.options())
	},
	"json": func(w *World, r ledger.Result) error {
		return json.Write(w.Out, r, words.House{}.Say)
	},
	"html": func(w *World, r ledger.Result) error {
		page := seasonPage(r, nil)
		return reporthtml.Write(w.Out, reports.New(page.Title, page))
	},
	"csv": func(w *World, r ledger.Result) error {
		rows := csv.New[ledger.Batch](w.Out, "changes", "doubtful", "remarks", "pinned_since")
		for _, b := range r.Batches {
			rows.Write(b)
		}
		return rows.Close()
	},
}

// enter reads the batches of the files into a book; of a lot that is traced, its own alone.
func (c Seasons) enter(book *ledger.Book, files []input) (records, error) {
	return recordsOf(files, func(r record) {
		if c.Trace != "" && !trace.Takes(r.batch, r.house, c.Trace) {
			return
		}
		book.Enter(ledger.Record{File: r.in.name, Root: r.in.root, Below: below(r.in, r.root, ledger.Standing(r.batch).Place.File),
			Reader: r.root, House: r.house, Batch: r.batch, Found: r.found})
	})
}

// tellCostly says which batches are shown by their words alone.
func tellCostly(w *World, r ledger.Result) {
	costly := slices.DeleteFunc(slices.Clone(r.Batches), func(b ledger.Batch) bool { return b.NotForecast != ledger.TooDear })
	if len(costly) == 0 {
		return
	}
	said := fmt.Sprintf("batch %q of %s", costly[0].Batch, costly[0].File)
	if len(costly) > 1 {
		said += fmt.Sprintf(" and %d more", len(costly)-1)
	}
	w.aside(fmt.Sprintf("only as written, without a forecast: %s; the forecasts would take more steps of the model than one record, or all of one file together, may have", words.Safe(said)))
}
