package main

import (
	"errors"
	"fmt"
	"time"

	"maltwright/cmd/sheet"
	"maltwright/cmd/sheet/html"
	"maltwright/sim/forecast"
)

// Sheet writes the paper by the bucket.
type Sheet struct {
	File    string `arg:"" optional:"" help:"A process file, or the record of a batch; - is standard input. By default the one process of this folder."`
	Process string `help:"Which process, where the file holds several." placeholder:"NAME"`
	Start   string `help:"When the first soak begins, such as tomorrow 7am or 2026-03-06T07:00." placeholder:"TIME"`
	Size    string `enum:",a4,A4,letter,Letter" default:"" help:"The paper: A4 or Letter; otherwise Letter where the house writes °F or lb." placeholder:"SIZE"`
	Format  string `enum:"pdf,html" default:"html" help:"How to write: pdf, or html for a browser."`
	Blank   bool   `help:"A general sheet of the same form, with every figure left open."`
	Root    string `help:"Folder outside of which use reads nothing; by default the folder of the file." placeholder:"FOLDER"`
}

// Run forecasts and writes.
func (c Sheet) Run(w *World) error {
	s, err := c.sheet(w)
	if err != nil {
		return err
	}
	return html.Write(w.Out, s)
}

func (c Sheet) sheet(w *World) (sheet.Sheet, error) {
	var record isRecord
	o := sheet.Options{Begin: "maltwright begin " + c.File}
	f, err := c.forecast(w, &o)
	if errors.As(err, &record) {
		r, err := w.goingOn(record, "sheet")
		if err != nil {
			return sheet.Sheet{}, err
		}
		o = sheet.Options{Note: commandLine("note", r.in.name)}
		return sheet.OfBatch(r.batch, r.forecast, r.due(), r.at, o)
	}
	if err != nil {
		return sheet.Sheet{}, err
	}
	s, err := sheet.Of(f, o)
	if err != nil {
		err = failure{ExitFindings, fmt.Errorf("%s: %w", c.File, err)}
	}
	return s, err
}

func (c Sheet) forecast(w *World, o *sheet.Options) (*forecast.Forecast, error) {
	if c.Start != "" {
		at, err := w.said("--start", c.Start, false)
		if err != nil {
			return nil, err
		}
		o.Start = at
	}
	return Forecast{File: c.File, Process: c.Process, Root: c.Root}.made(w, "sheet", o.Start)
}

var _ = time.Time{}
