package wire

import "encoding/json"

// InitializeParams are what a client says of itself.
type InitializeParams struct {
	ProcessID             *int32             `json:"processId"`
	ClientInfo            *ClientInfo        `json:"clientInfo,omitempty"`
	RootPath              *string            `json:"rootPath,omitempty"`
	RootURI               *string            `json:"rootUri"`
	InitializationOptions json.RawMessage    `json:"initializationOptions,omitempty"`
	Capabilities          ClientCapabilities `json:"capabilities"`
	WorkspaceFolders      []WorkspaceFolder  `json:"workspaceFolders,omitempty"`
}

// ClientInfo is the name of a client.
type ClientInfo struct {
	Name    string `json:"name"`
	Version string `json:"version,omitempty"`
}

// InitializeResult is what the server says of itself.
type InitializeResult struct {
	Capabilities ServerCapabilities `json:"capabilities"`
	ServerInfo   *ServerInfo        `json:"serverInfo,omitempty"`
}

// ServerInfo is the name of the server.
type ServerInfo struct {
	Name    string `json:"name"`
	Version string `json:"version,omitempty"`
}

// ClientCapabilities are what a client can do, as far as it is asked here.
type ClientCapabilities struct {
	Workspace    WorkspaceClientCapabilities    `json:"workspace,omitzero"`
	TextDocument TextDocumentClientCapabilities `json:"textDocument,omitzero"`
	Window       WindowClientCapabilities       `json:"window,omitzero"`
	General      GeneralClientCapabilities      `json:"general,omitzero"`
}

// GeneralClientCapabilities hold the encodings of columns that it counts in.
type GeneralClientCapabilities struct {
	PositionEncodings []string `json:"positionEncodings,omitempty"`
}

// WindowClientCapabilities are those of its window.
type WindowClientCapabilities struct {
	ShowDocument *ShowDocumentClientCapabilities `json:"showDocument,omitempty"`
}

// ShowDocumentClientCapabilities say whether it opens a document that the server names.
type ShowDocumentClientCapabilities struct {
	Support bool `json:"support"`
}

// WorkspaceClientCapabilities are those of its folders.
type WorkspaceClientCapabilities struct {
	ApplyEdit             bool                                    `json:"applyEdit,omitempty"`
	WorkspaceEdit         WorkspaceEditClientCapabilities         `json:"workspaceEdit,omitzero"`
	WorkspaceFolders      bool                                    `json:"workspaceFolders,omitempty"`
	Configuration         bool                                    `json:"configuration,omitempty"`
	DidChangeWatchedFiles DidChangeWatchedFilesClientCapabilities `json:"didChangeWatchedFiles,omitzero"`
	InlayHint             InlayHintWorkspaceClientCapabilities    `json:"inlayHint,omitzero"`
	CodeLens              CodeLensWorkspaceClientCapabilities     `json:"codeLens,omitzero"`
	Diagnostics           DiagnosticWorkspaceClientCapabilities   `json:"diagnostics,omitzero"`
}

// WorkspaceEditClientCapabilities say whether edits may have versions.
type WorkspaceEditClientCapabilities struct {
	DocumentChanges bool `json:"documentChanges,omitempty"`
}

// DidChangeWatchedFilesClientCapabilities say whether it watches files that the server names.
type DidChangeWatchedFilesClientCapabilities struct {
	DynamicRegistration bool `json:"dynamicRegistration,omitempty"`
}

// InlayHintWorkspaceClientCapabilities say whether it asks for hints again when told to.
type InlayHintWorkspaceClientCapabilities struct {
	RefreshSupport bool `json:"refreshSupport,omitempty"`
}

// CodeLensWorkspaceClientCapabilities say the same of lenses.
type CodeLensWorkspaceClientCapabilities struct {
	RefreshSupport bool `json:"refreshSupport,omitempty"`
}

// DiagnosticWorkspaceClientCapabilities say the same of findings that are asked for.
type DiagnosticWorkspaceClientCapabilities struct {
	RefreshSupport bool `json:"refreshSupport,omitempty"`
}

// TextDocumentClientCapabilities are those of an open document.
type TextDocumentClientCapabilities struct {
	Synchronization    TextDocumentSyncClientCapabilities   `json:"synchronization,omitzero"`
	PublishDiagnostics PublishDiagnosticsClientCapabilities `json:"publishDiagnostics,omitzero"`
	Diagnostic         *DiagnosticClientCapabilities        `json:"diagnostic,omitempty"`
	Completion         CompletionClientCapabilities         `json:"completion,omitzero"`
	Hover              HoverClientCapabilities              `json:"hover,omitzero"`
	DocumentSymbol     DocumentSymbolClientCapabilities     `json:"documentSymbol,omitzero"`
	Definition         DefinitionClientCapabilities         `json:"definition,omitzero"`
	CodeAction         CodeActionClientCapabilities         `json:"codeAction,omitzero"`
	Rename             RenameClientCapabilities             `json:"rename,omitzero"`
	FoldingRange       FoldingRangeClientCapabilities       `json:"foldingRange,omitzero"`
}

// TextDocumentSyncClientCapabilities say what it tells of saving.
type TextDocumentSyncClientCapabilities struct {
	WillSave          bool `json:"willSave,omitempty"`
	WillSaveWaitUntil bool `json:"willSaveWaitUntil,omitempty"`
	DidSave           bool `json:"didSave,omitempty"`
}

// DiagnosticClientCapabilities are there where it asks for findings.
type DiagnosticClientCapabilities struct {
	DynamicRegistration    bool `json:"dynamicRegistration,omitempty"`
	RelatedDocumentSupport bool `json:"relatedDocumentSupport,omitempty"`
}

// PublishDiagnosticsClientCapabilities say what of a finding it shows.
type PublishDiagnosticsClientCapabilities struct {
	RelatedInformation     bool                  `json:"relatedInformation,omitempty"`
	TagSupport             *ClientDiagnosticTags `json:"tagSupport,omitempty"`
	VersionSupport         bool                  `json:"versionSupport,omitempty"`
	CodeDescriptionSupport bool                  `json:"codeDescriptionSupport,omitempty"`
	DataSupport            bool                  `json:"dataSupport,omitempty"`
}

// ClientDiagnosticTags are the tags that it shows.
type ClientDiagnosticTags struct {
	ValueSet []uint32 `json:"valueSet"`
}

// CompletionClientCapabilities say what it does with completions.
type CompletionClientCapabilities struct {
	CompletionItem ClientCompletionItemOptions `json:"completionItem,omitzero"`
	ContextSupport bool                        `json:"contextSupport,omitempty"`
}

// ClientCompletionItemOptions say what an item may have.
type ClientCompletionItemOptions struct {
	SnippetSupport        bool                                       `json:"snippetSupport,omitempty"`
	InsertTextModeSupport *ClientCompletionItemInsertTextModeOptions `json:"insertTextModeSupport,omitempty"`
	DocumentationFormat   []string                                   `json:"documentationFormat,omitempty"`
	InsertReplaceSupport  bool                                       `json:"insertReplaceSupport,omitempty"`
	LabelDetailsSupport   bool                                       `json:"labelDetailsSupport,omitempty"`
}

// ClientCompletionItemInsertTextModeOptions list the ways in which it puts in a text of several lines.
type ClientCompletionItemInsertTextModeOptions struct {
	ValueSet []uint32 `json:"valueSet"`
}

// HoverClientCapabilities say in which forms it shows a hover.
type HoverClientCapabilities struct {
	ContentFormat []string `json:"contentFormat,omitempty"`
}

// DocumentSymbolClientCapabilities say whether symbols may stand in one another.
type DocumentSymbolClientCapabilities struct {
	HierarchicalDocumentSymbolSupport bool `json:"hierarchicalDocumentSymbolSupport,omitempty"`
}

// DefinitionClientCapabilities say whether it takes links.
type DefinitionClientCapabilities struct {
	LinkSupport bool `json:"linkSupport,omitempty"`
}

// CodeActionClientCapabilities say whether actions may be more than commands.
type CodeActionClientCapabilities struct {
	CodeActionLiteralSupport *ClientCodeActionLiteralOptions `json:"codeActionLiteralSupport,omitempty"`
	IsPreferredSupport       bool                            `json:"isPreferredSupport,omitempty"`
	DisabledSupport          bool                            `json:"disabledSupport,omitempty"`
	DataSupport              bool                            `json:"dataSupport,omitempty"`
	ResolveSupport           *ClientCodeActionResolveOptions `json:"resolveSupport,omitempty"`
}

// ClientCodeActionResolveOptions name what of an action may be filled in later.
type ClientCodeActionResolveOptions struct {
	Properties []string `json:"properties"`
}

// ClientCodeActionLiteralOptions hold the kinds of actions that it knows.
type ClientCodeActionLiteralOptions struct {
	CodeActionKind ClientCodeActionKindOptions `json:"codeActionKind"`
}

// ClientCodeActionKindOptions list them.
type ClientCodeActionKindOptions struct {
	ValueSet []string `json:"valueSet"`
}

// RenameClientCapabilities say whether it asks first what would be renamed.
type RenameClientCapabilities struct {
	PrepareSupport bool `json:"prepareSupport,omitempty"`
}

// FoldingRangeClientCapabilities say how it folds.
type FoldingRangeClientCapabilities struct {
	RangeLimit      uint32 `json:"rangeLimit,omitempty"`
	LineFoldingOnly bool   `json:"lineFoldingOnly,omitempty"`
}
