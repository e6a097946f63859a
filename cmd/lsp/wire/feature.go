package wire

import "encoding/json"

// DocumentSymbolParams ask what a document holds.
type DocumentSymbolParams struct {
	TextDocument TextDocumentIdentifier `json:"textDocument"`
}

// DocumentSymbol is a thing with a name, and what stands in it.
type DocumentSymbol struct {
	Name           string           `json:"name"`
	Detail         string           `json:"detail,omitempty"`
	Kind           uint32           `json:"kind"`
	Range          Range            `json:"range"`
	SelectionRange Range            `json:"selectionRange"`
	Children       []DocumentSymbol `json:"children,omitempty"`
}

// SymbolInformation is one without what stands in it, for clients that take no tree.
type SymbolInformation struct {
	Name          string   `json:"name"`
	Kind          uint32   `json:"kind"`
	ContainerName string   `json:"containerName,omitempty"`
	Location      Location `json:"location"`
}

// WorkspaceSymbolParams ask what all documents hold.
type WorkspaceSymbolParams struct {
	Query string `json:"query"`
}

// WorkspaceSymbol is a thing with a name in one of them.
type WorkspaceSymbol struct {
	Name          string   `json:"name"`
	Kind          uint32   `json:"kind"`
	ContainerName string   `json:"containerName,omitempty"`
	Location      Location `json:"location"`
}

// DefinitionParams ask where a name is defined.
type DefinitionParams struct {
	TextDocument TextDocumentIdentifier `json:"textDocument"`
	Position     Position               `json:"position"`
}

// ReferenceContext says whether the definition counts.
type ReferenceContext struct {
	IncludeDeclaration bool `json:"includeDeclaration"`
}

// ReferenceParams ask where a name stands.
type ReferenceParams struct {
	TextDocument TextDocumentIdentifier `json:"textDocument"`
	Position     Position               `json:"position"`
	Context      ReferenceContext       `json:"context"`
}

// DocumentHighlightParams ask the same of one document.
type DocumentHighlightParams struct {
	TextDocument TextDocumentIdentifier `json:"textDocument"`
	Position     Position               `json:"position"`
}

// DocumentHighlight is one place; the kind is 1 text, 2 read, 3 written.
type DocumentHighlight struct {
	Range Range  `json:"range"`
	Kind  uint32 `json:"kind,omitempty"`
}

// PrepareRenameParams ask what would be renamed.
type PrepareRenameParams struct {
	TextDocument TextDocumentIdentifier `json:"textDocument"`
	Position     Position               `json:"position"`
}

// PrepareRenamePlaceholder is the answer: where it stands, and what it is called.
type PrepareRenamePlaceholder struct {
	Range       Range  `json:"range"`
	Placeholder string `json:"placeholder"`
}

// RenameParams ask for it.
type RenameParams struct {
	TextDocument TextDocumentIdentifier `json:"textDocument"`
	Position     Position               `json:"position"`
	NewName      string                 `json:"newName"`
}

// FoldingRangeParams ask what can be folded.
type FoldingRangeParams struct {
	TextDocument TextDocumentIdentifier `json:"textDocument"`
}

// FoldingRange is from a line to a line.
type FoldingRange struct {
	StartLine      uint32  `json:"startLine"`
	StartCharacter *uint32 `json:"startCharacter,omitempty"`
	EndLine        uint32  `json:"endLine"`
	EndCharacter   *uint32 `json:"endCharacter,omitempty"`
	Kind           string  `json:"kind,omitempty"`
}

// SelectionRangeParams ask how a selection grows.
type SelectionRangeParams struct {
	TextDocument TextDocumentIdentifier `json:"textDocument"`
	Positions    []Position             `json:"positions"`
}

// SelectionRange is a range and what lies around it.
type SelectionRange struct {
	Range  Range           `json:"range"`
	Parent *SelectionRange `json:"parent,omitempty"`
}

// DocumentLinkParams ask what leads somewhere.
type DocumentLinkParams struct {
	TextDocument TextDocumentIdentifier `json:"textDocument"`
}

// DocumentLink leads somewhere.
type DocumentLink struct {
	Range   Range           `json:"range"`
	Target  string          `json:"target,omitempty"`
	Tooltip string          `json:"tooltip,omitempty"`
	Data    json.RawMessage `json:"data,omitempty"`
}

// SemanticTokensParams ask for the kinds of all words.
type SemanticTokensParams struct {
	TextDocument TextDocumentIdentifier `json:"textDocument"`
}

// SemanticTokensRangeParams ask for those in a range.
type SemanticTokensRangeParams struct {
	TextDocument TextDocumentIdentifier `json:"textDocument"`
	Range        Range                  `json:"range"`
}

// SemanticTokens are five numbers a word: lines and columns from the one before, length, kind, modifiers.
type SemanticTokens struct {
	ResultID string   `json:"resultId,omitempty"`
	Data     []uint32 `json:"data"`
}

// FormattingOptions say how wide an indent is; the layout has none to choose.
type FormattingOptions struct {
	TabSize      uint32 `json:"tabSize"`
	InsertSpaces bool   `json:"insertSpaces"`
}

// DocumentFormattingParams ask for the layout.
type DocumentFormattingParams struct {
	TextDocument TextDocumentIdentifier `json:"textDocument"`
	Options      FormattingOptions      `json:"options"`
}

// DocumentRangeFormattingParams ask for the layout of a range.
type DocumentRangeFormattingParams struct {
	TextDocument TextDocumentIdentifier `json:"textDocument"`
	Range        Range                  `json:"range"`
	Options      FormattingOptions      `json:"options"`
}

// DocumentOnTypeFormattingParams ask for that of a line in which a sign was typed.
type DocumentOnTypeFormattingParams struct {
	TextDocument TextDocumentIdentifier `json:"textDocument"`
	Position     Position               `json:"position"`
	Ch           string                 `json:"ch"`
	Options      FormattingOptions      `json:"options"`
}
