package lsp

import (
	"context"
	"path"
	"path/filepath"

	"maltwright/cmd/lsp/desk"
	"maltwright/cmd/lsp/wire"
	"maltwright/cmd/recall"
	"maltwright/cmd/words"
	"maltwright/lang/model"
	"maltwright/lang/outline"
	"maltwright/lang/source"
)

// refused is an answer that says why something is not done.
func refused(err error) error {
	return &wire.Error{Code: wire.RequestFailed, Message: words.Safe(err.Error())}
}

// prepareRename tells what would be given another name, or why nothing can.
func prepareRename(_ context.Context, _ *session, v *desk.View, p wire.PrepareRenameParams) (*wire.PrepareRenamePlaceholder, error) {
	doc, err := document(v, p.TextDocument)
	if err != nil {
		return nil, err
	}
	a := aroundOf(v, doc)
	n, err := outline.In(a).Renamable(a.own(), v.Offset(doc.File, p.Position))
	if err != nil {
		return nil, refused(err)
	}
	return &wire.PrepareRenamePlaceholder{Range: v.Range(doc.File, n.Inner), Placeholder: n.Text}, nil
}

// rename gives it, in every file around that means the same: in open ones as they stand in the editor.
func rename(_ context.Context, s *session, v *desk.View, p wire.RenameParams) (*wire.WorkspaceEdit, error) {
	doc, err := document(v, p.TextDocument)
	if err != nil {
		return nil, err
	}
	a := aroundOf(v, doc)
	edits, err := outline.In(a).Rename(a.own(), v.Offset(doc.File, p.Position), p.NewName, a.past)
	if err != nil {
		return nil, refused(err)
	}
	return s.workspaceEdit(a, edits), nil
}

// past tells whether git has the text that a record is pinned to.
func (a *around) past(file string, b *model.Batch) bool {
	dir := filepath.Join(a.root, filepath.FromSlash(path.Dir(file)))
	r := recall.Reader{Reader: a.view.Reader(dir), Root: dir, Below: func(f *source.File) string { return f.Name() }}
	return r.Found(b)
}

// workspaceEdit are edits of several files, which stand file by file, with the versions that they are of where the
// editor takes such.
func (s *session) workspaceEdit(a *around, edits []outline.Edit) *wire.WorkspaceEdit {
	out := &wire.WorkspaceEdit{}
	versions := s.can().Workspace.WorkspaceEdit.DocumentChanges
	for _, e := range edits {
		uri, edit := a.uri(e.Path), wire.TextEdit{Range: a.view.Range(e.Place.File, e.Place.Span), NewText: e.New}
		if !versions {
			if out.Changes == nil {
				out.Changes = map[string][]wire.TextEdit{}
			}
			out.Changes[uri] = append(out.Changes[uri], edit)
			continue
		}
		if n := len(out.DocumentChanges); n == 0 || out.DocumentChanges[n-1].TextDocument.URI != uri {
			out.DocumentChanges = append(out.DocumentChanges, wire.TextDocumentEdit{TextDocument: a.version(e.Path, uri)})
		}
		last := &out.DocumentChanges[len(out.DocumentChanges)-1]
		last.Edits = append(last.Edits, edit)
	}
	return out
}

// version names a file with its version, of one that is not open without.
func (a *around) version(at, uri string) wire.OptionalVersionedTextDocumentIdentifier {
	id := wire.OptionalVersionedTextDocumentIdentifier{URI: uri}
	if doc, err := a.file(at); err == nil && doc.Open {
		id.Version = &doc.Version
	}
	return id
}
