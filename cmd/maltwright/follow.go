package main

import (
	"context"
	"errors"
	"fmt"
	"strconv"
	"strings"
	"time"

	"maltwright/cmd/answer/progress"
	"maltwright/cmd/shelf"
	"maltwright/cmd/words"
	"maltwright/cmd/write/json"
	"maltwright/cmd/write/text"
	"maltwright/lang/finding"
	"maltwright/lang/model"
	"maltwright/sim/infer/follow"
)

// Follow says how a batch under way stands.
type Follow struct {
	File    string `arg:"" optional:"" help:"The record of a batch; - is standard input. By default that of the one batch under way in this folder."`
	Batch   string `help:"Which batch, where the file holds several." placeholder:"NAME"`
	At      string `help:"As of this time, such as 14:00 or 2026-03-10T12:00; by default now, or the last reading of a batch that is over." placeholder:"TIME"`
	Members int    `default:"200" help:"How many forecasts to weigh, 20 to 10000." placeholder:"N"`
	Format  string `enum:"text,json" default:"text" help:"How to write: text or json."`
	NoCache bool   `help:"Do not use or keep results for the next time; the figures are the same."`
	Shown
	Root string `help:"Folder outside of which use reads nothing; by default the folder of the file." placeholder:"FOLDER"`
}

// Help is the longer help of the command.
func (Follow) Help() string {
	return `Where a batch stands by what was weighed, counted, felt and read: its moisture,
what it should weigh now, how far it has grown; how much longer what is open will
take; what falls due next, and what is late; which readings cannot be right; and
what the rest of it will look like. Each figure has its middle, and the values
below which one case in ten and nine in ten lie.

A step that ends by itself counts as done when its time is over. One that waits for
a condition goes on until the record says it ended, such as: weighed 8.63 kg after
germinate. So say it when you go on.

Examples:

  maltwright follow 26-03.malt
  maltwright follow 26-03.malt --at 2026-03-10T12:00

Results from the readings so far are kept in your cache folder, so that the next
reading is followed sooner. They change no figure, and may be deleted at any time.

Exit code: 0 the batch was followed, 1 the record or its process must be put right
first, or the forecast broke off, 2 the command line cannot be understood, 3 the file cannot be read.`
}

// Run reads the record, conditions the forecasts, and writes.
func (c Follow) Run(w *World) error {
	if c.File == "" {
		on, err := w.underway("follow", c.Batch, c.Root, w.now())
		if err != nil {
			return err
		}
		c.File, c.Batch = on.in.name, on.name
		fmt.Fprintf(w.Err, "maltwright: follow of %s, in which batch %s is under way\n", words.Safe(c.File), words.Safe(c.Batch))
	}
	if c.Members < follow.LeastMembers || c.Members > follow.MostMembers {
		return usage("--members %d: a batch is followed by %d to %d forecasts", c.Members, follow.LeastMembers, follow.MostMembers)
	}
	b, err := c.batch(w)
	if err != nil {
		return err
	}
	at, why, err := c.time(w, b)
	if err != nil {
		return err
	}
	w.tellPin(b)
	ctx, stop := w.interruptible()
	defer stop()
	f, err := c.followed(ctx, w, b, at)
	if err != nil {
		return err
	}
	r := progress.Of(f, at, why)
	w.shown = c.Shown
	if err := followWriters[c.Format](w, r, words.OfBatch(f.Trial.Process, f.Trial.Batch)); err != nil {
		return failed("cannot write: %v", err)
	}
	if !r.Complete {
		return errFindings
	}
	return nil
}

// followed conditions the forecasts of a batch.
func (c Follow) followed(ctx context.Context, w *World, b *model.Batch, at time.Time) (*follow.Following, error) {
	done := w.counter("weighing forecast")
	f, err := follow.Of(ctx, b, at, follow.Options{Members: c.Members, Progress: done.say, Shelf: c.shelf(w)})
	done.wipe()
	return f, notFollowed(ctx, c.File, b, err)
}

// shelf is what is kept for the next time, nil where nothing is.
func (c Follow) shelf(w *World) follow.Shelf {
	if c.NoCache || w.Cache == "" {
		return nil
	}
	return shelf.In(w.Cache, shelf.Program())
}

var followWriters = map[string]func(*World, progress.Result, words.House) error{
	"text": func(w *World, r progress.Result, h words.House) error {
		return text.Progress(w.Out, r, h, w.options())
	},
	"json": func(w *World, r progress.Result, h words.House) error { return json.Write(w.Out, r, h.Say) },
}

// batch reads the file and gives the batch that is meant.
func (c Follow) batch(w *World) (*model.Batch, error) {
	in, err := w.oneFile("follow", c.File, c.Root)
	if err != nil {
		return nil, err
	}
	house, found, err := in.load()
	if err != nil {
		return nil, err
	}
	if worst, any := finding.Worst(found); any && worst >= finding.Fault {
		_ = text.Findings(w.Err, atLeast(found, finding.Fault), text.Options{Width: w.Width, Colour: w.colour() && w.ErrTerm, Folder: w.Folder})
		return nil, failure{ExitFindings, errors.New("not followed: put these right first")}
	}
	return c.pick(house)
}

func (c Follow) pick(h *model.House) (*model.Batch, error) {
	var names []string
	for _, b := range h.Batches {
		if b.Name == c.Batch || c.Batch == "" && len(h.Batches) == 1 {
			return b, nil
		}
		names = append(names, strconv.Quote(b.Name))
	}
	switch {
	case len(names) == 0:
		return nil, failure{ExitFindings, fmt.Errorf("%s holds no record of a batch", c.File)}
	case c.Batch == "":
		return nil, usage("%s holds %d batches; say which with --batch: %s", c.File, len(names), strings.Join(names, ", "))
	}
	return nil, usage("%s holds no batch called %q; it holds %s", c.File, c.Batch, strings.Join(names, ", "))
}

// time is that as of which the batch is followed, and why.
func (c Follow) time(w *World, b *model.Batch) (time.Time, progress.AsOf, error) {
	if c.At == "" {
		at, why := progress.When(b, w.now())
		return at, why, nil
	}
	at, err := w.said("--at", c.At, true)
	if err == nil && !b.Began.IsZero() && at.Before(b.Began.Time) {
		err = usage("--at %q lies before the batch began, %s", c.At, b.Began.Format("2006-01-02 15:04"))
	}
	return at, progress.Asked, err
}
