package lsp

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"maltwright/cmd/lsp/wire"
)

func TestFindingsComeAsOneTypes(t *testing.T) {
	c := loft(t)
	assert.Empty(t, c.Found("pale.malt"))
	c.Type("pale.malt", "soak 7 h", "soka 7 h")
	assert.NotEmpty(t, c.Rules("pale.malt"))
	c.Type("pale.malt", "soka 7 h", "soak 7 h")
	assert.Empty(t, c.Found("pale.malt"))
}

func TestAServerEndsAsTheProtocolSays(t *testing.T) {
	c := loft(t)
	c.Ask("shutdown", nil, nil)
	c.Tell("exit", nil)
	assert.Equal(t, ExitClean, c.Code())
	c = loft(t)
	c.Tell("exit", nil)
	assert.Equal(t, ExitBroken, c.Code())
	c = loft(t)
	assert.Equal(t, ExitBroken, c.Ended(), "the stream has ended before anybody said so")
}

func TestFindingsArePulledWhereAnEditorAsks(t *testing.T) {
	c := typingAs(t, func(p *wire.InitializeParams) {
		p.Capabilities.TextDocument.Diagnostic = &wire.DiagnosticClientCapabilities{}
		p.Capabilities.Workspace.Diagnostics.RefreshSupport = true
	}, "pale.malt", "process \"x\" { soka 7 h }\n")
	c.Open("pale.malt")
	var full wire.FullDocumentDiagnosticReport
	c.Ask("textDocument/diagnostic", wire.DocumentDiagnosticParams{TextDocument: c.Document("pale.malt")}, &full)
	assert.Equal(t, "full", full.Kind)
	assert.NotEmpty(t, full.Items)
}
