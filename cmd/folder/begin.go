package folder

import (
	"context"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"time"

	"maltwright/cmd/answer/noted"
	"maltwright/cmd/founding"
	"maltwright/cmd/journal"
	"maltwright/cmd/recall"
	"maltwright/cmd/repository"
	"maltwright/cmd/words"
	"maltwright/lang/finding"
	"maltwright/lang/fingerprint"
	"maltwright/lang/model"
	"maltwright/lang/quantity"
	"maltwright/lang/read"
	"maltwright/lang/source"
	"maltwright/sim/work"
)

// Wrong is what somebody filled in that cannot be.
type Wrong struct {
	Field string // "name", "weight" or "at"
	Given string // as it was filled in; "" where the sentence stands for itself
	Says  string
}

func (e *Wrong) Error() string {
	if e.Given == "" {
		return e.Says
	}
	return fmt.Sprintf("%q%s", e.Given, e.Says)
}

func wrong(field, given, format string, args ...any) error {
	return &Refused{&Wrong{field, given, fmt.Sprintf(format, args...)}}
}

// Beginning is a batch that is to be begun.
type Beginning struct {
	At     time.Time // when the grain goes in
	Name   string    // of the batch; "" for the next number of its year
	Weight string    // as Weight gives it; "" for that of the process
}

// Opening is a record that can be opened.
type Opening struct {
	journal.Beginning
	Name  string // of its file, as it is shown
	Path  string
	Text  []byte
	Model *model.Batch
}

// Weight settles how a weight is written. The error is a *Refused.
func Weight(text string) (string, error) {
	q, err := quantity.Parse(text)
	if err != nil || q.Dimension != quantity.Mass || !(q.SI > 0) {
		return "", wrong("weight", text, " is no weight; write it with its unit, as 5.8 kg or 12 lb 4 oz")
	}
	return q.String(), nil
}

// Opening makes the record of a new batch of a process, and writes nothing. Errors: *Refused, *Failed.
func (f File) Opening(p *model.Process, s Beginning) (Opening, error) {
	o := Opening{Beginning: journal.Beginning{Uses: filepath.Base(f.Path), Process: p.Name, Began: s.At, Print: fingerprint.Of(p)}}
	several := p.Grain == nil || len(p.Lots) > 0 // several lots stay with the process
	if p.Charge != nil && !several {
		o.Charge, o.Lot = p.Charge.String(), p.Grain.Name
	}
	if s.Weight != "" {
		if several {
			return o, wrong("weight", "", "%q takes several lots, or none; write how much of each into the record: from 3 kg of \"its name\"", p.Name)
		}
		o.Charge, o.Lot = s.Weight, p.Grain.Name
	}
	var err error
	if o.Batch, err = f.nameFor(s.Name, s.At.Year()); err != nil {
		return o, err
	}
	o.Revision = f.committed(p)
	if o.Text, err = o.Beginning.Text(); err != nil {
		return o, &Refused{fmt.Errorf("%s: %w", f.Name, err)}
	}
	o.Name = filepath.Join(filepath.Dir(f.Name), o.Batch+Extension)
	o.Path = filepath.Join(filepath.Dir(f.Path), o.Batch+Extension)
	o.Model, err = f.read(o)
	return o, err
}

// read reads the record as it will stand, and refuses one that does not read: a weight may be
// none for the house.
func (f File) read(o Opening) (*model.Batch, error) {
	own := File{Name: o.Name, Path: o.Path, Text: o.Text, Root: f.Root, Dir: f.Dir}
	house, found, err := own.Load()
	if err != nil {
		return nil, err
	}
	for _, x := range found {
		if x.Severity >= finding.Fault && x.Place.File == house.Files[0] {
			return nil, &Refused{fmt.Errorf("not begun: %s [%s]", words.Joined("; ", x.Message, x.Hint), x.Rule)}
		}
	}
	if len(house.Batches) == 0 {
		return nil, &Refused{errors.New("not begun: its record would hold no batch")}
	}
	return house.Batches[0], nil
}

// Begin writes the record that is to be opened. Errors: *Refused where a file of its name came in
// between, *Busy, *Failed.
func (c Clerk) Begin(o Opening) error {
	w := c.Writing
	w.Create = true
	return Edit(w, o.Name, o.Path, func(old []byte) ([]byte, error) {
		if old != nil {
			return nil, wrong("name", "", "%s is there already; choose another name", o.Name)
		}
		return o.Text, nil
	})
}

// nameFor is the name of the new batch: the one that was asked for, or the next of its year.
func (f File) nameFor(asked string, year int) (string, error) {
	taken, err := f.taken()
	if err != nil {
		return "", err
	}
	switch {
	case asked == "":
		return journal.Next(taken, year), nil
	case asked != words.Safe(asked) || strings.ContainsAny(asked, `/\:*?"<>|`) || strings.HasPrefix(asked, ".") || strings.TrimSpace(asked) != asked || len(asked) > mostName:
		return "", wrong("name", asked, " cannot be the name of a file")
	case slices.Contains(taken, asked):
		return "", &Refused{&Wrong{"name", "", fmt.Sprintf("there is a batch %q beside %s already", asked, f.Name)}}
	}
	return asked, nil
}

// mostName is how long the name of a batch may be as that of a file, in bytes.
const mostName = 100

// taken lists the batches in the files of the folder of a file, and the names of those files,
// which a new one cannot have either.
func (f File) taken() (names []string, err error) {
	folder := filepath.Dir(f.Path)
	list, err := os.ReadDir(folder)
	if err != nil {
		return nil, &Failed{folder, Plain(err), err}
	}
	for _, e := range list {
		own, is := strings.CutSuffix(e.Name(), Extension)
		if !is {
			continue
		}
		names = append(names, own)
		if !e.Type().IsRegular() {
			continue
		}
		if other, err := Read(filepath.Join(folder, e.Name()), f.Root); err == nil { // one that cannot be read names no batch
			names = append(names, journal.Batches(other.Name, other.Text)...)
		}
	}
	return names, nil
}

// committed is the revision of git that holds the text of a process, "" where the latest one does
// not.
func (f File) committed(p *model.Process) string {
	root, err := read.OpenRoot(f.Root)
	if err != nil {
		return ""
	}
	defer root.Close()
	revision := repository.Head(f.Root)
	past := recall.Reader{Reader: root, Root: f.Root, Below: func(s *source.File) string { return f.Below(root, s) }}
	if revision == "" || !past.Holds(p, revision) {
		return ""
	}
	return revision
}

// Kept tells whether git keeps the text of the process, or there is no git that could.
func (o Opening) Kept() bool {
	_, err := repository.Top(filepath.Dir(o.Path))
	return o.Revision != "" || err != nil
}

// Lying gives the batch that is still in the vessel of a process at a time by its record, of those
// beside the file of the process; nil where none is.
func (f File) Lying(ctx context.Context, p *model.Process, at time.Time) *Found {
	vessel := vesselOf(p)
	names, err := Beside(filepath.Dir(f.Path))
	if vessel == "" || err != nil {
		return nil
	}
	for _, b := range Batches(names, func(name string) (File, error) { return Read(filepath.Join(filepath.Dir(f.Path), name), f.Root) }) {
		if LiesIn(ctx, b.Model, vessel, at) {
			return &b
		}
	}
	return nil
}

// Lies says that a batch is still in a vessel.
func (b Found) Lies() string {
	return fmt.Sprintf("batch %q, begun %s, is still in %q by its record %s", b.Model.Name, b.Model.Began.Format("Mon 2 Jan 15:04"), vesselOf(b.Model.Process), filepath.Base(b.Path))
}

// BeforeItIsWet says what is not known of the lots of a batch, a line each: this is the last moment at
// which it can be asked.
func BeforeItIsWet(b *model.Batch) (lines []string) {
	if b.Process == nil {
		return nil
	}
	lots := []*model.Grain{b.Process.Grain}
	if len(b.Process.Lots) > 0 {
		lots = lots[:0]
		for _, lot := range b.Process.Lots {
			lots = append(lots, lot.Grain)
		}
	}
	for _, lot := range lots {
		lines = append(lines, founding.BeforeItIsWet(lot)...)
	}
	return lines
}

// First says what comes first in a batch that was begun.
type First struct {
	Says   []string // what to have ready, and what is due first
	Weight string   // that is forecast for the first line
	Line   string   // the first line to note; "" where nothing is weighed
}

// FirstOf says what comes first in a batch. It is empty where the batch cannot be forecast.
func FirstOf(ctx context.Context, b *model.Batch) (first First) {
	if b.Process == nil || b.Broken {
		return first
	}
	o, ok := noted.Open(ctx, b, work.NewPool(work.Records))
	if !ok {
		return first
	}
	h := words.OfBatch(b.Process, b)
	first.Says = h.Opening(o)
	if o.First != nil {
		first.Weight, first.Line = h.FirstWeight(*o.First), h.FirstLine(*o.First)
	}
	return first
}
