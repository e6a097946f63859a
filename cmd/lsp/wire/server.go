package wire

// ServerCapabilities are what the server does. Each is set where its handler stands.
type ServerCapabilities struct {
	PositionEncoding           string                           `json:"positionEncoding,omitempty"`
	TextDocumentSync           *TextDocumentSyncOptions         `json:"textDocumentSync,omitempty"`
	CompletionProvider         *CompletionOptions               `json:"completionProvider,omitempty"`
	HoverProvider              bool                             `json:"hoverProvider,omitempty"`
	DefinitionProvider         bool                             `json:"definitionProvider,omitempty"`
	ReferencesProvider         bool                             `json:"referencesProvider,omitempty"`
	DocumentHighlightProvider  bool                             `json:"documentHighlightProvider,omitempty"`
	DocumentSymbolProvider     bool                             `json:"documentSymbolProvider,omitempty"`
	WorkspaceSymbolProvider    bool                             `json:"workspaceSymbolProvider,omitempty"`
	CodeActionProvider         *CodeActionOptions               `json:"codeActionProvider,omitempty"`
	CodeLensProvider           *CodeLensOptions                 `json:"codeLensProvider,omitempty"`
	DocumentLinkProvider       *DocumentLinkOptions             `json:"documentLinkProvider,omitempty"`
	DocumentFormattingProvider bool                             `json:"documentFormattingProvider,omitempty"`
	RangeFormattingProvider    bool                             `json:"documentRangeFormattingProvider,omitempty"`
	OnTypeFormattingProvider   *DocumentOnTypeFormattingOptions `json:"documentOnTypeFormattingProvider,omitempty"`
	RenameProvider             *RenameOptions                   `json:"renameProvider,omitempty"`
	FoldingRangeProvider       bool                             `json:"foldingRangeProvider,omitempty"`
	SelectionRangeProvider     bool                             `json:"selectionRangeProvider,omitempty"`
	ExecuteCommandProvider     *ExecuteCommandOptions           `json:"executeCommandProvider,omitempty"`
	SemanticTokensProvider     *SemanticTokensOptions           `json:"semanticTokensProvider,omitempty"`
	InlayHintProvider          *InlayHintOptions                `json:"inlayHintProvider,omitempty"`
	DiagnosticProvider         *DiagnosticOptions               `json:"diagnosticProvider,omitempty"`
	Workspace                  *WorkspaceOptions                `json:"workspace,omitempty"`
}

// TextDocumentSyncOptions say what the server wants to hear of a document.
type TextDocumentSyncOptions struct {
	OpenClose         bool         `json:"openClose,omitempty"`
	Change            uint32       `json:"change,omitempty"`
	WillSave          bool         `json:"willSave,omitempty"`
	WillSaveWaitUntil bool         `json:"willSaveWaitUntil,omitempty"`
	Save              *SaveOptions `json:"save,omitempty"`
}

// SyncIncremental asks for changes by their ranges.
const SyncIncremental = 2

// SaveOptions say whether the text is to come with the news that it was saved.
type SaveOptions struct {
	IncludeText bool `json:"includeText,omitempty"`
}

// WorkspaceOptions are those of folders.
type WorkspaceOptions struct {
	WorkspaceFolders *WorkspaceFoldersServerCapabilities `json:"workspaceFolders,omitempty"`
}

// WorkspaceFoldersServerCapabilities say that several folders are served.
type WorkspaceFoldersServerCapabilities struct {
	Supported           bool `json:"supported,omitempty"`
	ChangeNotifications bool `json:"changeNotifications,omitempty"`
}

// DiagnosticOptions say that findings can be asked for.
type DiagnosticOptions struct {
	Identifier            string `json:"identifier,omitempty"`
	InterFileDependencies bool   `json:"interFileDependencies"`
	WorkspaceDiagnostics  bool   `json:"workspaceDiagnostics"`
}

// CompletionOptions say which signs ask for completions.
type CompletionOptions struct {
	TriggerCharacters []string `json:"triggerCharacters,omitempty"`
	ResolveProvider   bool     `json:"resolveProvider,omitempty"`
}

// CodeActionOptions list the kinds of actions.
type CodeActionOptions struct {
	CodeActionKinds []string `json:"codeActionKinds,omitempty"`
	ResolveProvider bool     `json:"resolveProvider,omitempty"`
}

// CodeLensOptions say whether lenses are filled in later.
type CodeLensOptions struct {
	ResolveProvider bool `json:"resolveProvider,omitempty"`
}

// DocumentLinkOptions say the same of links.
type DocumentLinkOptions struct {
	ResolveProvider bool `json:"resolveProvider,omitempty"`
}

// RenameOptions say that it can be asked first what would be renamed.
type RenameOptions struct {
	PrepareProvider bool `json:"prepareProvider,omitempty"`
}

// DocumentOnTypeFormattingOptions say behind which signs the layout of a line is asked for.
type DocumentOnTypeFormattingOptions struct {
	FirstTriggerCharacter string   `json:"firstTriggerCharacter"`
	MoreTriggerCharacter  []string `json:"moreTriggerCharacter,omitempty"`
}

// ExecuteCommandOptions list the commands.
type ExecuteCommandOptions struct {
	Commands []string `json:"commands"`
}

// InlayHintOptions say whether hints are filled in later.
type InlayHintOptions struct {
	ResolveProvider bool `json:"resolveProvider,omitempty"`
}

// SemanticTokensOptions are the kinds of words, and how they are asked for.
type SemanticTokensOptions struct {
	Legend SemanticTokensLegend `json:"legend"`
	Range  bool                 `json:"range,omitempty"`
	Full   bool                 `json:"full,omitempty"`
}

// SemanticTokensLegend names the kinds that numbers stand for.
type SemanticTokensLegend struct {
	TokenTypes     []string `json:"tokenTypes"`
	TokenModifiers []string `json:"tokenModifiers"`
}
