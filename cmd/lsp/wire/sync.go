package wire

// TextDocumentItem is a document as it is opened.
type TextDocumentItem struct {
	URI        string `json:"uri"`
	LanguageID string `json:"languageId"`
	Version    int32  `json:"version"`
	Text       string `json:"text"`
}

// DidOpenTextDocumentParams say that a document is open.
type DidOpenTextDocumentParams struct {
	TextDocument TextDocumentItem `json:"textDocument"`
}

// DidChangeTextDocumentParams say how it has changed, one change after the other.
type DidChangeTextDocumentParams struct {
	TextDocument   VersionedTextDocumentIdentifier  `json:"textDocument"`
	ContentChanges []TextDocumentContentChangeEvent `json:"contentChanges"`
}

// TextDocumentContentChangeEvent replaces a range, or without one the whole text.
type TextDocumentContentChangeEvent struct {
	Range *Range `json:"range,omitempty"`
	Text  string `json:"text"`
}

// DidCloseTextDocumentParams say that a document is no longer open.
type DidCloseTextDocumentParams struct {
	TextDocument TextDocumentIdentifier `json:"textDocument"`
}

// DidSaveTextDocumentParams say that it was written.
type DidSaveTextDocumentParams struct {
	TextDocument TextDocumentIdentifier `json:"textDocument"`
	Text         *string                `json:"text,omitempty"`
}

// WillSaveTextDocumentParams say that it is about to be written.
type WillSaveTextDocumentParams struct {
	TextDocument TextDocumentIdentifier `json:"textDocument"`
	Reason       uint32                 `json:"reason"`
}

// WorkspaceFolder is a folder that is open in the editor.
type WorkspaceFolder struct {
	URI  string `json:"uri"`
	Name string `json:"name"`
}

// WorkspaceFoldersChangeEvent says which folders have come and gone.
type WorkspaceFoldersChangeEvent struct {
	Added   []WorkspaceFolder `json:"added"`
	Removed []WorkspaceFolder `json:"removed"`
}

// DidChangeWorkspaceFoldersParams carry it.
type DidChangeWorkspaceFoldersParams struct {
	Event WorkspaceFoldersChangeEvent `json:"event"`
}

// FileEvent is a file that has come, changed or gone.
type FileEvent struct {
	URI  string `json:"uri"`
	Type uint32 `json:"type"`
}

// DidChangeWatchedFilesParams list them.
type DidChangeWatchedFilesParams struct {
	Changes []FileEvent `json:"changes"`
}

// FileSystemWatcher names files to be watched, by a pattern.
type FileSystemWatcher struct {
	GlobPattern string `json:"globPattern"`
}

// DidChangeWatchedFilesRegistrationOptions say what is to be watched.
type DidChangeWatchedFilesRegistrationOptions struct {
	Watchers []FileSystemWatcher `json:"watchers"`
}

// Registration asks for notifications of a method.
type Registration struct {
	ID              string `json:"id"`
	Method          string `json:"method"`
	RegisterOptions any    `json:"registerOptions,omitempty"`
}

// RegistrationParams list what is asked for.
type RegistrationParams struct {
	Registrations []Registration `json:"registrations"`
}
