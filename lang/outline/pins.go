package outline

import (
	"path"
	"slices"

	"maltwright/lang/finding"
	"maltwright/lang/fingerprint"
	"maltwright/lang/model"
	"maltwright/lang/read"
	"maltwright/lang/source"
	"maltwright/lang/syntax"
	"maltwright/lang/vocabulary"
)

// pins gives the edits by which records stay pinned to the processes that they are made by, though something
// of them has another name. Edits are those of the name, in their order.
func (f *Folder) pins(t thing, to string, edits []Edit, past Past) ([]Edit, error) {
	after := renamed{f, f.changed(edits)}
	var list []Edit
	for _, main := range t.houses {
		if !pinsSome(f.file(main).tree) {
			continue
		}
		was, is := load(main, f), load(main, after)
		if len(was.Batches) != len(is.Batches) {
			return nil, refuse("%s would be read otherwise with the name %q", main, to)
		}
		for i, b := range was.Batches {
			print, err := f.pin(t, main, b, is.Batches[i], past)
			if err != nil {
				return nil, err
			}
			if print != "" {
				list = append(list, Edit{main, finding.Edit{Place: inside(b.Pinned.Print.Place), New: print}})
			}
		}
	}
	return list, nil
}

// pin gives the signs to which a batch is to be pinned then, "" where its pin stays as it is.
func (f *Folder) pin(t thing, main string, was, is *model.Batch, past Past) (string, error) {
	if was.Pinned == nil || was.Process == nil || is.Process == nil || fingerprint.Of(was.Process) == fingerprint.Of(is.Process) {
		return "", nil
	}
	revised := was.Pinned.Revision.Text != ""
	print, held := fingerprint.Anew(was.Pinned.Print.Text, was.Process, is.Process)
	switch {
	case revised && past != nil && past(main, was):
		return "", nil // the text is found there by its signs
	case held:
		return print, nil
	case revised && t.kind == vocabulary.Process:
		return "", refuse("batch %q was begun by an earlier text of %q, in revision %s of git, and would not find it there by another name", was.Name, t.text, was.Pinned.Revision.Text)
	}
	return "", nil // the process was changed since, and that is told as before
}

// pinsSome tells whether a file has a record that may be pinned.
func pinsSome(t *syntax.Tree) bool {
	return slices.ContainsFunc(t.Top.Statements, func(s *syntax.Statement) bool {
		return vocabulary.Opens(vocabulary.File, s.Verb.Text) == vocabulary.Batch
	})
}

// load reads a file and what it uses, as it is read by itself: from its own folder.
func load(main string, r read.Reader) *model.House {
	text, err := r.Read(main)
	if err != nil {
		return &model.House{}
	}
	h, _ := read.Load(path.Base(main), text, ".", from{r, path.Dir(main)})
	return h
}

// from reads the files below a folder.
type from struct {
	read.Reader
	dir string
}

// Read gives the text of a file.
func (f from) Read(at string) ([]byte, error) { return f.Reader.Read(path.Join(f.dir, at)) }

// renamed is a folder with some of its files changed.
type renamed struct {
	*Folder
	changed map[string][]byte
}

// Read gives the text of a file.
func (r renamed) Read(at string) ([]byte, error) {
	if text, ok := r.changed[path.Clean(at)]; ok {
		return text, nil
	}
	return r.Folder.Read(at)
}

// inside is the place of a text without its quotes.
func inside(p source.Place) source.Place {
	return source.Place{File: p.File, Span: syntax.Text{Span: p.Span}.Inner(p.File)}
}
