package lsp

import (
	"context"
	"path/filepath"
	"strings"

	"maltwright/cmd/folder"
	"maltwright/cmd/lsp/desk"
	"maltwright/cmd/lsp/wire"
	"maltwright/lang/finding"
	"maltwright/lang/outline"
	"maltwright/lang/source"
	"maltwright/lang/syntax"
)

// document is the document that a request is about.
func document(v *desk.View, id wire.TextDocumentIdentifier) (*desk.Doc, error) {
	doc, err := v.At(id.URI)
	if err != nil {
		return nil, &wire.Error{Code: wire.RequestFailed, Message: id.URI + " cannot be read: " + folder.Plain(err)}
	}
	return doc, nil
}

// around are the files among which the names of a document are looked for: those of the folder that the editor has
// open and of all below it, or of the document's own folder where that is in none.
type around struct {
	view   *desk.View
	doc    *desk.Doc
	root   string
	paths  []string
	beside map[string]bool // those of the paths
}

func aroundOf(v *desk.View, doc *desk.Doc) *around {
	a := &around{view: v, doc: doc, root: doc.Dir(), beside: map[string]bool{}}
	files := v.Folder(a.root)
	for _, f := range v.Folders() {
		if below(f, doc.File.Name()) {
			a.root, files = f, v.Workspace()
			break
		}
	}
	for _, p := range append(files, doc.File.Name()) {
		if at, ok := a.path(p); ok && !a.beside[at] {
			a.paths, a.beside[at] = append(a.paths, at), true
		}
	}
	return a
}

// below tells whether a file lies in a folder or further in.
func below(folder, file string) bool {
	return strings.HasPrefix(file, strings.TrimSuffix(folder, string(filepath.Separator))+string(filepath.Separator))
}

// path is the path of a file from the root, with /.
func (a *around) path(file string) (string, bool) {
	if !below(a.root, file) {
		return "", false
	}
	rel, err := filepath.Rel(a.root, file)
	return filepath.ToSlash(rel), err == nil
}

// own is that of the document itself.
func (a *around) own() string {
	at, _ := a.path(a.doc.File.Name())
	return at
}

// file is the document of a path from the root; what a file uses is read as it is checked, from below the root alone.
func (a *around) file(at string) (*desk.Doc, error) {
	if at == a.own() {
		return a.doc, nil
	}
	if !a.beside[at] {
		if _, err := a.view.Reader(a.root).Read(at); err != nil {
			return nil, err
		}
	}
	return a.view.Doc(filepath.Join(a.root, filepath.FromSlash(at)))
}

// Paths lists the files.
func (a *around) Paths() []string { return a.paths }

// Tree is a file as statements.
func (a *around) Tree(at string) (*syntax.Tree, []finding.Finding, error) {
	doc, err := a.file(at)
	if err != nil {
		return nil, nil, err
	}
	tree, found := doc.Statements()
	return tree, found, nil
}

// uri is the address of a file.
func (a *around) uri(at string) string {
	if doc, err := a.file(at); err == nil && doc.URI != "" {
		return doc.URI
	}
	return a.view.URI(filepath.Join(a.root, filepath.FromSlash(at)))
}

func (a *around) location(o outline.Occurrence) wire.Location {
	return wire.Location{URI: a.uri(o.Path), Range: a.view.Range(o.Place.File, o.Place.Span)}
}

// named is what stands at a position of a document: the files around it, and the name there; ok is false where
// there is none.
func named(v *desk.View, id wire.TextDocumentIdentifier, p wire.Position) (a *around, f *outline.Folder, n outline.Name, ok bool, err error) {
	doc, err := document(v, id)
	if err != nil {
		return nil, nil, n, false, err
	}
	a = aroundOf(v, doc)
	f = outline.In(a)
	n, ok = f.At(a.own(), v.Offset(doc.File, p))
	return a, f, n, ok, nil
}

// definition leads from a name to where it is defined, from a file that is used to that, and from a step that a record
// names to the step.
func definition(_ context.Context, s *session, v *desk.View, p wire.DefinitionParams) (any, error) {
	a, f, n, ok, err := named(v, p.TextDocument, p.Position)
	if err != nil {
		return nil, err
	}
	if ok {
		var list []target
		for _, o := range f.Definitions(a.own(), n) {
			list = append(list, target{a.uri(o.Path), o.Place, source.Place{File: o.Place.File, Span: o.Whole}})
		}
		return s.targets(v, n.Place, list), nil
	}
	return a.elsewhere(s, f, v.Offset(a.doc.File, p.Position)), nil
}

// elsewhere leads from what is no name.
func (a *around) elsewhere(s *session, f *outline.Folder, offset int) any {
	tree := a.doc.Tree()
	for _, l := range outline.Links(tree) {
		to, ok := l.From(a.own())
		if !ok || offset < l.Place.Start || l.Place.End < offset {
			continue
		}
		doc, err := a.file(to)
		if err != nil {
			return nil
		}
		top := source.Place{File: doc.File, Span: source.Span{Start: doc.File.Start(), End: doc.File.Start()}}
		return s.targets(a.view, l.Place, []target{{a.uri(to), top, top}})
	}
	step, ok := outline.StepAt(tree, offset)
	if !ok {
		return nil
	}
	var list []target
	for _, o := range f.Definitions(a.own(), step.Process) {
		if at, ok := outline.StepOf(f.Tree(o.Path), o.Text, step.Word, step.Number); ok {
			list = append(list, target{a.uri(o.Path), at, at})
		}
	}
	return s.targets(a.view, step.Place, list)
}

// target is where something leads: to words, and to all that belongs to them.
type target struct {
	uri   string
	words source.Place
	whole source.Place
}

// targets are where a place leads, as the editor takes it.
func (s *session) targets(v *desk.View, from source.Place, list []target) any {
	if len(list) == 0 {
		return nil
	}
	if !s.can().TextDocument.Definition.LinkSupport {
		plain := make([]wire.Location, len(list))
		for i, t := range list {
			plain[i] = wire.Location{URI: t.uri, Range: v.Range(t.words.File, t.words.Span)}
		}
		return plain
	}
	origin := v.Range(from.File, from.Span)
	links := make([]wire.LocationLink, len(list))
	for i, t := range list {
		links[i] = wire.LocationLink{OriginSelectionRange: &origin, TargetURI: t.uri, TargetRange: v.Range(t.whole.File, t.whole.Span), TargetSelectionRange: v.Range(t.words.File, t.words.Span)}
	}
	return links
}

// references lists where the same thing is named, in all files around.
func references(_ context.Context, _ *session, v *desk.View, p wire.ReferenceParams) ([]wire.Location, error) {
	a, f, n, ok, err := named(v, p.TextDocument, p.Position)
	if err != nil || !ok {
		return nil, err
	}
	list := []wire.Location{}
	for _, o := range f.Same(a.own(), n) {
		if !o.Defines || p.Context.IncludeDeclaration {
			list = append(list, a.location(o))
		}
	}
	return list, nil
}

// Kinds of a place that is made to stand out.
const (
	placeRead    = 2
	placeWritten = 3
)

// documentHighlight lists those of the document alone: it is asked for wherever the cursor goes, and looks at no other
// file.
func documentHighlight(_ context.Context, _ *session, v *desk.View, p wire.DocumentHighlightParams) ([]wire.DocumentHighlight, error) {
	doc, err := document(v, p.TextDocument)
	if err != nil {
		return nil, err
	}
	var list []wire.DocumentHighlight
	offset := v.Offset(doc.File, p.Position)
	names := outline.Names(doc.Tree())
	for _, at := range names {
		if offset < at.Place.Start || at.Place.End < offset {
			continue
		}
		for _, n := range names {
			if n.Text != at.Text || !n.May(at.Kind) && !at.May(n.Kind) {
				continue
			}
			h := wire.DocumentHighlight{Range: v.Range(doc.File, n.Inner), Kind: placeRead}
			if n.Defines {
				h.Kind = placeWritten
			}
			list = append(list, h)
		}
		break
	}
	return list, nil
}

var _ outline.Texts = (*around)(nil)
