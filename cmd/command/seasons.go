package command

import (
	"cmp"
	"context"
	"slices"

	"maltwright/check"
	"maltwright/lang/finding"
	"maltwright/sim/evidence"
	"maltwright/sim/seasons"
)

// Seasons sets batches side by side.
type Seasons struct {
	Paths  []string `arg:"" name:"path" help:"Files with records of batches, or folders; - is standard input."`
	Format string   `enum:"text,json,csv" default:"text" help:"How to write: text, json or csv."`
	Root   string   `help:"Folder outside of which use reads nothing; by default the folder of each file." placeholder:"FOLDER"`
}

// Help is the longer help of the command.
func (Seasons) Help() string {
	return `Every batch that the files record, in the order in which they began, a column
each: hours, temperatures, moistures, growth, weights and yield, and what was
changed. From three on, their mean, lowest and highest stand behind them. A figure
with ~ is not measured but reckoned with the forecast that agrees best with the
record. A folder stands for every .malt file below it; processes in it are passed
over.

Examples:

  maltwright seasons batches
  maltwright seasons 26-03.malt 27-03.malt
  maltwright seasons batches --format csv > batches.csv

Exit code: 0 the batches were shown, 1 there is none, or a record or its process
must be put right, 2 the command line cannot be understood, 3 a file cannot be
read.`
}

// Run reads the records and writes them side by side.
func (c Seasons) Run(w *World) error {
	files, err := w.gather(c.Paths, c.Root)
	if err != nil {
		return err
	}
	ctx, release := w.interruptible()
	defer release()
	stop := w.progress("reading records")
	rows, read, err := rowsOf(ctx, files)
	stop()
	if ctx.Err() != nil {
		return errInterrupted
	}
	if err != nil {
		return err
	}
	if err := read.tell(w, len(rows), c.Paths, "to show"); err != nil {
		return err
	}
	if err := seasonsWriters[c.Format](w, rows); err != nil {
		return failed("cannot write: %v", err)
	}
	if len(read.faults) > 0 {
		return errFindings
	}
	return nil
}

var seasonsWriters = map[string]func(*World, []recordRow) error{
	"text": writeSeasonsText, "json": writeSeasonsJSON, "csv": writeSeasonsCSV,
}

// recordRow is one batch as it is shown.
type recordRow struct {
	seasons.Season
	file    string
	found   int // findings in its record
	process judgement
}

// rowsOf reads the batches of the files, in the order in which they began.
func rowsOf(ctx context.Context, files []input) ([]recordRow, records, error) {
	var rows []recordRow
	judge := judge{ctx: ctx, known: map[string]judgement{}}
	read, err := recordsOf(files, func(r record) {
		if ctx.Err() != nil {
			return
		}
		row := recordRow{file: r.in.name, process: judge.of(r.in, r.root, r.house, r.batch.Process, r.found)}
		f := row.process.forecast
		if f != nil {
			f = cmp.Or(evidence.AsItWent(ctx, r.batch), f)
		}
		row.Season = seasons.Of(r.batch, f)
		for _, f := range append(check.Record(r.house, r.batch, r.found), r.found...) {
			if f.Severity > finding.Note && inside(f, r.batch.Scope) {
				row.found++
			}
		}
		rows = append(rows, row)
	})
	slices.SortStableFunc(rows, func(a, b recordRow) int { return byBeginning(a.Batch, b.Batch) })
	return rows, read, err
}
