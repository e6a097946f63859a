package lsp

import (
	"encoding/json"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/cmd/lsp/wire"
)

// An editor that says of nothing that it can do it, that has no folder open and sends the whole text with each keystroke,
// is served in the plainest form of each answer.
func TestAnEditorThatCanDoNothingIsServed(t *testing.T) {
	c := typingAs(t, func(p *wire.InitializeParams) { *p = wire.InitializeParams{} }, "pale.malt", example(t, "pale.malt"), "loft.malt", example(t, "loft.malt"))
	assert.Equal(t, "utf-16", c.Server.Capabilities.PositionEncoding)
	assert.Nil(t, c.Server.Capabilities.DiagnosticProvider)
	c.Open("pale.malt")
	assert.Empty(t, c.Found("pale.malt"), "what it uses lies beside it")
	slip := "# °🌾\n" + example(t, "pale.malt")
	c.Change("pale.malt", slip, wire.TextDocumentContentChangeEvent{Text: slip})
	c.Type("pale.malt", "until moisture at most 35 %", "until moistur at most 35 %")
	found := c.Has("pale.malt", "unknown-word")
	assert.Equal(t, "moistur", c.Words("pale.malt", found.Range))
	assert.Empty(t, found.Data)

	list := actions(c, "pale.malt", "moistur at")
	require.NotEmpty(t, list)
	require.NotNil(t, list[0].Edit)
	assert.Empty(t, list[0].Edit.DocumentChanges)
	require.Len(t, list[0].Edit.Changes[c.URI("pale.malt")], 1)
	c.Make("pale.malt", list[0].Edit.Changes[c.URI("pale.malt")])
	assert.Empty(t, c.Found("pale.malt"))
	assert.NotEmpty(t, hints(c, "pale.malt"))

	var hover wire.Hover
	c.Ask("textDocument/hover", c.At("pale.malt", "soak"), &hover)
	assert.Equal(t, wire.PlainText, hover.Contents.Kind)
	assert.NotContains(t, hover.Contents.Value, "**")
	var symbols []wire.SymbolInformation
	c.Ask("textDocument/documentSymbol", map[string]any{"textDocument": c.Document("pale.malt")}, &symbols)
	require.NotEmpty(t, symbols)
	assert.Equal(t, c.URI("pale.malt"), symbols[0].Location.URI)
	var at []wire.Location
	c.Ask("textDocument/definition", c.At("pale.malt", `blue tub`), &at)
	require.Len(t, at, 1)
	assert.Equal(t, c.URI("loft.malt"), at[0].URI)
	var offered wire.CompletionList
	c.Ask("textDocument/completion", c.Behind("pale.malt", "steep in"), &offered)
	for _, it := range offered.Items {
		assert.Zero(t, it.InsertTextFormat, it.Label)
		assert.NotContains(t, it.TextEdit.NewText, "$0", it.Label)
	}
	var edit wire.WorkspaceEdit
	place := c.At("pale.malt", `blue tub`)
	c.Ask("textDocument/rename", wire.RenameParams{TextDocument: place.TextDocument, Position: place.Position, NewName: "vat"}, &edit)
	assert.Empty(t, edit.DocumentChanges)
	assert.Len(t, edit.Changes, 2)
	for _, method := range requests { // whatever it asks, nothing breaks
		if err := c.Try(method, map[string]any{"textDocument": c.Document("pale.malt")}, nil); err != nil {
			assert.NotEqual(t, wire.InternalError, code(t, err), method)
		}
	}
	var due []wire.Due
	require.NoError(t, json.Unmarshal(c.Wait(c.Send("maltwright/due", struct{}{})).Result, &due))
	assert.Empty(t, due)
	c.Ask("shutdown", nil, nil)
	c.Tell("exit", nil)
	assert.Equal(t, ExitClean, c.Code())
}
