package lsp

import (
	"encoding/json"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"maltwright/cmd/lsp/desk"
	"maltwright/cmd/lsp/wire"
	"maltwright/lang/layout"
	"maltwright/lang/source"
	"maltwright/lang/syntax"
)

// plainly is an editor that wants no forecasts.
func plainly(p *wire.InitializeParams) {
	p.InitializationOptions = json.RawMessage(`{"forecast": false, "lenses": false}`)
}

// withEdits makes edits of a text.
func withEdits(text string, list []wire.TextEdit) string {
	f := source.New("x", []byte(text))
	out := text
	for _, e := range slices.Backward(list) {
		out = out[:desk.Offset(f, e.Range.Start, source.UTF16)] + e.NewText + out[desk.Offset(f, e.Range.End, source.UTF16):]
	}
	return out
}

// A file is laid out as tidy does, part by part too, whatever part is asked for: what it says stays.
func TestALayoutOfAnyRangeSaysTheSame(t *testing.T) {
	c := typingAs(t, plainly)
	pale, house := example(t, "pale.malt"), example(t, "loft.malt")
	said := func(text string) string {
		tree, _ := syntax.Parse(source.New("x", []byte(text)))
		return string(layout.Plain(tree))
	}
	n := 0
	rapid.Check(t, func(t *rapid.T) {
		words := strings.SplitAfter(rapid.SampledFrom([]string{pale, house}).Draw(t, "file"), " ")
		for range rapid.IntRange(1, 9).Draw(t, "times") {
			i := rapid.IntRange(0, len(words)-1).Draw(t, "word")
			words[i] = rapid.SampledFrom([]string{"{\n", "}\n", " }\n", "\n\n", "  ", "{", "pct ", "# 🌾\n", ""}).Draw(t, "with") + words[i]
		}
		text := strings.Join(words, "")
		lines := uint32(strings.Count(text, "\n"))
		from := rapid.Uint32Range(0, lines).Draw(t, "from")
		to := rapid.Uint32Range(from, lines).Draw(t, "to")
		n++
		c.OpenWith("x.malt", text)
		var list []wire.TextEdit
		c.Ask("textDocument/rangeFormatting", wire.DocumentRangeFormattingParams{TextDocument: c.Document("x.malt"), Range: wire.Range{Start: wire.Position{Line: from}, End: wire.Position{Line: to, Character: 99}}}, &list)
		if len(list) > 0 {
			require.Equal(t, said(text), said(withEdits(text, list)))
		}
		c.Ask("textDocument/formatting", wire.DocumentFormattingParams{TextDocument: c.Document("x.malt")}, &list)
		if len(list) > 0 {
			tree, _ := syntax.Parse(source.New("x", []byte(text)))
			require.Equal(t, string(layout.Write(tree)), withEdits(text, list))
		}
	})
	assert.Positive(t, n)
}

func TestANewLineIsIndentedByTheBracesAboveIt(t *testing.T) {
	c := typing(t)
	for _, place := range []struct {
		text string
		line uint32
		ch   string
		want string
	}{
		{"process \"p\" {\n\n", 1, "\n", "process \"p\" {\n  \n"},
		{"process \"p\" {\n steep ) {\n\n}\n}\n", 2, "\n", "process \"p\" {\n steep ) {\n    \n}\n}\n"},
		{"process \"p\" { # {\n    \"{\"\n x\n", 2, "\n", "process \"p\" { # {\n    \"{\"\n  x\n"},
		{"process \"p\" {\n  steep {\n    }\n", 2, "}", "process \"p\" {\n  steep {\n  }\n"},
		{"process \"p\" {\n     soak 7 h }\n", 1, "}", "process \"p\" {\n     soak 7 h }\n"},
		{"}\n}\n   use\n", 2, "\n", "}\n}\nuse\n"},
	} {
		c.OpenWith("x.malt", place.text)
		var list []wire.TextEdit
		c.Ask("textDocument/onTypeFormatting", wire.DocumentOnTypeFormattingParams{TextDocument: c.Document("x.malt"), Position: wire.Position{Line: place.line}, Ch: place.ch}, &list)
		assert.Equal(t, place.want, withEdits(place.text, list))
	}
}
