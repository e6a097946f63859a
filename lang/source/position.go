package source

import (
	"sort"
	"unicode/utf8"
)

// Encoding is what a column counts.
type Encoding int

// The encodings a column can be asked for in.
const (
	Characters Encoding = iota // Unicode code points: what findings show
	Bytes                      // UTF-8 bytes
	UTF16                      // UTF-16 code units
)

// Position is a line and a column, both counted from 1.
type Position struct{ Line, Column int }

// Position converts a byte offset to a line and a column in the encoding. An
// offset outside the file is taken as its nearest end; one inside a character
// counts as that character's start. A byte that is no UTF-8 counts as one
// character and as one UTF-16 unit. The byte-order mark counts as nothing.
func (f *File) Position(offset int, enc Encoding) Position {
	offset = f.characterStart(min(max(offset, 0), len(f.text)))
	line := sort.SearchInts(f.lines, offset+1) - 1
	at := f.lines[line]
	if line == 0 {
		at = min(f.mark, len(f.text))
	}
	return Position{line + 1, 1 + f.width(at, max(at, offset), enc)}
}

// Offset converts a line and a column back to a byte offset: the inverse of
// Position. A column past the end of the line gives the line's end, and a line
// past the end of the file the file's end.
func (f *File) Offset(p Position, enc Encoding) int {
	if p.Line < 1 {
		return f.mark
	}
	line := f.Line(p.Line)
	at, column := f.before(line, p.Column, enc)
	for at < line.End && column < p.Column {
		_, size := utf8.DecodeRune(f.text[at:])
		column += width(f.text[at:at+size], enc)
		if column > p.Column {
			break
		}
		at += size
	}
	return at
}

// characterStart gives the offset of the character that the offset lies in.
func (f *File) characterStart(offset int) int {
	for start := offset - 1; start >= 0 && offset-start < utf8.UTFMax; start-- {
		if utf8.RuneStart(f.text[start]) {
			if _, size := utf8.DecodeRune(f.text[start:]); start+size > offset {
				return start
			}
			break
		}
	}
	return offset
}

func width(text []byte, enc Encoding) int {
	if enc == Bytes {
		return len(text)
	}
	n := 0
	for len(text) > 0 {
		r, size := utf8.DecodeRune(text)
		n++
		if enc == UTF16 && r > 0xffff {
			n++
		}
		text = text[size:]
	}
	return n
}
