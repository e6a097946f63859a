package lsp

import (
	"path/filepath"
	"strings"

	"maltwright/cmd/folder"
	"maltwright/cmd/lsp/desk"
	"maltwright/cmd/lsp/wire"
	"maltwright/lang/finding"
	"maltwright/lang/outline"
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
		if below(f, doc.File.Name()) && len(f) <= len(a.root) { // of folders in one another the outer one
			a.root, files = f, v.Workspace()
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
