// Package recall takes batches back to the text of their process by which they were begun.
//
// # How it works
//
// A record is pinned to the fingerprint of its process, and names the revision of git
// that holds that text. Where the process is another by now, the file it stands in is
// read at that revision, with what it uses; the batch goes by the process there from then
// on, that of its signs or else that of its name, and the process of today is kept beside
// it (model.Batch.Today), with what is otherwise since (model.Batch.Since). The revision is believed: a text of which the
// fingerprint is another was pinned by another version of this program, or by hand, and
// that is said. Where the text cannot be had the batch is left as it is, and goes by the
// process of today.
package recall

import (
	"fmt"
	"path"
	"slices"

	"maltwright/cmd/repository"
	"maltwright/lang/contrast"
	"maltwright/lang/finding"
	"maltwright/lang/fingerprint"
	"maltwright/lang/model"
	"maltwright/lang/read"
	"maltwright/lang/source"
)

// Reader reads the files of a house, and those of its past.
type Reader struct {
	read.Reader
	Root  string                    // the folder that it reads
	Below func(*source.File) string // the path of a file that was read below it; "" where it has none
	Known Known                     // what was read already; nil reads each time
}

// Known are houses of the past that were read already.
type Known map[string]*model.House

// Recall takes a batch back that was begun by another text.
func (s Reader) Recall(b *model.Batch) {
	if b.Pinned == nil || b.Broken || b.Process == nil || b.Process.Broken {
		return
	}
	now := fingerprint.Of(b.Process)
	same := fingerprint.Is(b.Process, b.Pinned.Print.Text)
	if same && !weighedOnScale(b) {
		return
	}
	switch then := s.begun(b); {
	case then == nil:
	case fingerprint.Of(then) != now:
		if !same { // else the revision is not that of the signs
			back(b, then)
		}
	case len(along(b, then.House)) > 0:
		back(b, then)
	case !same: // another version of this program wrote the signs
		pin := *b.Pinned
		pin.Print.Text = now
		b.Pinned = &pin
	}
}

// begun is the process by which a batch was begun, nil where it cannot be had.
func (s Reader) begun(b *model.Batch) *model.Process {
	if b.Pinned.Revision.Text == "" {
		return nil
	}
	h := s.then(b.Process, b.Pinned.Revision.Text)
	if h == nil {
		return nil
	}
	for _, then := range h.Processes { // by its signs, since it may have had another name
		if !then.Broken && fingerprint.Is(then, b.Pinned.Print.Text) {
			return then
		}
	}
	return called(h, b.Process.Name)
}

// Found tells whether the revision that a batch is pinned to holds the text that its signs are of, whatever it is
// called there.
func (s Reader) Found(b *model.Batch) bool {
	if b.Pinned == nil || b.Process == nil {
		return false
	}
	then := s.begun(b)
	return then != nil && fingerprint.Is(then, b.Pinned.Print.Text)
}

// Holds tells whether a revision holds the text of a process, and of all that it uses, as
// it stands.
func (s Reader) Holds(p *model.Process, revision string) bool {
	was := s.was(p, revision)
	return was != nil && fingerprint.Of(was) == fingerprint.Of(p)
}

// was is a process as it was at a revision, nil where it cannot be had.
func (s Reader) was(p *model.Process, revision string) *model.Process {
	if h := s.then(p, revision); h != nil {
		return called(h, p.Name)
	}
	return nil
}

// then is the house of a process as it was at a revision, nil where it cannot be had.
func (s Reader) then(p *model.Process, revision string) *model.House {
	at := s.Below(p.Place.File)
	if at == "" {
		return nil
	}
	return s.house(revision, at, p.Place.File.Name())
}

// called is the process of a house by its name, nil where it has none that reads.
func called(h *model.House, name string) *model.Process {
	for _, p := range h.Processes {
		if p.Name == name && !p.Broken {
			return p
		}
	}
	return nil
}

// house is that of a file at a revision; nil where it is not there, or has faults.
func (s Reader) house(revision, at, shown string) *model.House {
	key := s.Root + "\x00" + revision + "\x00" + at
	if h, ok := s.Known[key]; ok {
		return h
	}
	h := s.past(revision, at, shown)
	if s.Known != nil {
		s.Known[key] = h
	}
	return h
}

func (s Reader) past(revision, at, shown string) *model.House {
	rev, err := repository.Find(s.Root, revision, path.Base(at))
	if err != nil {
		return nil
	}
	text, err := rev.Read(at)
	if err != nil {
		return nil
	}
	h, found := read.Load(shown, text, path.Dir(at), rev)
	if worst, any := finding.Worst(found); any && worst >= finding.Fault {
		return nil
	}
	return h
}

// back lets a batch go by the process of its beginning.
func back(b *model.Batch, p *model.Process) {
	today := b.Process
	if !fingerprint.Is(p, b.Pinned.Print.Text) {
		b.Since = append(b.Since, "the signs of the text there are others, of another version of maltwright or by hand")
	}
	for _, c := range contrast.Files(fingerprint.Trees(p), fingerprint.Trees(today)) {
		b.Since = append(b.Since, since(c))
	}
	for _, o := range along(b, p.House) {
		if line := o.of + " " + o.change; !slices.Contains(b.Since, o.change) && !slices.Contains(b.Since, line) {
			b.Since = append(b.Since, line)
		}
		o.apply()
	}
	b.Today = today
	b.MadeBy(p)
}

// since says in a line what is otherwise since a batch was begun.
func since(c contrast.Change) string {
	switch c.Kind {
	case contrast.Added:
		return "new: " + c.New.Text
	case contrast.Removed:
		return "gone: " + c.Old.Text
	case contrast.Moved:
		return "moved: " + c.New.Text
	}
	return fmt.Sprintf("%s is now %s", c.Old.Text, c.New.Text)
}
