package lsp

import (
	"slices"
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

// needless are the rules whose findings are about what has no effect; an editor fades that.
var needless = []string{"unused-definition", "accept-unused", "air-does-nothing", "guard-of-nothing", "over-without-rise", "box-line-idle"}

// diagnostics are the findings of a document as an editor takes them. What is found in a file that it
// uses stands at the line by which it does.
func (s *session) diagnostics(view *desk.View, doc *desk.Doc, found []finding.Finding) []wire.Diagnostic {
	list := make([]wire.Diagnostic, 0, len(found))
	for _, f := range found {
		if f.Place.Known() && f.Place.File.Name() != doc.File.Name() {
			continue
		}
		place := f.Place
		if !place.Known() {
			place.Span = doc.File.FirstLine()
		}
		d := s.diagnosticOf(view, f)
		d.Range = view.Range(doc.File, place.Span)
		if slices.Contains(needless, f.Rule) {
			d.Tags = []uint32{wire.TagUnnecessary}
		}
		list = append(list, d)
	}
	return append(list, s.elsewhere(view, doc, found)...)
}

func (s *session) diagnosticOf(view *desk.View, f finding.Finding) wire.Diagnostic {
	d := wire.Diagnostic{Severity: severities[f.Severity], Code: f.Rule, Source: "maltwright", Message: message(f)}
	if page := s.pages.of(f.Rule); page != "" {
		d.CodeDescription = &wire.CodeDescription{Href: page}
	}
	for _, r := range f.Related {
		if r.Place.Known() {
			d.RelatedInformation = append(d.RelatedInformation, wire.DiagnosticRelatedInformation{Location: view.Location(r.Place), Message: words.Safe(r.Message)})
		}
	}
	if s.can().TextDocument.PublishDiagnostics.DataSupport {
		d.Data = repairData(view, f)
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

// repair is a repair of a finding, as it goes along with it.
type repair struct {
	Says    string             `json:"says"`
	Certain bool               `json:"certain"` // else only the writer knows whether it is meant
	Edit    wire.WorkspaceEdit `json:"edit"`
}

// repairData are the repairs of a finding; nil where it has none.
func repairData(view *desk.View, f finding.Finding) []byte {
	var list []repair
	if len(f.Fixes) > 0 {
		list = append(list, repair{words.Safe(f.Hint), true, edited(view, f.Fixes)})
	}
	for _, o := range f.Offers {
		list = append(list, repair{"write " + words.Safe(o.Says), false, edited(view, o.Edits)})
	}
	if list == nil {
		return nil
	}
	data, err := wire.Encode(map[string]any{"repairs": list})
	if err != nil {
		return nil
	}
	return data
}

// edited are edits of a finding as an editor makes them.
func edited(view *desk.View, edits []finding.Edit) wire.WorkspaceEdit {
	changes := map[string][]wire.TextEdit{}
	for _, e := range edits {
		if e.Place.Known() {
			uri := view.URIOf(e.Place.File)
			changes[uri] = append(changes[uri], wire.TextEdit{Range: view.Range(e.Place.File, e.Place.Span), NewText: e.New})
		}
	}
	return wire.WorkspaceEdit{Changes: changes}
}

// inFile tells whether a finding is about a file, by its name.
func inFile(f finding.Finding, file *source.File) bool {
	return f.Place.Known() && f.Place.File.Name() == file.Name()
}
