package wire

import "encoding/json"

// InlayHintParams ask for the hints in a range.
type InlayHintParams struct {
	TextDocument TextDocumentIdentifier `json:"textDocument"`
	Range        Range                  `json:"range"`
}

// InlayHint is a text that is shown at a position and is not of the document.
type InlayHint struct {
	Position     Position        `json:"position"`
	Label        string          `json:"label"`
	Kind         uint32          `json:"kind,omitempty"`
	TextEdits    []TextEdit      `json:"textEdits,omitempty"`
	Tooltip      *MarkupContent  `json:"tooltip,omitempty"`
	PaddingLeft  bool            `json:"paddingLeft,omitempty"`
	PaddingRight bool            `json:"paddingRight,omitempty"`
	Data         json.RawMessage `json:"data,omitempty"`
}

// CodeLensParams ask for the lenses of a document.
type CodeLensParams struct {
	TextDocument TextDocumentIdentifier `json:"textDocument"`
}

// CodeLens is a line above a range.
type CodeLens struct {
	Range   Range           `json:"range"`
	Command *Command        `json:"command,omitempty"`
	Data    json.RawMessage `json:"data,omitempty"`
}

// CodeActionParams ask what can be done about a range.
type CodeActionParams struct {
	TextDocument TextDocumentIdentifier `json:"textDocument"`
	Range        Range                  `json:"range"`
	Context      CodeActionContext      `json:"context"`
}

// CodeActionContext holds the findings there, and the kinds that are asked for.
type CodeActionContext struct {
	Diagnostics []Diagnostic `json:"diagnostics"`
	Only        []string     `json:"only,omitempty"`
	TriggerKind uint32       `json:"triggerKind,omitempty"`
}

// CodeAction is something that can be done.
type CodeAction struct {
	Title       string              `json:"title"`
	Kind        string              `json:"kind,omitempty"`
	Diagnostics []Diagnostic        `json:"diagnostics,omitempty"`
	IsPreferred bool                `json:"isPreferred,omitempty"`
	Disabled    *CodeActionDisabled `json:"disabled,omitempty"`
	Edit        *WorkspaceEdit      `json:"edit,omitempty"`
	Command     *Command            `json:"command,omitempty"`
	Data        json.RawMessage     `json:"data,omitempty"`
}

// CodeActionDisabled says why it cannot.
type CodeActionDisabled struct {
	Reason string `json:"reason"`
}

// Kinds of actions.
const (
	ActionQuickFix = "quickfix"
	ActionRefactor = "refactor"
	ActionRewrite  = "refactor.rewrite"
	ActionSource   = "source"
	ActionFixAll   = "source.fixAll"
)
