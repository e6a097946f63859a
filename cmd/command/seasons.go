package command

import (
	"cmp"
	"errors"
	"fmt"
	"slices"

	"maltwright/check/report"
	"maltwright/lang/finding"
	"maltwright/lang/process"
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
with ~ is not measured but reckoned with the forecast of the process. A folder
stands for every .malt file below it; processes in it are passed over.

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
	stop := w.progress("reading records")
	all, err := recordsOf(files)
	stop()
	if err != nil {
		return err
	}
	if len(all.faults) > 0 {
		_ = report.Text(w.Err, finding.Sort(all.faults), report.Options{Width: w.Width, Colour: w.colour() && w.ErrTerm, Folder: w.Folder})
	}
	for _, name := range all.unread {
		fmt.Fprintf(w.Err, "maltwright: left out: %s, which must be put right first\n", report.Safe(name))
	}
	switch {
	case len(all.rows) > 0:
	case len(all.faults) > 0:
		return failure{ExitFindings, errors.New("no batch to show: put these right first")}
	default:
		return failure{ExitFindings, fmt.Errorf("%s: no record of a batch", joined(c.Paths))}
	}
	if err := seasonsWriters[c.Format](w, all.rows); err != nil {
		return failed("cannot write: %v", err)
	}
	if len(all.faults) > 0 {
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

// records is what files record.
type records struct {
	rows   []recordRow
	faults []finding.Finding // that keep a batch from being shown as it should be
	unread []string          // batches that cannot be shown at all
}

// recordsOf reads the batches of the files, in the order in which they began. Faults
// count in a file with a batch, and in one in which no process reads that could have
// come between its records; whoever asks for records does not ask for drafts.
func recordsOf(files []input) (records, error) {
	var all records
	judge := judge{known: map[string]judgement{}}
	seen := map[string]bool{}
	for _, in := range files {
		if in.path != "" && seen[in.path] { // a file in a folder that is given too
			continue
		}
		seen[in.path] = true
		root, err := process.OpenRoot(in.root)
		if err != nil {
			return all, failed("%s: %s", in.root, plainError(err))
		}
		house, found := process.Load(in.name, in.text, in.dir, root)
		if len(house.Batches) > 0 || len(house.Processes) == 0 {
			all.faults = append(all.faults, atLeast(found, finding.Fault)...)
		}
		for _, b := range house.Batches {
			all.add(in, root, house, b, found, &judge)
		}
		root.Close()
	}
	slices.SortStableFunc(all.rows, func(a, b recordRow) int {
		if x, y := a.Batch.Began, b.Batch.Began; !x.IsZero() && !y.IsZero() {
			return x.Compare(y.Time)
		}
		return cmp.Compare(saysWhen(b), saysWhen(a))
	})
	return all, nil
}

// saysWhen is 1 for a batch that says when it began: the others come after it.
func saysWhen(r recordRow) int {
	if r.Batch.Began.IsZero() {
		return 0
	}
	return 1
}

// add makes the figures of one batch, unless some of it did not read or its process
// is not known.
func (all *records) add(in input, root process.Reader, h *process.House, b *process.Batch, found []finding.Finding, judge *judge) {
	if b.Broken || b.Process == nil {
		all.unread = append(all.unread, fmt.Sprintf("batch %q of %s", b.Name, in.name))
		return
	}
	r := recordRow{file: in.name, process: judge.of(in, root, h, b.Process, found)}
	r.Season = seasons.Of(b, r.process.forecast)
	for _, f := range found {
		if f.Severity > finding.Note && inside(f, b.Scope) {
			r.found++
		}
	}
	all.rows = append(all.rows, r)
}
