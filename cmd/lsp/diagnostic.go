package lsp

import (
	"context"
	"reflect"
	"strconv"
	"strings"

	"maltwright/cmd/lsp/desk"
	"maltwright/cmd/lsp/wire"
	"maltwright/cmd/words"
	"maltwright/lang/finding"
	"maltwright/lang/source"
)

// severities of findings, as an editor has them. Danger and fault are errors, and say their own words.
var severities = map[finding.Severity]uint32{
	finding.Danger: wire.SeverityError, finding.Fault: wire.SeverityError,
	finding.Caution: wire.SeverityWarning, finding.Note: wire.SeverityInformation,
}

// diagnostics are findings as an editor takes them.
func diagnostics(view *desk.View, doc *desk.Doc, found []finding.Finding) []wire.Diagnostic {
	list := make([]wire.Diagnostic, 0, len(found))
	for _, f := range found {
		list = append(list, diagnosticOf(view, doc, f))
	}
	return list
}

func diagnosticOf(view *desk.View, doc *desk.Doc, f finding.Finding) wire.Diagnostic {
	d := wire.Diagnostic{Severity: severities[f.Severity], Code: f.Rule, Source: "maltwright", Message: message(f)}
	place := source.Place{File: doc.File, Span: doc.File.FirstLine()}
	if f.Place.Known() && f.Place.File.Name() == doc.File.Name() {
		place.Span = f.Place.Span
	}
	d.Range = view.Range(doc.File, place.Span)
	for _, r := range f.Related {
		if r.Place.Known() {
			d.RelatedInformation = append(d.RelatedInformation, wire.DiagnosticRelatedInformation{Location: view.Location(r.Place), Message: words.Safe(r.Message)})
		}
	}
	return d
}

// message is what a finding says, why, and what to do, a line each. A danger says that it is one.
func message(f finding.Finding) string {
	lines := []string{words.Safe(f.Message)}
	if f.Severity == finding.Danger {
		lines[0] = "danger: " + lines[0]
	}
	if f.Why != "" {
		lines = append(lines, "why: "+words.Safe(f.Why))
	}
	if f.Hint != "" {
		lines = append(lines, "do: "+words.Safe(f.Hint))
	}
	return strings.Join(lines, "\n")
}

func equal(a, b []wire.Diagnostic) bool { return reflect.DeepEqual(a, b) }

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
	s.judge.words(v, doc)
	list, id := s.judge.shown(v, doc)
	if id != "" && id == p.PreviousResultID {
		return wire.UnchangedDocumentDiagnosticReport{Kind: "unchanged", ResultID: id}, nil
	}
	return wire.FullDocumentDiagnosticReport{Kind: "full", ResultID: id, Items: list}, nil
}

// shown are the findings of a document as they were told last, with a name for them.
func (j *judge) shown(view *desk.View, doc *desk.Doc) ([]wire.Diagnostic, string) {
	j.mu.Lock()
	defer j.mu.Unlock()
	if is := j.docs[doc.Path]; is != nil && is.shown != nil {
		return is.shown, strconv.Itoa(is.resultID)
	}
	return []wire.Diagnostic{}, ""
}

// refresh has the editor ask again for what it has asked for and what may be otherwise now.
func (s *session) refresh() {
	c := s.can().Workspace
	for method, can := range map[string]bool{
		"workspace/inlayHint/refresh": c.InlayHint.RefreshSupport, "workspace/codeLens/refresh": c.CodeLens.RefreshSupport, "workspace/diagnostic/refresh": s.pulls(),
	} {
		if can {
			s.work.Go(func() { _ = s.ask(s.ctx, method, nil, nil) })
		}
	}
}

// found are the findings of an open document as the editor was told them last.
func (s *session) found(doc *desk.Doc) []finding.Finding {
	s.judge.mu.Lock()
	defer s.judge.mu.Unlock()
	if is := s.judge.docs[doc.Path]; is != nil && is.words != nil {
		return is.now(doc)
	}
	return nil
}
