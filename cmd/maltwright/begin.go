package main

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"time"

	"maltwright/cmd/journal"
	"maltwright/cmd/recall"
	"maltwright/cmd/repository"
	"maltwright/cmd/words"
	"maltwright/cmd/write/text"
	"maltwright/lang/finding"
	"maltwright/lang/fingerprint"
	"maltwright/lang/model"
	"maltwright/lang/read"
	"maltwright/lang/source"
)

// Begin opens the record of a batch.
type Begin struct {
	File    string `arg:"" optional:"" help:"The file of the process. By default the one process of this folder."`
	Process string `arg:"" optional:"" help:"Which process, where the file holds several."`
	At      string `help:"When the grain goes into the first soak, as 7:00, yesterday 21:00 or 2026-03-06T07:00; otherwise now." placeholder:"TIME"`
	Name    string `help:"Name of the batch; otherwise the next number of its year, such as 26-06." placeholder:"NAME"`
	Sure    bool   `help:"Begin it though another batch is still in the same vessel by its record."`
	Weight  string `help:"How much grain goes in, such as \"5.8 kg\"; otherwise as the process says." placeholder:"WEIGHT"`
	DryRun  bool   `help:"Print the record; write nothing."`
	Root    string `help:"Folder outside of which use reads nothing; by default the folder of the file." placeholder:"FOLDER"`
}

// Help is the longer help of the command.
func (Begin) Help() string {
	return `Writes the record of a new batch into a file of its own, beside that of the process
and named after the batch. It says when the batch was begun and how much of which lot
went in, which is yours to put right, and pins it to the text of its process: a
fingerprint of the process and of all that it uses of the house, and the revision of
git that holds them, if they are committed. When the process is changed later on, the
record still goes by the text of its beginning. Then it shows what to have ready, what
is due first and when, and the first line to note, with the weight that is forecast.

Examples:

  maltwright begin pale.malt
  maltwright begin pale.malt --at 2026-03-06T07:00
  maltwright begin pale.malt --weight 5.8 kg
  maltwright begin malts.malt "Loft wheat" --name 26-w1

Exit code: 0 begun; 1 the process does not read; 2 the command line cannot be
understood, there is such a batch already, or another one is in the vessel; 3 a file
cannot be read or written.`
}

// Run reads the process and writes the record.
func (c Begin) Run(w *World) error {
	if c.File == "" {
		file, err := w.theProcess("begin")
		if err != nil {
			return err
		}
		c.File = file
	}
	if err := c.weigh(); err != nil {
		return err
	}
	in, err := w.file(c.File, c.Root)
	if err != nil {
		return err
	}
	house, found, err := in.load()
	if err != nil {
		return err
	}
	if worst, any := finding.Worst(found); any && worst >= finding.Fault {
		_ = text.Findings(w.Err, atLeast(found, finding.Fault), text.Options{Width: w.Width, Colour: w.colour() && w.ErrTerm, Folder: w.Folder})
		return failure{ExitFindings, errors.New("not begun: put these right first")}
	}
	p, err := c.pick(house)
	if err != nil {
		return err
	}
	b := journal.Beginning{Uses: filepath.Base(in.path), Process: p.Name, Print: fingerprint.Of(p)}
	if p.Charge != nil && p.Grain != nil && len(p.Lots) == 0 { // several lots stay with the process
		b.Charge, b.Lot = p.Charge.String(), p.Grain.Name
	}
	if c.Weight != "" {
		if p.Grain == nil || len(p.Lots) > 0 {
			return usage("--weight: %q takes several lots, or none; write how much of each into the record: from 3 kg of \"its name\"", p.Name)
		}
		b.Charge, b.Lot = c.Weight, p.Grain.Name
	}
	if b.Began, err = c.began(w); err != nil {
		return err
	}
	if b.Batch, err = c.name(in, b.Began.Year()); err != nil {
		return err
	}
	if err := c.free(w, in, p, b.Began); err != nil {
		return err
	}
	b.Revision = committed(in, p)
	return c.write(w, in, b)
}

// write puts the record into its file, and says where it is.
func (c Begin) write(w *World, in input, b journal.Beginning) error {
	record, err := b.Text()
	if err != nil {
		return failure{ExitFindings, fmt.Errorf("%s: %w", c.File, err)}
	}
	name := filepath.Join(filepath.Dir(in.name), b.Batch+extension)
	opened, err := c.opened(in, name, record)
	if err != nil {
		return err
	}
	if c.DryRun {
		_, err = w.Out.Write([]byte(safeLines(string(record))))
		return err
	}
	o := w.writing
	o.Create = true
	err = w.editWith(o, name, filepath.Join(filepath.Dir(in.path), b.Batch+extension), func(old []byte) ([]byte, error) {
		if old != nil {
			return nil, usage("%s is there already; choose another name with --name", name)
		}
		return record, nil
	})
	if err != nil {
		return err
	}
	w.say("%s: begun %s by %q; its record is %s", words.Safe(b.Batch), b.Began.Format("2006-01-02 15:04"), words.Safe(b.Process), words.Safe(name))
	if _, err := repository.Top(filepath.Dir(in.path)); b.Revision == "" && err == nil { // where there is no git, it is no news
		w.aside("git keeps no copy of the process, so leave its text as it is until this batch is over; what you do otherwise goes into the record")
	}
	w.beforeItIsWet(opened)
	w.firstSteps(opened, name)
	return nil
}

// began is when the batch begins, to the minute.
func (c Begin) began(w *World) (time.Time, error) {
	if c.At == "" {
		return w.now().Truncate(time.Minute), nil
	}
	at, err := w.said("--at", c.At, true)
	return at.Local(), err
}

// pick gives the process that is meant.
func (c Begin) pick(h *model.House) (*model.Process, error) {
	if len(h.Processes) > 1 && c.Process == "" {
		return nil, usage("%s holds %d processes; say which behind the file", c.File, len(h.Processes))
	}
	return Forecast{File: c.File, Process: c.Process}.pick(h)
}

// name is that of the batch: the one that was asked for, or the next of its year.
func (c Begin) name(in input, year int) (string, error) {
	taken, err := batchesBeside(in.path)
	if err != nil {
		return "", err
	}
	switch {
	case c.Name == "":
		return journal.Next(taken, year), nil
	case c.Name != words.Safe(c.Name) || strings.ContainsAny(c.Name, `/\:*?"<>|`) || strings.HasPrefix(c.Name, ".") || strings.TrimSpace(c.Name) != c.Name || len(c.Name) > mostName:
		return "", usage("--name %q cannot be the name of a file", c.Name)
	case slices.Contains(taken, c.Name):
		return "", usage("there is a batch %q beside %s already", c.Name, c.File)
	}
	return c.Name, nil
}

// mostName is how long the name of a batch may be as that of a file, in bytes.
const mostName = 100

// batchesBeside lists the batches in the files of the folder of a file, and the names of
// those files, which a new one cannot have either.
func batchesBeside(path string) (names []string, err error) {
	list, err := os.ReadDir(filepath.Dir(path))
	if err != nil {
		return nil, failed("%s: %s", filepath.Dir(path), plainError(err))
	}
	for _, e := range list {
		own, is := strings.CutSuffix(e.Name(), extension)
		if !is {
			continue
		}
		names = append(names, own)
		if !e.Type().IsRegular() {
			continue
		}
		in, err := World{}.file(filepath.Join(filepath.Dir(path), e.Name()), "")
		if err == nil { // one that cannot be read names no batch
			names = append(names, journal.Batches(in.name, in.text)...)
		}
	}
	return names, nil
}

// committed is the revision of git that holds the text of a process, "" where the latest
// one does not.
func committed(in input, p *model.Process) string {
	root, err := read.OpenRoot(in.root)
	if err != nil {
		return ""
	}
	defer root.Close()
	revision := repository.Head(in.root)
	past := recall.Reader{Reader: root, Root: in.root, Below: func(f *source.File) string { return below(in, root, f) }}
	if revision == "" || !past.Holds(p, revision) {
		return ""
	}
	return revision
}
