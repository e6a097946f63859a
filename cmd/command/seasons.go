package command

import (
	"cmp"
	"context"
	"errors"
	"fmt"
	"slices"

	"maltwright/check"
	"maltwright/cmd/words"
	"maltwright/lang/finding"
	"maltwright/sim/infer/evidence"
	"maltwright/sim/seasons"
	"maltwright/sim/work"
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
	rows, read, err := rowsOf(ctx, files, seasonsPool)
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
	tellCostly(w, rows)
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
	costly  bool // it is shown by its words alone, for forecasts of it would cost too much
}

// seasonsPool is what the forecasts of the batches of one file may spend.
func seasonsPool() *work.Pool { return work.NewPool(work.Seasons) }

// rowsOf reads the batches of the files, in the order in which they began. The forecasts
// of those of one file spend from a pool; past it batches are shown by their words alone.
func rowsOf(ctx context.Context, files []input, pool func() *work.Pool) ([]recordRow, records, error) {
	var rows []recordRow
	judge, file := judge{ctx: ctx, known: map[string]judgement{}, checked: map[string]check.Report{}}, ""
	read, err := recordsOf(files, func(r record) {
		if ctx.Err() != nil {
			return
		}
		if judge.pool == nil || r.in.name != file {
			judge.pool, file = pool(), r.in.name
		}
		rows = append(rows, judge.row(r))
	})
	slices.SortStableFunc(rows, func(a, b recordRow) int { return byBeginning(a.Batch, b.Batch) })
	return rows, read, err
}

// row is a batch as it is shown.
func (j *judge) row(r record) recordRow {
	row := recordRow{file: r.in.name, process: j.of(r.in, r.root, r.house, r.batch.Process, r.found)}
	f := row.process.forecast
	row.costly = row.process.costly
	if f != nil {
		went, err := evidence.MostLikely(j.ctx, r.batch, j.pool)
		f, row.costly = cmp.Or(went, f), errors.Is(err, work.ErrPool)
	}
	pool := j.pool
	if row.costly {
		f, pool = nil, nil
	}
	row.Season = seasons.Of(r.batch, f)
	for _, f := range append(check.Record(j.ctx, r.house, r.batch, r.found, pool), r.found...) {
		if f.Severity > finding.Note && inside(f, r.batch.Scope) {
			row.found++
		}
	}
	return row
}

// tellCostly says which batches are shown by their words alone.
func tellCostly(w *World, rows []recordRow) {
	costly := slices.DeleteFunc(slices.Clone(rows), func(r recordRow) bool { return !r.costly })
	if len(costly) == 0 {
		return
	}
	first := costly[0]
	said := fmt.Sprintf("batch %q of %s", first.Batch.Name, first.file)
	if len(costly) > 1 {
		said += fmt.Sprintf(" and %d more", len(costly)-1)
	}
	fmt.Fprintf(w.Err, "maltwright: by its words alone, with nothing reckoned: %s; the forecasts would take more steps of the model than one record, or all of one file together, may have\n", words.Safe(said))
}
