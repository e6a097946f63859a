package main

import (
	"context"
	"errors"
	"path"
	"path/filepath"
	"strings"

	"maltwright/check"
	"maltwright/cmd/answer/effect"
	"maltwright/cmd/repository"
	"maltwright/cmd/words"
	"maltwright/cmd/write/html"
	"maltwright/cmd/write/json"
	"maltwright/cmd/write/text"
	"maltwright/lang/finding"
	"maltwright/lang/model"
	"maltwright/lang/read"
	"maltwright/lang/syntax"
	"maltwright/sim/work"
)

// Contrast compares two seasons by meaning.
type Contrast struct {
	Old    string `arg:"" help:"The earlier file, or REV:path in a git repository."`
	New    string `arg:"" help:"The later file, or REV:path."`
	Format string `enum:"text,json,html" default:"text" help:"How to write: text, json, or html (one page that needs nothing else)."`
	Brief  bool   `help:"Only what changed in the process, without the forecasts."`
}

// Help is the longer help of the command.
func (Contrast) Help() string {
	return `What changed is shown by meaning: a soak that got longer, a gate that went, a
stage that moved. 59 °F and 15 °C are the same; comments and layout do not count,
and what a file uses does. Then both are forecast, side by side.

REV is a commit, branch or tag of git, and the path behind it is counted from the
folder you are in; what the file uses is read from the same commit.

Examples:

  maltwright contrast pale-2026.malt pale-2027.malt
  maltwright contrast HEAD~1:examples/pale.malt examples/pale.malt
  maltwright contrast --brief HEAD:pale.malt pale.malt
  maltwright contrast --format html old.malt new.malt > seasons.html

Exit code: 0 they mean the same, 1 they differ, 2 the command line cannot be
understood, 3 a file cannot be read, or does not read as a process.`
}

// Run compares and writes.
func (c Contrast) Run(w *World) error {
	if err := w.noTerminal(c.Format); err != nil {
		return err
	}
	r, err := c.compared(w)
	if err != nil {
		return err
	}
	if err := contrastWriters[c.Format](w, r); err != nil {
		return failed("cannot write: %v", err)
	}
	if len(r.Changes) > 0 {
		return errFindings
	}
	return nil
}

// compared reads both sides and compares them.
func (c Contrast) compared(w *World) (effect.Result, error) {
	var none effect.Result
	var err error
	var sides [2]side
	for i, arg := range []string{c.Old, c.New} { // both are read before an interrupt is listened for: it ends a read at once
		if sides[i], err = w.side(arg); err != nil {
			return none, err
		}
		defer sides[i].done()
	}
	ctx, release := w.interruptible()
	defer release()
	stop := w.progress("comparing")
	defer stop()
	old, err := w.season(ctx, c.Old, sides[0], c.Brief)
	if err != nil {
		return none, err
	}
	new, err := w.season(ctx, c.New, sides[1], c.Brief)
	if err != nil {
		return none, err
	}
	r := effect.Compare(ctx, old, new, c.Brief)
	if stop(); ctx.Err() != nil {
		return none, errInterrupted
	}
	return r, nil
}

// contrastWriters write in the units of the new side.
var contrastWriters = map[string]func(*World, effect.Result) error{
	"text": func(w *World, r effect.Result) error { return text.Effect(w.Out, r, houseOf(r.Written), w.options()) },
	"json": func(w *World, r effect.Result) error { return json.Write(w.Out, r, words.House{}.Say) },
	"html": func(w *World, r effect.Result) error { return html.Effect(w.Out, r, houseOf(r.Written)) },
}

// houseOf is how to speak to those who wrote a process, or to whom it may concern.
func houseOf(p *model.Process) words.House {
	if p == nil {
		return words.House{}
	}
	return words.Of(p)
}

// season reads one side.
func (w World) season(ctx context.Context, arg string, from side, brief bool) (effect.Season, error) {
	in := from.input
	s := effect.Season{Name: arg, File: in.name, Pool: work.NewPool(work.File)}
	r := check.File(in.name, in.text, in.dir, from.reader, check.Options{NoForecast: brief, Context: ctx, Pool: s.Pool})
	s.House, s.Found = r.House, r.Findings
	for _, f := range r.House.Files {
		tree, found := syntax.Parse(f)
		if worst, any := finding.Worst(found); any && worst >= finding.Fault {
			_ = text.Lines(w.Err, found, text.Options{Folder: w.Folder})
			return s, failed("%s does not read; put that right first", f.Name())
		}
		s.Trees = append(s.Trees, tree)
	}
	return s, nil
}

// side is the file of one side, from the disk or through git.
type side struct {
	input
	reader read.Reader
	done   func()
}

// side opens one side: a file, or REV:path where no such file is there.
func (w World) side(arg string) (side, error) {
	rev, name, isRev := strings.Cut(arg, ":")
	files, err := w.gather([]string{arg}, "")
	if err == nil && len(files) == 1 && (arg == "-" || files[0].path == w.at(arg)) {
		root, err := read.OpenRoot(files[0].root)
		if err != nil {
			return side{}, failed("%s: %s", files[0].root, plainError(err))
		}
		return side{files[0], root, func() { root.Close() }}, nil
	}
	if !isRev || rev == "" || name == "" || filepath.IsAbs(arg) {
		if err == nil {
			err = usage("%s is a folder; contrast takes files", arg)
		}
		return side{}, err
	}
	r, err := w.revision(rev, name)
	if err != nil {
		return side{}, err
	}
	text, err := r.Read(path.Base(r.File))
	switch {
	case errors.As(err, new(repository.TooLarge)):
		return side{}, failed("%s: %v", arg, err)
	case err != nil:
		return side{}, failed("%s: revision %s holds no file %s", arg, rev, r.File)
	}
	return side{input{name: arg, text: text, dir: "."}, r, func() {}}, nil
}
