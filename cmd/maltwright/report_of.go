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
	"maltwright/cmd/chart/figures"
	"maltwright/cmd/folder"
	reports "maltwright/cmd/report"
	"maltwright/cmd/words"
	"maltwright/lang/read"
	"maltwright/sim/infer/follow"
)

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
		if !at.IsZero() && at.Before(r.batch.Began.Time) {
			w.aside(fmt.Sprintf("left out: batch %q, which had not begun by then", words.Safe(r.batch.Name)))
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
	var marks []reports.Marks
	batches = slices.Clone(batches)
	for _, told := range r.Batches {
		i := slices.IndexFunc(batches, func(b reports.Batch) bool {
			return b.Batch.Name == told.Batch && b.Batch.Began.Equal(told.Began) && b.Ledger.File == told.File
		})
		batches[i].Ledger = told
		pages = append(pages, batches[i].Page())
		marks = append(marks, reports.Marks{Astray: batches[i].Astray(), Doubtful: batches[i].Doubtful()})
		batches = slices.Delete(batches, i, i+1) // another may be called the same
	}
	if len(pages) == 1 {
		return reports.New(pages[0].Title, pages...)
	}
	return reports.New("Batches of the house", append([]reports.Page{seasonPage(r, marks)}, pages...)...)
}

// seasonPage is the page of batches side by side.
func seasonPage(r ledger.Result, marks []reports.Marks) reports.Page {
	h, s := words.Of(r.Batches[0].Written), curve.SeasonOf(r)
	var charts []reports.Drawing
	if x := figures.Season(s, h); len(x.Panels) > 0 {
		charts = append(charts, x)
	}
	if x := figures.Lengths(s); len(x.Groups) > 0 {
		charts = append(charts, x)
	}
	return reports.Season(h, r.Batches, marks, charts...)
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
	return folder.Reporting{File: r.in.name, House: r.house, Batch: r.batch, Found: r.found, Sound: !r.unsound(), At: at, Now: w.now(), Members: min(c.Members, curve.DefaultMembers),
		Follow: func(at time.Time) (*follow.Following, error) {
			return Follow{File: r.in.name, Members: c.Members, NoCache: c.NoCache}.followed(ctx, w, r.batch, at)
		}}.Of(ctx)
}

func drawings[T reports.Drawing](list []T) (out []reports.Drawing) {
	for _, x := range list {
		out = append(out, x)
	}
	return out
}
