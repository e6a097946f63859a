package lsp

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/require"

	"maltwright/cmd/lsp/wire"
)

// BenchmarkNames asks for names in a folder of a house, a process and a thousand records.
func BenchmarkNames(b *testing.B) {
	list := []string{"pale.malt", example(b, "pale.malt"), "loft.malt", example(b, "loft.malt")}
	for i := range 1000 {
		list = append(list, fmt.Sprintf("r%d.malt", i), fmt.Sprintf("use \"pale.malt\"\nbatch \"b%d\" of \"Loft pale\" {\n  began 2026-03-06 07:00\n  pinned \"0c917a33e529\"\n  weighed 7.4 kg in \"blue tub\" at 14:00 after soak 1\n}\n", i))
	}
	c := typing(b, list...)
	c.Open("pale.malt")
	at := c.At("pale.malt", "blue tub")
	for name, ask := range map[string]func(){
		"definition": func() { c.Ask("textDocument/definition", at, nil) },
		"references": func() {
			c.Ask("textDocument/references", wire.ReferenceParams{TextDocument: at.TextDocument, Position: at.Position, Context: wire.ReferenceContext{IncludeDeclaration: true}}, nil)
		},
		"rename": func() {
			var e wire.WorkspaceEdit
			c.Ask("textDocument/rename", wire.RenameParams{TextDocument: at.TextDocument, Position: at.Position, NewName: "vat"}, &e)
			require.Len(b, e.DocumentChanges, 1002)
		},
		"symbols": func() { c.Ask("workspace/symbol", wire.WorkspaceSymbolParams{Query: "b99"}, nil) },
		"tokens": func() {
			c.Ask("textDocument/semanticTokens/full", wire.SemanticTokensParams{TextDocument: at.TextDocument}, nil)
		},
	} {
		b.Run(name, func(b *testing.B) {
			for b.Loop() {
				ask()
			}
		})
	}
}
