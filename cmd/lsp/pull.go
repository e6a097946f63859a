package lsp

import (
	"context"
	"strconv"

	"maltwright/cmd/lsp/desk"
	"maltwright/cmd/lsp/wire"
)

// pulls tells whether the editor asks for findings, and asks again when it is told to; they are not
// pushed then.
func (s *session) pulls() bool {
	c := s.can()
	return c.TextDocument.Diagnostic != nil && c.Workspace.Diagnostics.RefreshSupport
}

// diagnostic answers with the findings of a document: of its words as they are, and of the forecast as
// far as it is known. When there is more the editor is told to ask again.
func diagnostic(_ context.Context, s *session, v *desk.View, p wire.DocumentDiagnosticParams) (any, error) {
	doc, err := v.At(p.TextDocument.URI)
	if err != nil {
		return nil, &wire.Error{Code: wire.RequestFailed, Message: p.TextDocument.URI + " cannot be read: " + err.Error()}
	}
	if !doc.Open {
		checked, err := v.Checked(doc.Path)
		if err != nil {
			return nil, err
		}
		return wire.FullDocumentDiagnosticReport{Kind: "full", Items: s.diagnostics(v, doc, checked.Findings)}, nil
	}
	s.judge.words(v, doc)
	list, id := s.judge.shown(doc)
	if id != "" && id == p.PreviousResultID {
		return wire.UnchangedDocumentDiagnosticReport{Kind: "unchanged", ResultID: id}, nil
	}
	return wire.FullDocumentDiagnosticReport{Kind: "full", ResultID: id, Items: list}, nil
}

// shown are the findings of an open document as they were told last, with a name for them.
func (j *judge) shown(doc *desk.Doc) ([]wire.Diagnostic, string) {
	j.mu.Lock()
	defer j.mu.Unlock()
	if is := j.docs[doc.Path]; is != nil && is.shown != nil {
		return is.shown, strconv.Itoa(is.resultID)
	}
	return []wire.Diagnostic{}, ""
}
