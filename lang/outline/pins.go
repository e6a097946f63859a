package outline

import (
	"path"

	"maltwright/lang/finding"
	"maltwright/lang/fingerprint"
	"maltwright/lang/model"
	"maltwright/lang/read"
	"maltwright/lang/source"
	"maltwright/lang/syntax"
	"maltwright/lang/vocabulary"
)

// pinned is a record that says by which text of its process it was begun.
type pinned struct {
	file, batch, process string
	print                syntax.Text
	revision             string // of git; "" where none is said
}

// made is a process as it is, and as it will be.
type made struct {
	was, is *model.Process
	other   bool              // they are not of the same signs
	anew    map[string]string // by the signs of a record, those that it is to have then; "" for signs of another text
}

func madeOf(was, is *model.Process) *made {
	m := &made{was: was, is: is, anew: map[string]string{}}
	m.other = was != nil && is != nil && fingerprint.Of(was) != fingerprint.Of(is)
	return m
}

// signs are those that a record of some signs is to have; ok is false where it is of another text.
func (m *made) signs(print string) (anew string, ok bool) {
	anew, known := m.anew[print]
	if !known {
		anew, _ = fingerprint.Anew(print, m.was, m.is)
		m.anew[print] = anew
	}
	return anew, anew != ""
}

// pins gives the edits by which records stay pinned to the processes that they are made by, though something
// of them has another name. Edits are those of the name, in their order.
func (f *Folder) pins(t thing, to string, edits []Edit, past Past) ([]Edit, error) {
	after := renamed{f, f.changed(edits)}
	known := map[string]*made{} // by what a record uses, and its process: those of one season have that in common
	var list []Edit
	for _, main := range t.houses {
		for _, p := range pinnedIn(f.file(main)) {
			key := besideBatches(f.file(main)) + "\x00" + p.process
			m, ok := known[key]
			if !ok {
				m = madeOf(processOf(load(main, f), p.process), processOf(load(main, after), t.renamed(p.process, to)))
				known[key] = m
			}
			print, err := f.pin(t, p, m, past)
			if err != nil {
				return nil, err
			}
			if print != "" {
				file := f.file(main).tree.File
				list = append(list, Edit{main, finding.Edit{Place: source.Place{File: file, Span: p.print.Inner(file)}, New: print}})
			}
		}
	}
	return list, nil
}

// renamed is the name of a process once the thing is called otherwise.
func (t thing) renamed(process, to string) string {
	if t.kind == vocabulary.Process && t.text == process {
		return to
	}
	return process
}

// pin gives the signs to which a record is to be pinned then, "" where its pin stays as it is.
func (f *Folder) pin(t thing, p pinned, m *made, past Past) (string, error) {
	if !m.other {
		return "", nil
	}
	revised := p.revision != ""
	print, held := m.signs(p.print.Value)
	switch {
	case revised && past != nil && f.found(p, past):
		return "", nil // the text is found there by its signs
	case held:
		return print, nil
	case revised && t.kind == vocabulary.Process:
		return "", refuse("batch %q was begun by an earlier text of %q, in revision %s of git, and would not find it there by another name", p.batch, t.text, p.revision)
	}
	return "", nil // the process was changed since, and that is told as before
}

// found asks the past for the text of a record.
func (f *Folder) found(p pinned, past Past) bool {
	for _, b := range load(p.file, f).Batches {
		if b.Name == p.batch {
			return past(p.file, b)
		}
	}
	return false
}

// processOf is the process of a name of which the records of a house are.
func processOf(h *model.House, name string) *model.Process {
	for _, b := range h.Batches {
		if b.Process != nil && b.Process.Name == name {
			return b.Process
		}
	}
	return nil
}

// pinnedIn lists the records of a file that are pinned.
func pinnedIn(one *file) (list []pinned) {
	for _, b := range one.tree.Top.Statements {
		if vocabulary.Opens(vocabulary.File, b.Verb.Text) != vocabulary.Batch || b.Body == nil {
			continue
		}
		p := pinned{file: one.path}
		for _, n := range one.names {
			switch {
			case n.Place.Start < b.Start || b.Body.Start < n.Place.End:
			case n.Defines:
				p.batch = n.Text
			case n.Kind == vocabulary.Process:
				p.process = n.Text
			}
		}
		for _, s := range b.Body.Statements {
			if s.Verb.Text != vocabulary.RecordPinned || s.Broken || len(s.Terms) != 1 {
				continue
			}
			if text, ok := s.Terms[0].(syntax.Text); ok {
				p.print, p.revision = text, textIn(s.Clauses)
				list = append(list, p)
			}
		}
	}
	return list
}

// textIn is the first text of some clauses.
func textIn(clauses []*syntax.Clause) string {
	for _, c := range clauses {
		for _, term := range c.Terms {
			if text, ok := term.(syntax.Text); ok {
				return text.Value
			}
		}
	}
	return ""
}

// besideBatches is what a file says besides its records, and where it lies.
func besideBatches(one *file) string {
	said := path.Dir(one.path)
	for _, s := range one.tree.Top.Statements {
		if vocabulary.Opens(vocabulary.File, s.Verb.Text) != vocabulary.Batch {
			said += "\x00" + one.tree.File.Text(s.Span)
		}
	}
	return said
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
