package main

import (
	"context"
	"errors"
	"fmt"
	"slices"
	"strings"

	"maltwright/cmd/answer/curve"
	"maltwright/cmd/answer/ledger"
	"maltwright/cmd/chart"
	"maltwright/cmd/chart/figures"
	"maltwright/cmd/words"
)

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
	file, batch, err := w.underwayOrProcess("chart", c.Batch, c.Root)
	switch {
	case err != nil:
		return drawing{}, err
	case batch != "":
		c.Batch = batch
		return c.ofRecord(w, file)
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
	d := drawing{title: "Charts of " + figures.Called(&x), complete: x.Complete}
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
	d := drawing{title: "Charts of the season", complete: len(read.faults) == 0}
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
