package main

import (
	"cmp"
	"errors"
	"fmt"
	"io"
	"maps"
	"path/filepath"
	"slices"

	"maltwright/cmd/answer/lessons"
	"maltwright/cmd/words"
	"maltwright/cmd/write/json"
	"maltwright/cmd/write/malt"
	"maltwright/cmd/write/text"
	"maltwright/lang/model"
	"maltwright/lang/sorted"
	"maltwright/lang/source"
	"maltwright/sim/infer/learn"
	"maltwright/sim/seasons"
	"maltwright/sim/work"
)

// Learn learns from finished batches.
type Learn struct {
	Paths  []string `arg:"" name:"path" help:"Files with records of finished batches, or folders; - is standard input."`
	Format string   `enum:"text,malt,json" default:"text" help:"How to write: text, malt (a file with the house block) or json."`
	Name   string   `help:"Name of the house block; by default that of the site up to a comma." placeholder:"NAME"`
	From   string   `help:"File with the house block that older batches taught; the new ones go on from it." placeholder:"FILE"`
	Root   string   `help:"Folder outside of which use reads nothing; by default the folder of each file." placeholder:"FOLDER"`
}

// Help is the longer help of the command.
func (Learn) Help() string {
	return `All batches together are compared with forecasts of their processes, and what is
proper to the house is fitted: how fast each lot takes up water, how much its husk
holds and how fast it chits; how fast grain grows, how much it breathes and how fast
it withers; how fast each kiln dries, and by how much the thermometer is off. Each
figure comes with its error and with how much of it the readings settle; what they do
not settle is named, with what to weigh or count instead. Then each batch is left out in turn, to see whether the others forecast it better
than the plain model. An existing house block is not used, unless --from names
its file: then its figures, with their errors, are where the new batches begin. Give
those batches alone that are not in it yet, or they count twice.

Examples:

  maltwright learn batches
  maltwright learn 26-03.malt 26-04.malt 26-05.malt
  maltwright learn batches --format malt > learnt.malt
  maltwright learn 26-06.malt --from learnt.malt

Put the file beside the one that defines the lots and kilns, and add
use "learnt.malt" to a process: from then on its forecasts go by it.

Exit code: 0 something was learnt, 1 nothing was, or a record or its process must
be put right, 2 the command line cannot be understood, 3 a file cannot be read.`
}

// Run reads the records, learns and writes.
func (c Learn) Run(w *World) error {
	if words.Safe(c.Name) != c.Name {
		return usage("--name %q holds a character that no name can have", c.Name)
	}
	files, err := w.gather(c.Paths, c.Root)
	if err != nil {
		return err
	}
	var all []record
	var unsound []string
	read, err := recordsOf(files, func(r record) {
		if r.unsound() {
			unsound = append(unsound, fmt.Sprintf("batch %q of %s", r.batch.Name, r.in.name))
			return
		}
		all = append(all, r.located())
	})
	if err != nil {
		return err
	}
	read.unread = append(read.unread, unsound...)
	if err := read.tell(w, len(all), c.Paths, "to learn from"); err != nil {
		return err
	}
	sorted.Stable(all, func(a, b record) int { return seasons.ByBeginning(a.batch, b.batch) })
	taught, house, err := c.learn(w, all)
	if err != nil {
		return err
	}
	if err := learnWriters[c.Format](w, taught, house); err != nil {
		return failed("cannot write: %v", err)
	}
	if len(read.faults) > 0 || taught.House == nil {
		return errFindings
	}
	return nil
}

// learn fits, and says which batches were left out. An interrupt ends it.
func (c Learn) learn(w *World, all []record) (lessons.Result, words.House, error) {
	from, err := c.older(w)
	if err != nil {
		return lessons.Result{}, words.House{}, err
	}
	batches, files := make([]*model.Batch, len(all)), lessons.Files{Paths: map[*source.File]string{}, Folder: w.Folder}
	for i, r := range all {
		batches[i] = r.batch
		maps.Copy(files.Paths, r.files)
	}
	maps.Copy(files.Paths, from.files)
	ctx, cancel := w.interruptible()
	defer cancel()
	told := w.counter("learning from " + words.Many(len(all), "batch", "batches"))
	r, err := learn.Of(ctx, batches, learn.Options{NoCrossValidation: c.Format == "malt", From: from.house, Progress: func(doing learn.Doing, done, of int) {
		told.part(words.Doing[doing], done, of)
	}})
	told.wipe()
	if ctx.Err() != nil {
		return lessons.Result{}, words.House{}, errInterrupted
	}
	if r != nil {
		for _, l := range r.Left {
			w.aside(fmt.Sprintf("left out: batch %q of %s: %s", words.Safe(l.Batch.Name), words.Safe(l.Batch.Place.File.Name()), houseOf(l.Batch.Process).Say(lessons.Reason{Of: l.Reason})))
		}
	}
	tellStruck(w, r)
	if errors.Is(err, work.ErrPool) {
		err = fmt.Errorf("%w; %s", err, words.Dearest)
	}
	if err != nil {
		return lessons.Result{}, words.House{}, failure{ExitFindings, errors.New(words.House{}.Cause(err))}
	}
	answer := lessons.Of(r, cmp.Or(c.Name, from.name()), files)
	if from.house != nil {
		answer.From = &from.house.Name
	}
	return answer, words.Of(r.Batches[0].Process), nil
}

// tellStruck says which readings were not used, since they cannot be.
func tellStruck(w *World, r *learn.Result) {
	if r == nil {
		return
	}
	for _, x := range r.Struck {
		w.aside(fmt.Sprintf("left out of batch %q: %s, which cannot be; see maltwright check", words.Safe(x.Batch.Name), words.Safe(words.OneLine(x.Reading.Place().Text()))))
	}
}

// located notes where the files of a record lie, while its root is open.
func (r record) located() record {
	r.files = map[*source.File]string{}
	for _, f := range append(slices.Clone(r.house.Files), r.batch.Process.House.Files...) { // which may be of the past
		if at := below(r.in, r.root, f); at != "" {
			r.files[f] = filepath.Join(r.in.root, filepath.FromSlash(at))
		}
	}
	return r
}

var learnWriters = map[string]func(*World, lessons.Result, words.House) error{
	"text": func(w *World, r lessons.Result, h words.House) error {
		return text.Lessons(w.Out, r, h, w.options())
	},
	"json": func(w *World, r lessons.Result, h words.House) error {
		if r.House != nil {
			block := string(malt.House(*r.House, h))
			r.Block = &block
		}
		return json.Write(w.Out, r, h.Say)
	},
	"malt": writeLearnMalt,
}

// writeLearnMalt writes a file with the house block, and says where it belongs.
func writeLearnMalt(w *World, r lessons.Result, h words.House) error {
	if r.House == nil {
		w.aside("no block to write: the readings give no figure well enough; maltwright learn says why")
		return nil
	}
	if in := r.Seat.Inside; in != nil {
		w.aside(fmt.Sprintf("put this block into %s, which defines the names in it", words.Safe(words.InsideOf(*in))))
	}
	out := string(malt.Lessons(r, h))
	if w.Terminal {
		out = words.SafeLines(out)
	}
	_, err := io.WriteString(w.Out, out)
	return err
}
