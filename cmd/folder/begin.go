package folder

import (
	"errors"
	"fmt"
	"path/filepath"
	"time"

	"maltwright/cmd/journal"
	"maltwright/cmd/words"
	"maltwright/lang/finding"
	"maltwright/lang/fingerprint"
	"maltwright/lang/model"
	"maltwright/lang/quantity"
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
	stays guarded
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
		if err := o.stays.check(); err != nil {
			return nil, err
		}
		if old != nil {
			return nil, wrong("name", "", "%s is there already; choose another name", o.Name)
		}
		return o.Text, nil
	})
}
