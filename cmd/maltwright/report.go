package main

import (
	"context"
	"fmt"
	"slices"
	"time"

	"maltwright/check"
	"maltwright/cmd/answer/curve"
	"maltwright/cmd/answer/ledger"
	"maltwright/cmd/answer/outlook"
	"maltwright/cmd/answer/progress"
	"maltwright/cmd/chart/figures"
	reports "maltwright/cmd/report"
	reporthtml "maltwright/cmd/report/html"
	reportpaper "maltwright/cmd/report/onpaper"
	"maltwright/cmd/words"
	"maltwright/lang/finding"
	"maltwright/lang/read"
	"maltwright/lang/source"
	"maltwright/sim/infer/follow"
)

// Report writes what a buyer or an inspector is shown.
type Report struct {
	Paths   []string `arg:"" optional:"" name:"path" help:"Records of batches, a folder of them, or a process file; - is standard input. By default the one batch under way in this folder, or else its one process."`
	Format  string   `enum:"html,pdf" default:"html" help:"How to write: html, one page that needs nothing else and prints a sheet or more for each batch, or pdf."`
	At      string   `help:"As of this time; by default now of a batch under way, and the last reading of one that is over." placeholder:"TIME"`
	Start   string   `help:"When the first soak of a process begins, to show clock times." placeholder:"TIME"`
	Process string   `help:"Which process, where the file holds several." placeholder:"NAME"`
	Batch   string   `help:"Only this batch of those in the files." placeholder:"NAME"`
	Members int      `default:"200" help:"How many forecasts to weigh for each batch, 20 to 10000." placeholder:"N"`
	NoCache bool     `help:"Do not use or keep results for the next time; the figures are the same."`
	Root    string   `help:"Folder outside of which use reads nothing; by default the folder of each file." placeholder:"FOLDER"`
}

// Help is the longer help of the command.
func (Report) Help() string {
	return `For a buyer, an inspector, or yourself in some years. Of each batch: what was made
of what and where that came from, by which text of the process, in which vessels; its
figures and yields, each with how it was come by; the steps; charts; every reading
beside what the forecast expected; what was done otherwise; every doubt; the analyses
of the malt; remarks. Of several batches a page of all stands first. Of a process: its
steps and what comes of them, its gates, the findings of its check, and cautions.

It hides nothing, and it is no certificate of analysis. It says as of when it is: the
same record and time give the same bytes.

Examples:

  maltwright report 26-03.malt > 26-03.html
  maltwright report batches > season.html
  maltwright report 26-03.malt --format pdf > 26-03.pdf
  maltwright report pale.malt --start 2026-03-06T07:00 > pale.html

Exit code: 0 it was written, 1 a record or its process must be put right first, 2 the
command line cannot be understood, 3 a file cannot be read.`
}

// Run makes the report and writes it.
func (c Report) Run(w *World) error {
	if c.Members < follow.LeastMembers || c.Members > follow.MostMembers {
		return usage("--members %d: a batch is followed by %d to %d forecasts", c.Members, follow.LeastMembers, follow.MostMembers)
	}
	if err := w.noTerminal(c.Format); err != nil {
		return err
	}
	r, complete, err := c.made(w)
	if err != nil {
		return err
	}
	if err := reportWriters[c.Format](w, r); err != nil {
		return failed("cannot write: %v", err)
	}
	if !complete {
		return errFindings
	}
	return nil
}

// reportWriters write a report, by format.
var reportWriters = map[string]func(*World, reports.Report) error{
	"html": func(w *World, r reports.Report) error { return reporthtml.Write(w.Out, r) },
	"pdf":  func(w *World, r reports.Report) error { return w.onPaper(reportpaper.Write(w.Out, r)) },
}

// made makes the report of what the paths stand for.
func (c Report) made(w *World) (reports.Report, bool, error) {
	if len(c.Paths) == 0 {
		file, err := c.ofFolder(w)
		if err != nil {
			return reports.Report{}, false, err
		}
		c.Paths = []string{file}
	}
	files, err := w.gather(c.Paths, c.Root)
	if err != nil {
		return reports.Report{}, false, err
	}
	if len(files) == 1 && c.Batch == "" {
		house, _, err := files[0].load()
		if err != nil {
			return reports.Report{}, false, err
		}
		if len(house.Processes) > 0 || len(house.Batches) == 0 || c.Process != "" {
			r, err := c.ofProcess(w, files[0])
			return r, true, err
		}
	}
	if c.Start != "" {
		return reports.Report{}, false, usage("a record says itself when its batch began; leave --start out")
	}
	return c.ofBatches(w, files)
}

// ofFolder gives the file of the one batch under way in the working folder, or of its one process.
func (c Report) ofFolder(w *World) (string, error) {
	on, err := w.underway("report", c.Batch, c.Root, w.now())
	if err == nil {
		w.aside(fmt.Sprintf("report of %s, in which batch %s is under way", words.Safe(on.in.name), words.Safe(on.name)))
		return on.in.name, nil
	}
	if c.Batch != "" {
		return "", err
	}
	return w.theProcess("report")
}

// ofProcess makes the report of a process.
func (c Report) ofProcess(w *World, in input) (reports.Report, error) {
	var none reports.Report
	begun, err := Forecast{Start: c.Start}.start(w)
	if err != nil {
		return none, err
	}
	f, err := Forecast{File: in.name, Process: c.Process, Root: c.Root}.madeOf(w, in, begun)
	if err != nil {
		return none, err
	}
	ctx, stop := w.interruptible()
	defer stop()
	root, err := read.OpenRoot(in.root)
	if err != nil {
		return none, failed("%s: %s", in.root, plainError(err))
	}
	defer root.Close()
	checked := check.File(in.name, in.text, in.dir, root, check.Options{Context: ctx})
	line, err := curve.Forecast(ctx, f, curve.Options{Start: begun})
	switch {
	case ctx.Err() != nil:
		return none, errInterrupted
	case err != nil:
		return none, failure{ExitFindings, fmt.Errorf("%s: %s", in.name, words.Of(f.Process).Cause(err))}
	}
	h := words.Of(f.Process)
	page := reports.Process{House: h, Process: f.Process, Forecast: outlook.Of(f, begun), Found: checked.Findings, Charts: drawings(figures.All(&line, h))}.Page()
	r := reports.Planned(page)
	r.Letter = h.British || h.Fahrenheit
	return r, nil
}

// ofBatches makes the report of the batches of records.
func (c Report) ofBatches(w *World, files []input) (reports.Report, bool, error) {
	var none reports.Report
	at, err := c.time(w)
	if err != nil {
		return none, false, err
	}
	ctx, stop := w.interruptible()
	defer stop()
	book := ledger.New(ctx, nil)
	var batches []reports.Batch
	list, err := recordsOf(files, func(r record) {
		if c.Batch != "" && r.batch.Name != c.Batch {
			return
		}
		page := c.batch(ctx, w, r, at)
		book.Enter(ledger.Record{File: r.in.name, Root: r.in.root, Below: below(r.in, r.root, ledger.Standing(r.batch).Place.File),
			Reader: r.root, House: r.house, Batch: page.Batch, Found: r.found})
		batches = append(batches, page)
	})
	if ctx.Err() != nil {
		return none, false, errInterrupted
	}
	if err != nil {
		return none, false, err
	}
	if err := list.tell(w, len(batches), c.Paths, "to report on"); err != nil {
		return none, false, err
	}
	r := reportOf(book.Result(), batches)
	r.Letter = batches[0].House.British || batches[0].House.Fahrenheit
	return r, len(list.faults) == 0, nil
}

// reportOf puts the pages of batches together, in the order in which they began.
func reportOf(r ledger.Result, batches []reports.Batch) reports.Report {
	var pages []reports.Page
	for _, told := range r.Batches {
		i := slices.IndexFunc(batches, func(b reports.Batch) bool {
			return b.Batch.Name == told.Batch && b.Batch.Began.Equal(told.Began) && b.Ledger.File == told.File
		})
		batches[i].Ledger = told
		pages = append(pages, batches[i].Page())
		batches = slices.Delete(batches, i, i+1) // another may be called the same
	}
	if len(pages) == 1 {
		return reports.New(pages[0].Title, pages...)
	}
	return reports.New("Batches of the house", append([]reports.Page{seasonPage(r)}, pages...)...)
}

// seasonPage is the page of batches side by side.
func seasonPage(r ledger.Result) reports.Page {
	h, s := words.Of(r.Batches[0].Written), curve.SeasonOf(r)
	var charts []reports.Drawing
	if x := figures.Season(s, h); len(x.Panels) > 0 {
		charts = append(charts, x)
	}
	if x := figures.Lengths(s); len(x.Groups) > 0 {
		charts = append(charts, x)
	}
	return reports.Season(h, r.Batches, charts...)
}

// time is that of --at; the zero time where it is not said.
func (c Report) time(w *World) (time.Time, error) {
	if c.At == "" {
		return time.Time{}, nil
	}
	return w.said("--at", c.At, true)
}

// batch is what there is to report of one batch, as of a time; the zero time is now, or that of the last line of a
// record that is over. Where it cannot be followed, its page says why.
func (c Report) batch(ctx context.Context, w *World, r record, at time.Time) reports.Batch {
	why, followed := progress.Asked, at
	if at.IsZero() || at.Before(r.batch.Began.Time) {
		followed, why = progress.When(r.batch, w.now())
		at = followed
		for _, x := range r.batch.Lines() { // analyses come when it is over
			if x.When().After(at) {
				at = x.When().Time
			}
		}
	}
	b := r.batch.Until(at)
	out := reports.Batch{House: words.OfBatch(b.Process, b), Batch: b, At: at, LeftOut: len(r.batch.Lines()) - len(b.Lines()), Ledger: ledger.Batch{File: source.Text(r.in.name)}}
	for _, f := range append(check.Record(ctx, r.house, b, r.found, nil), r.found...) {
		if f.Severity > finding.Note && f.Place.Within(b.Scope) {
			out.Found = append(out.Found, f)
		}
	}
	if r.unsound() {
		out.Why = "There is no forecast: the process must be put right first; see maltwright check."
		return out
	}
	f, err := Follow{File: r.in.name, Members: c.Members, NoCache: c.NoCache}.followed(ctx, w, r.batch, followed)
	if err != nil {
		out.Why = "There is no forecast: " + words.Safe(err.Error())
		return out
	}
	p := progress.Of(f, followed, why)
	out.Progress, out.Course = &p, outlook.Of(f.Middle(), b.Began.Time)
	if line, err := curve.Batch(ctx, f, curve.Options{Members: min(c.Members, curve.DefaultMembers)}); err == nil {
		out.Charts = drawings(figures.All(&line, out.House))
	}
	return out
}

func drawings[T reports.Drawing](list []T) (out []reports.Drawing) {
	for _, x := range list {
		out = append(out, x)
	}
	return out
}
