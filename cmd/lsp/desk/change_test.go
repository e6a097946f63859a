package desk

import (
	"testing"
	"unicode/utf16"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"maltwright/cmd/lsp/wire"
	"maltwright/lang/source"
)

// at is a range, from line and column to line and column.
func at(fromLine, from, toLine, to uint32, text string) wire.TextDocumentContentChangeEvent {
	return wire.TextDocumentContentChangeEvent{Range: &wire.Range{Start: wire.Position{Line: fromLine, Character: from}, End: wire.Position{Line: toLine, Character: to}}, Text: text}
}

func typed(enc source.Encoding, text string, changes ...wire.TextDocumentContentChangeEvent) string {
	d := New()
	d.Count(enc)
	d.Open("untitled:x", 1, text)
	d.Change("untitled:x", 2, changes)
	doc, err := d.Now().Doc("untitled:x")
	if err != nil {
		return err.Error()
	}
	return string(doc.Text())
}

func TestChangesAreMadeOneAfterTheOther(t *testing.T) {
	for _, c := range []struct {
		what, text string
		enc        source.Encoding
		changes    []wire.TextDocumentContentChangeEvent
		want       string
	}{
		{"the whole text", "soak", source.UTF16, []wire.TextDocumentContentChangeEvent{{Text: "rest"}}, "rest"},
		{"one in a line", "soak 7 h\nrest", source.UTF16, []wire.TextDocumentContentChangeEvent{at(0, 5, 0, 6, "9")}, "soak 9 h\nrest"},
		{"the second counts in the text of the first", "ab\ncd", source.UTF16, []wire.TextDocumentContentChangeEvent{at(0, 1, 0, 1, "\n"), at(1, 0, 1, 1, "x"), at(2, 2, 2, 2, "!")}, "a\nx\ncd!"},
		{"the second is the whole text", "ab", source.UTF16, []wire.TextDocumentContentChangeEvent{at(0, 0, 0, 1, "x"), {Text: "y"}, at(0, 1, 0, 1, "z")}, "yz"},
		{"UTF-16 behind an emoji", "# 🌾x", source.UTF16, []wire.TextDocumentContentChangeEvent{at(0, 4, 0, 5, "y")}, "# 🌾y"},
		{"UTF-8 behind an emoji", "# 🌾x", source.Bytes, []wire.TextDocumentContentChangeEvent{at(0, 6, 0, 7, "y")}, "# 🌾y"},
		{"characters behind an emoji", "# 🌾x", source.Characters, []wire.TextDocumentContentChangeEvent{at(0, 3, 0, 4, "y")}, "# 🌾y"},
		{"between the halves of an emoji", "🌾x", source.UTF16, []wire.TextDocumentContentChangeEvent{at(0, 1, 0, 2, "y")}, "yx"},
		{"behind the end of a line", "ab\r\ncd", source.UTF16, []wire.TextDocumentContentChangeEvent{at(0, 99, 0, 99, "!")}, "ab!\r\ncd"},
		{"a whole line with its end", "ab\r\ncd\r\n", source.UTF16, []wire.TextDocumentContentChangeEvent{at(0, 0, 1, 0, "")}, "cd\r\n"},
		{"behind the last line", "ab\ncd", source.UTF16, []wire.TextDocumentContentChangeEvent{at(7, 3, 9, 9, "!")}, "ab\ncd!"},
		{"from behind to before", "abcd", source.UTF16, []wire.TextDocumentContentChangeEvent{at(0, 3, 0, 1, "!")}, "abc!d"},
		{"numbers past all bounds", "ab", source.UTF16, []wire.TextDocumentContentChangeEvent{at(4294967295, 4294967295, 4294967295, 4294967295, "!")}, "ab!"},
		{"behind a byte-order mark", "\ufeffab", source.UTF16, []wire.TextDocumentContentChangeEvent{at(0, 1, 0, 2, "x")}, "\ufeffxb"},
		{"the byte-order mark", "\ufeffab", source.UTF16, []wire.TextDocumentContentChangeEvent{at(0, 0, 0, 1, "")}, "ab"},
		{"behind a byte-order mark in bytes", "\ufeffab", source.Bytes, []wire.TextDocumentContentChangeEvent{at(0, 3, 0, 4, "x")}, "\ufeffxb"},
	} {
		assert.Equal(t, c.want, typed(c.enc, c.text, c.changes...), c.what)
	}
}

// An editor keeps its text as units of UTF-16 and lines; ours must stay the same.
func TestABufferStaysThatOfTheEditor(t *testing.T) {
	pieces := []string{"a", "°", "🌾", "\n", "\r\n", "µ", " ", "soak 7 h", "\t"}
	rapid.Check(t, func(t *rapid.T) {
		draw := func(label string, n int) string {
			text := ""
			for _, p := range rapid.SliceOfN(rapid.SampledFrom(pieces), 0, n).Draw(t, label) {
				text += p
			}
			return text
		}
		d := New()
		editor := utf16.Encode([]rune(draw("text", 30)))
		d.Open("untitled:x", 1, string(utf16.Decode(editor)))
		for version := range rapid.IntRange(1, 5).Draw(t, "notifications") {
			var changes []wire.TextDocumentContentChangeEvent
			for range rapid.IntRange(1, 4).Draw(t, "changes") {
				from := edge(editor, rapid.IntRange(0, len(editor)).Draw(t, "from"))
				to := edge(editor, rapid.IntRange(from, len(editor)).Draw(t, "to"))
				text := draw("new", 5)
				changes = append(changes, wire.TextDocumentContentChangeEvent{Range: &wire.Range{Start: position(editor, from), End: position(editor, to)}, Text: text})
				after := append(append(append([]uint16{}, editor[:from]...), utf16.Encode([]rune(text))...), editor[to:]...)
				editor = after
			}
			require.True(t, d.Change("untitled:x", int32(version+2), changes))
			doc, err := d.Now().Doc("untitled:x")
			require.NoError(t, err)
			require.Equal(t, string(utf16.Decode(editor)), string(doc.Text()))
		}
	})
}

// edge moves a place in UTF-16 units so that it splits no character and no line end.
func edge(text []uint16, at int) int {
	for at > 0 && at < len(text) && (utf16.IsSurrogate(rune(text[at])) && text[at] >= 0xdc00 || text[at] == '\n' && text[at-1] == '\r') {
		at--
	}
	return at
}

func position(text []uint16, at int) wire.Position {
	var p wire.Position
	for i := range at {
		if text[i] == '\n' || text[i] == '\r' && !(i+1 < len(text) && text[i+1] == '\n') {
			p.Line, p.Character = p.Line+1, 0
		} else {
			p.Character++
		}
	}
	return p
}

func TestPositionsAndOffsetsAreTheSame(t *testing.T) {
	f := source.New("x", []byte("\ufeffa°🌾\r\nb"))
	for _, enc := range []source.Encoding{source.Bytes, source.UTF16, source.Characters} {
		for _, offset := range []int{0, 3, 4, 6, 10, 12, 13} {
			assert.Equal(t, offset, Offset(f, Position(f, offset, enc), enc), "%d in %d", offset, enc)
		}
	}
}
