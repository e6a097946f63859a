package lsp

import (
	"fmt"
	"path/filepath"
	"slices"

	"maltwright/cmd/lsp/desk"
	"maltwright/cmd/lsp/wire"
	"maltwright/cmd/words"
	"maltwright/lang/finding"
	"maltwright/lang/source"
	"maltwright/lang/syntax"
	"maltwright/lang/vocabulary"
)

// mostElsewhere is how many findings of a used file are told one by one at the line that uses it.
const mostElsewhere = 5

// elsewhere are the findings of files that a document uses, at the lines by which it does: the worst of
// each file, and how many more there are. Of a file that is open and tells them itself only faults and
// dangers are told again, since with these the document cannot be forecast.
func (s *session) elsewhere(view *desk.View, doc *desk.Doc, found []finding.Finding) []wire.Diagnostic {
	var list []wire.Diagnostic
	var files []*source.File
	of := map[string][]finding.Finding{}
	for _, f := range found {
		if !f.Place.Known() || inFile(f, doc.File) || f.Severity < finding.Fault && s.tells(view, f) {
			continue
		}
		name := f.Place.File.Name()
		if of[name] == nil {
			files = append(files, f.Place.File)
		}
		of[name] = append(of[name], f)
	}
	for _, file := range files {
		list = append(list, s.atUse(view, doc, file, of[file.Name()])...)
	}
	return list
}

// tells tells whether a finding is told in its own file.
func (s *session) tells(view *desk.View, f finding.Finding) bool {
	own, err := view.Doc(view.PathOf(f.Place.File))
	if err != nil || !own.Open {
		return false
	}
	checked, err := view.Checked(own.Path)
	return err == nil && slices.ContainsFunc(checked.Findings, func(o finding.Finding) bool { return keyOf(o) == keyOf(f) })
}

func (s *session) atUse(view *desk.View, doc *desk.Doc, file *source.File, found []finding.Finding) []wire.Diagnostic {
	slices.SortStableFunc(found, func(a, b finding.Finding) int { return int(b.Severity) - int(a.Severity) })
	at := view.Range(doc.File, useOf(view, doc, file.Name()))
	name := words.Safe(file.Name())
	if rel, err := filepath.Rel(doc.Dir(), file.Name()); err == nil {
		name = words.Safe(filepath.ToSlash(rel))
	}
	list := make([]wire.Diagnostic, 0, mostElsewhere+1)
	for i, f := range found {
		if i == mostElsewhere {
			more := wire.Diagnostic{Range: at, Severity: severities[f.Severity], Source: "maltwright", Message: fmt.Sprintf("%s: %s more", name, words.Plural(len(found)-i, "finding"))}
			more.RelatedInformation = []wire.DiagnosticRelatedInformation{{Location: view.Location(f.Place), Message: "the first of them"}}
			return append(list, more)
		}
		d := s.diagnosticOf(view, f)
		line := f.Place.File.Position(f.Place.Start, source.Characters).Line
		d.Range, d.Message = at, fmt.Sprintf("%s, line %d: %s", name, line, d.Message)
		d.RelatedInformation = slices.Insert(d.RelatedInformation, 0, wire.DiagnosticRelatedInformation{Location: view.Location(f.Place), Message: words.Safe(f.Message)})
		list = append(list, d)
	}
	return list
}

// useOf is the statement by which a document uses a file, itself or by way of others; the first line
// where there is none.
func useOf(view *desk.View, doc *desk.Doc, name string) source.Span {
	for _, u := range usesOf(doc) {
		if u.path == name || leads(view, u.path, name, map[string]bool{doc.File.Name(): true}) {
			return u.Span
		}
	}
	return doc.File.FirstLine()
}

// leads tells whether a file uses another, itself or by way of others.
func leads(view *desk.View, from, to string, seen map[string]bool) bool {
	doc, err := view.Doc(from)
	if err != nil || seen[from] {
		return false
	}
	seen[from] = true
	return slices.ContainsFunc(usesOf(doc), func(u use) bool { return u.path == to || leads(view, u.path, to, seen) })
}

// use is a statement that brings in a file.
type use struct {
	source.Span
	path string
}

func usesOf(doc *desk.Doc) []use {
	var list []use
	for _, s := range doc.Tree().Top.Statements {
		if !vocabulary.Includes(s.Verb.Text) || s.Broken || len(s.Terms) != 1 {
			continue
		}
		if text, ok := s.Terms[0].(syntax.Text); ok {
			list = append(list, use{s.Span, filepath.Join(doc.Dir(), filepath.FromSlash(text.Value))})
		}
	}
	return list
}
