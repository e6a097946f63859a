package wire

import "encoding/json"

// LogMessageParams are a line in the log of the editor.
type LogMessageParams struct {
	Type    uint32 `json:"type"`
	Message string `json:"message"`
}

// ShowMessageParams are a line that the editor shows.
type ShowMessageParams struct {
	Type    uint32 `json:"type"`
	Message string `json:"message"`
}

// Types of lines.
const (
	MessageError   = 1
	MessageWarning = 2
	MessageInfo    = 3
	MessageLog     = 4
)

// ShowDocumentParams ask the editor to open a document.
type ShowDocumentParams struct {
	URI       string `json:"uri"`
	External  bool   `json:"external,omitempty"`
	TakeFocus bool   `json:"takeFocus,omitempty"`
	Selection *Range `json:"selection,omitempty"`
}

// ApplyWorkspaceEditParams ask the editor to make edits.
type ApplyWorkspaceEditParams struct {
	Label string        `json:"label,omitempty"`
	Edit  WorkspaceEdit `json:"edit"`
}

// ExecuteCommandParams name a command, with what it is to be run on.
type ExecuteCommandParams struct {
	Command   string            `json:"command"`
	Arguments []json.RawMessage `json:"arguments,omitempty"`
}

// DidChangeConfigurationParams are settings.
type DidChangeConfigurationParams struct {
	Settings json.RawMessage `json:"settings"`
}

// ConfigurationItem names a part of the settings.
type ConfigurationItem struct {
	Section string `json:"section,omitempty"`
}

// ConfigurationParams ask for them.
type ConfigurationParams struct {
	Items []ConfigurationItem `json:"items"`
}

// CancelParams name a request that nobody waits for any more.
type CancelParams struct {
	ID ID `json:"id"`
}
