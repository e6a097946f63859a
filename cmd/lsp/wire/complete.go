package wire

import "encoding/json"

// CompletionParams ask what may stand at a position.
type CompletionParams struct {
	TextDocument TextDocumentIdentifier `json:"textDocument"`
	Position     Position               `json:"position"`
	Context      *CompletionContext     `json:"context,omitempty"`
}

// CompletionContext says what led to the question: 1 asked, 2 a sign was typed, 3 asked again.
type CompletionContext struct {
	TriggerKind      uint32 `json:"triggerKind"`
	TriggerCharacter string `json:"triggerCharacter,omitempty"`
}

// CompletionList are the items.
type CompletionList struct {
	IsIncomplete bool             `json:"isIncomplete"`
	Items        []CompletionItem `json:"items"`
}

// CompletionItem is one of them.
type CompletionItem struct {
	Label            string                      `json:"label"`
	LabelDetails     *CompletionItemLabelDetails `json:"labelDetails,omitempty"`
	Kind             uint32                      `json:"kind,omitempty"`
	Detail           string                      `json:"detail,omitempty"`
	Documentation    *MarkupContent              `json:"documentation,omitempty"`
	Preselect        bool                        `json:"preselect,omitempty"`
	SortText         string                      `json:"sortText,omitempty"`
	FilterText       string                      `json:"filterText,omitempty"`
	InsertText       string                      `json:"insertText,omitempty"`
	InsertTextFormat uint32                      `json:"insertTextFormat,omitempty"`
	InsertTextMode   uint32                      `json:"insertTextMode,omitempty"`
	TextEdit         *TextEdit                   `json:"textEdit,omitempty"`
	AdditionalEdits  []TextEdit                  `json:"additionalTextEdits,omitempty"`
	Command          *Command                    `json:"command,omitempty"`
	Data             json.RawMessage             `json:"data,omitempty"`
}

// CompletionItemLabelDetails stand beside the label.
type CompletionItemLabelDetails struct {
	Detail      string `json:"detail,omitempty"`
	Description string `json:"description,omitempty"`
}

// Forms of a text that is put in.
const (
	InsertPlain   = 1
	InsertSnippet = 2
)

// InsertAsIs puts a text in as it is, with the indents that it has.
const InsertAsIs = 1

// Kinds of items, by which an editor draws them.
const (
	ItemUnit       = 11
	ItemValue      = 12
	ItemKeyword    = 14
	ItemSnippet    = 15
	ItemReference  = 18
	ItemEnumMember = 20
	ItemOperator   = 24
)

// HoverParams ask what a word means.
type HoverParams struct {
	TextDocument TextDocumentIdentifier `json:"textDocument"`
	Position     Position               `json:"position"`
}

// Hover is the answer.
type Hover struct {
	Contents MarkupContent `json:"contents"`
	Range    *Range        `json:"range,omitempty"`
}
