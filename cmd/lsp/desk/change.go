package desk

import (
	"slices"

	"maltwright/cmd/lsp/wire"
	"maltwright/lang/source"
)

// changed is a file after one change. A range that lies outside of it is taken as its nearest end,
// and one whose end is before its start as empty.
func changed(f *source.File, c wire.TextDocumentContentChangeEvent, enc source.Encoding) *source.File {
	if c.Range == nil {
		return source.New(f.Name(), []byte(c.Text))
	}
	from, to := Offset(f, c.Range.Start, enc), Offset(f, c.Range.End, enc)
	to = max(from, to)
	text := f.Bytes()
	return source.New(f.Name(), slices.Concat(text[:from], []byte(c.Text), text[to:]))
}

// mark is a byte-order mark, which an editor that keeps one in its buffer counts as a character.
const mark = "\ufeff"

// Offset is the place of a position in the bytes of a buffer. One behind the end of a line is that
// end, and one behind the last line the end of the text.
func Offset(f *source.File, p wire.Position, enc source.Encoding) int {
	line, column := int(min(p.Line, 1<<30)), int(min(p.Character, 1<<30))
	if line == 0 && f.Start() > 0 {
		if column == 0 {
			return 0
		}
		column -= markWidth(enc)
	}
	return f.Offset(source.Position{Line: line + 1, Column: column + 1}, enc)
}

// Position is the position of an offset in a buffer.
func Position(f *source.File, offset int, enc source.Encoding) wire.Position {
	p := f.Position(offset, enc)
	column := p.Column - 1
	if p.Line == 1 && f.Start() > 0 && offset > 0 {
		column += markWidth(enc)
	}
	return wire.Position{Line: uint32(p.Line - 1), Character: uint32(column)}
}

func markWidth(enc source.Encoding) int {
	if enc == source.Bytes {
		return len(mark)
	}
	return 1
}

// RangeOf is the range of a span in a buffer.
func RangeOf(f *source.File, s source.Span, enc source.Encoding) wire.Range {
	return wire.Range{Start: Position(f, s.Start, enc), End: Position(f, max(s.Start, s.End), enc)}
}
