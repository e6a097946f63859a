package main

import (
	"errors"
	"fmt"
	"io"
	"path/filepath"
	"strings"
	"time"

	"maltwright/cmd/answer/progress"
	"maltwright/cmd/sheet"
	"maltwright/cmd/sheet/html"
	"maltwright/cmd/sheet/onpaper"
	"maltwright/cmd/words"
)

// Sheet writes the paper by the bucket.
type Sheet struct {
	File    string `arg:"" optional:"" help:"A process file, or the record of a batch; - is standard input. By default the one process of this folder."`
	Process string `help:"Which process, where the file holds several." placeholder:"NAME"`
	Start   string `help:"When the first soak begins, such as tomorrow 7am or 2026-03-06T07:00; without it the clock is left open." placeholder:"TIME"`
	Size    string `help:"The paper, A4 or Letter; otherwise Letter where the house writes °F or lb, and A4 elsewhere." placeholder:"SIZE"`
	Format  string `enum:",pdf,html" default:"" help:"How to write: pdf, or html for a browser; otherwise pdf, or as the file of --out ends." placeholder:"FORMAT"`
	Blank   bool   `help:"A sheet of the same form for any process, with every figure left open."`
	Out     string `help:"The file to write; otherwise standard output, which must then be no terminal." placeholder:"FILE"`
	Root    string `help:"Folder outside of which use reads nothing; by default the folder of the file." placeholder:"FOLDER"`
}

// Help is the longer help of the command.
func (Sheet) Help() string {
	return `Paper to hang beside the bucket, and to fill in by hand: page 1 has the grain and
where it comes from, the weight to look for, and the whole steep; then comes a page
or more for each stage. Each visit has its time, what to do, in small print what the
scale should show, and large empty boxes for what it did show and when. With them
stand drawings and tallies of acrospire and rub, the sum of a moisture sample, lines
for remarks, dangers and what to do when it goes wrong, and the line by which a
reading is noted.

Of the record of a batch under way it has what is late, first and in words, the
visits that are yet to come, by its readings, and what was read so far. Without
--start the clock is left open, and each visit tells how long after the first soak it
is.

Examples:

  maltwright sheet pale.malt --start "sat 7am" > pale.pdf
  maltwright sheet pale.malt --start 2026-03-06T07:00 --out pale.pdf
  maltwright sheet 26-03.malt --out 26-03.html
  maltwright sheet pale.malt --size Letter > pale.pdf
  maltwright sheet --blank > blank.pdf

Exit code: 0 the sheet was written, also of a forecast that breaks off: the sheet
goes as far as that; 1 the process must be put right first, 2 the command line cannot
be understood, 3 the file cannot be read or written.`
}

// Run makes the sheet and writes it.
func (c Sheet) Run(w *World) error {
	size, err := c.size()
	if err != nil {
		return err
	}
	if err := w.room(c.Out); err != nil {
		return err
	}
	format, err := c.format(w)
	if err != nil {
		return err
	}
	if c.File == "" && !c.Blank {
		file, err := w.theProcess("sheet")
		if err != nil {
			return err
		}
		c.File = file
	}
	s, err := c.made(w, size)
	if err != nil {
		return err
	}
	return c.write(w, s, sheetWriters[format])
}

// sheetWriters write a sheet, by format.
var sheetWriters = map[string]sheetWriter{
	"pdf":  onpaper.Write,
	"html": func(w io.Writer, s sheet.Sheet) (string, error) { return "", html.Write(w, s) },
}

// sheetWriter writes a sheet, and says which letters it could not; "" where it could all.
type sheetWriter func(io.Writer, sheet.Sheet) (lost string, err error)

// size is the paper that was asked for, by its name in small or great letters; zero where none was.
func (c Sheet) size() (sheet.Size, error) {
	for _, s := range []sheet.Size{sheet.A4, sheet.Letter} {
		if strings.EqualFold(c.Size, s.Name) {
			return s, nil
		}
	}
	if c.Size == "" {
		return sheet.Size{}, nil
	}
	return sheet.Size{}, usage("--size %q: the sheet is made for A4 and for Letter", c.Size)
}

// format is how to write, before anything is forecast.
func (c Sheet) format(w *World) (string, error) {
	format := c.Format
	ending := strings.ToLower(filepath.Ext(c.Out))
	is := map[string]string{".pdf": "pdf", ".html": "html", ".htm": "html"}[ending]
	switch {
	case c.Out != "" && is == "":
		return "", usage("--out %q: name a file that ends in .pdf or .html", c.Out)
	case c.Out != "" && format != "" && format != is:
		return "", usage("--out %q does not end in .%s, as --format says", c.Out, format)
	case format == "" && is != "":
		format = is
	case format == "":
		format = "pdf"
	}
	if c.Out == "" && w.Terminal {
		line := append([]string{"sheet"}, c.typed()...)
		what := "a PDF"
		if format != "pdf" {
			line, what = append(line, "--format", format), "a page for a browser"
		}
		return "", usage("%s is no text for a terminal; type: %s > %s", what, commandLine(line...), quotedForShell(c.stem()+"."+format))
	}
	return format, nil
}

// typed is the command line again, without where to write.
func (c Sheet) typed() (args []string) {
	if c.File != "" {
		args = append(args, c.File)
	}
	for _, f := range []struct{ flag, value string }{{"--process", c.Process}, {"--start", c.Start}, {"--size", c.Size}, {"--root", c.Root}} {
		if f.value != "" {
			args = append(args, f.flag, f.value)
		}
	}
	if c.Blank {
		args = append(args, "--blank")
	}
	return args
}

// stem is what a file for the sheet would be called, without its ending.
func (c Sheet) stem() string {
	if c.File == "" || c.File == "-" {
		return "sheet"
	}
	return strings.TrimSuffix(filepath.Base(c.File), extension)
}

// made is the sheet that is asked for.
func (c Sheet) made(w *World, size sheet.Size) (sheet.Sheet, error) {
	if c.Blank {
		return c.blank(w, size)
	}
	of := Forecast{File: c.File, Process: c.Process, Root: c.Root}
	o := sheet.Options{Size: size}
	var err error
	if c.Start != "" {
		if o.Start, err = w.said("--start", c.Start, false); err != nil {
			return sheet.Sheet{}, err
		}
	}
	f, err := of.made(w, "sheet", o.Start)
	var record isRecord
	if errors.As(err, &record) {
		return c.ofRecord(w, record, o)
	}
	if err != nil {
		return sheet.Sheet{}, err
	}
	o.Begin = c.begins(f.Process.Name, o.Start)
	s, err := sheet.Of(f, o)
	if err != nil {
		return s, failure{ExitFindings, fmt.Errorf("%s: %w", c.File, err)}
	}
	if f.BrokenOff() {
		w.aside(words.Safe(c.File) + ": the forecast breaks off, and the sheet with it; maltwright forecast says where")
	}
	if s.Misses {
		w.aside(fmt.Sprintf("%s: by the forecast not all is reached that the process asks for, as the sheet says; more on it: %s", words.Safe(c.File), commandLine("check", c.File)))
	}
	return s, nil
}

// begins is the line that opens the record of a batch of a process; "" where that came from no file.
func (c Sheet) begins(process string, start time.Time) string {
	if c.File == "-" {
		return ""
	}
	line := []string{"begin", c.File}
	if c.Process != "" {
		line = append(line, process)
	}
	if !start.IsZero() { // said by the clock: tomorrow is another day when it is typed
		line = append(line, "--at", start.Local().Format("2006-01-02T15:04"))
	}
	return commandLine(line...)
}

// blank is the sheet for any process, in the units of one where that is named.
func (c Sheet) blank(w *World, size sheet.Size) (sheet.Sheet, error) {
	switch {
	case c.Start != "":
		return sheet.Sheet{}, usage("--blank leaves the clock open; leave --start out")
	case c.File == "":
		return sheet.Blank(sheet.EitherUnits(), size, "maltwright begin "+"____"), nil
	}
	_, p, err := (Forecast{File: c.File, Process: c.Process, Root: c.Root}).asks(w, "sheet")
	var record isRecord
	if errors.As(err, &record) {
		return sheet.Sheet{}, usage("%s is the record of a batch; leave it out, or --blank", c.File)
	}
	if err != nil {
		return sheet.Sheet{}, err
	}
	if size.Wide == 0 {
		size = sheet.SizeOf(p)
	}
	return sheet.Blank(sheet.UnitsOf(p), size, c.begins(p.Name, time.Time{})), nil
}

// ofRecord is the sheet of a batch under way.
func (c Sheet) ofRecord(w *World, e isRecord, o sheet.Options) (sheet.Sheet, error) {
	if c.Start != "" {
		return sheet.Sheet{}, usage("%s says itself when its batch began; leave --start out", e.in.name)
	}
	r, err := w.goingOn(e, "sheet")
	if err != nil {
		return sheet.Sheet{}, err
	}
	if r.follow != nil && r.follow.Over() {
		return sheet.Sheet{}, isOver(e.in.name, r.batch)
	}
	r.tell(w)
	o.Note = commandLine("note", e.in.name)
	o.Follow = r.follow
	if _, as := progress.When(r.batch, w.now()); as == progress.LastReading {
		o.Past = true
		w.aside(fmt.Sprintf("nothing was written down since %s: the times of the sheet are reckoned from then, and not of today", r.at.Format("2006-01-02 15:04")))
	}
	s, err := sheet.OfBatch(r.batch, r.forecast, r.due(), r.at, o)
	if err != nil {
		return s, failure{ExitFindings, fmt.Errorf("%s: %w", e.in.name, err)}
	}
	for _, late := range s.Late() {
		w.aside(late)
	}
	return s, nil
}
