package wire

import "encoding/json"

// Diagnostic is a finding at a range.
type Diagnostic struct {
	Range              Range                          `json:"range"`
	Severity           uint32                         `json:"severity,omitempty"`
	Code               string                         `json:"code,omitempty"`
	CodeDescription    *CodeDescription               `json:"codeDescription,omitempty"`
	Source             string                         `json:"source,omitempty"`
	Message            string                         `json:"message"`
	Tags               []uint32                       `json:"tags,omitempty"`
	RelatedInformation []DiagnosticRelatedInformation `json:"relatedInformation,omitempty"`
	Data               json.RawMessage                `json:"data,omitempty"`
}

// Severities.
const (
	SeverityError       = 1
	SeverityWarning     = 2
	SeverityInformation = 3
	SeverityHint        = 4
)

// TagUnnecessary marks what has no effect; an editor fades it.
const TagUnnecessary = 1

// CodeDescription is where a code is told of.
type CodeDescription struct {
	Href string `json:"href"`
}

// DiagnosticRelatedInformation is another place that belongs to it.
type DiagnosticRelatedInformation struct {
	Location Location `json:"location"`
	Message  string   `json:"message"`
}

// PublishDiagnosticsParams are all findings of a document; the version is nil of one that is not open.
type PublishDiagnosticsParams struct {
	URI         string       `json:"uri"`
	Version     *int32       `json:"version,omitempty"`
	Diagnostics []Diagnostic `json:"diagnostics"`
}

// DocumentDiagnosticParams ask for the findings of a document.
type DocumentDiagnosticParams struct {
	TextDocument     TextDocumentIdentifier `json:"textDocument"`
	Identifier       string                 `json:"identifier,omitempty"`
	PreviousResultID string                 `json:"previousResultId,omitempty"`
}

// FullDocumentDiagnosticReport is the answer with all of them.
type FullDocumentDiagnosticReport struct {
	Kind     string       `json:"kind"` // full
	ResultID string       `json:"resultId,omitempty"`
	Items    []Diagnostic `json:"items"`
}

// UnchangedDocumentDiagnosticReport is the answer where they are as they were.
type UnchangedDocumentDiagnosticReport struct {
	Kind     string `json:"kind"` // unchanged
	ResultID string `json:"resultId"`
}
