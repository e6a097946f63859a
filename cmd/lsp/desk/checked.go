package desk

import (
	"context"
	"maps"
	"sync"

	"maltwright/check"
	"maltwright/cmd/folder"
	"maltwright/cmd/recall"
	"maltwright/lang/finding"
	"maltwright/lang/model"
)

// Checked is what check finds in a file without a forecast.
type Checked struct {
	House     *model.House
	Findings  []finding.Finding
	NotJudged []finding.NotJudged
	Doc       *Doc // what was checked
}

// kept keeps what was found, by the path of the document.
type kept struct {
	mu    sync.Mutex
	files map[string]*entry
}

// entry is what was found in a file last, and the texts that it was found in.
type entry struct {
	mu   sync.Mutex // held while it is found out: whoever asks for the same waits
	text string
	name string
	used []used
	is   *Checked

	past  sync.Mutex
	known recall.Known // houses of the past that were read already, while nobody has them
}

// lend gives what was read of the past, which one check at a time has.
func (e *entry) lend() recall.Known {
	e.past.Lock()
	defer e.past.Unlock()
	known := e.known
	e.known = nil
	if known == nil {
		known = recall.Known{}
	}
	return known
}

func (e *entry) giveBack(known recall.Known) {
	e.past.Lock()
	defer e.past.Unlock()
	maps.DeleteFunc(known, func(_ string, h *model.House) bool { return h == nil }) // it may be committed yet
	e.known = known
}

// used is a text that was read, by its path below the folder.
type used struct {
	dir, at string
	is      *blob
}

// mostKept is of how many files what was found is kept.
const mostKept = 256

func newKept() *kept { return &kept{files: map[string]*entry{}} }

func (k *kept) entry(path string) *entry {
	k.mu.Lock()
	defer k.mu.Unlock()
	e := k.files[path]
	if e == nil {
		if len(k.files) >= mostKept {
			k.files = map[string]*entry{}
		}
		e = &entry{}
		k.files[path] = e
	}
	return e
}

// Checked gives what check finds in the document without a forecast. It is found once for a text
// and the texts of all that it uses.
func (v *View) Checked(path string) (*Checked, error) {
	doc, err := v.Doc(path)
	if err != nil {
		return nil, err
	}
	e := v.desk.kept.entry(path)
	e.mu.Lock()
	defer e.mu.Unlock()
	if e.is != nil && e.name == doc.File.Name() && e.text == string(doc.Text()) && v.unchanged(e.used) {
		return e.is, nil
	}
	r, used := v.check(doc, check.Options{NoForecast: true})
	e.text, e.name, e.used = string(doc.Text()), doc.File.Name(), used
	e.is = &Checked{House: r.House, Findings: r.Findings, NotJudged: r.NotJudged, Doc: doc}
	return e.is, nil
}

// Check checks a document as asked, over what is open.
func (v *View) Check(doc *Doc, o check.Options) check.Report {
	r, _ := v.check(doc, o)
	return r
}

// check gives the texts that it used too.
func (v *View) check(doc *Doc, o check.Options) (check.Report, []used) {
	if o.Context == nil {
		o.Context = context.Background()
	}
	var list []used
	dir := doc.Dir()
	r := &reader{view: v, dir: dir, note: func(at string, b *blob) { list = append(list, used{dir, at, b}) }}
	e := v.desk.kept.entry(doc.Path)
	known := e.lend()
	defer e.giveBack(known)
	in := folder.File{Name: doc.File.Name(), Path: doc.Path, Text: doc.Text(), Root: dir, Dir: "."}
	return check.File(in.Name, in.Text, in.Dir, in.Past(r, known), o), list
}

func (v *View) unchanged(list []used) bool {
	for _, u := range list {
		if !v.below(u.dir, u.at).same(u.is) {
			return false
		}
	}
	return true
}
