// Package source holds the bytes of a process file and the positions in them.
//
// A position is a byte offset in a known file, and nothing else. Lines and
// columns are reckoned from one index of line starts when somebody has to read
// them: people count characters, some editors count bytes, others UTF-16 units.
// Because every stage passes offsets, no stage can disagree with another about
// where a word stands.
package source

import (
	"bytes"
	"sync"
	"unicode/utf8"
)

// MaxBytes is the size above which a file is refused: 4 MiB.
const MaxBytes = 4 << 20

const byteOrderMark = "\ufeff"

// File is one source text with its name and its line index. It does not change
// after New, so it may be read from several goroutines.
type File struct {
	name  string
	text  []byte
	lines []int // offset of the first byte of each line
	mark  int   // length of a byte-order mark at the start, 0 or 3

	marked sync.Once
	stones []stone // along a text with a long line; nil until a column in one is asked for
}

// New indexes text under the given name. The text is kept as it is: a byte-order
// mark, CRLF line ends and bytes that are no UTF-8 stay where they are, so that
// offsets are the offsets of the file on disk.
func New(name string, text []byte) *File {
	f := &File{name: name, text: text, lines: []int{0}}
	if bytes.HasPrefix(text, []byte(byteOrderMark)) {
		f.mark = len(byteOrderMark)
	}
	for i, b := range text {
		if b == '\n' || b == '\r' && !(i+1 < len(text) && text[i+1] == '\n') {
			f.lines = append(f.lines, i+1)
		}
	}
	return f
}

// Name is the name the file was given: a path as the user wrote it, or "-".
func (f *File) Name() string { return f.name }

// Bytes is the whole text; the caller must not change it.
func (f *File) Bytes() []byte { return f.text }

// Start is the offset of the first byte that is text: 3 after a byte-order mark, else 0.
func (f *File) Start() int { return f.mark }

// Size is the number of bytes.
func (f *File) Size() int { return len(f.text) }

// Lines is the number of lines; an empty file has one.
func (f *File) Lines() int { return len(f.lines) }

// Text is the text that a span covers.
func (f *File) Text(s Span) string {
	s = s.within(len(f.text))
	return string(f.text[s.Start:s.End])
}

// Line gives the span of line n, counted from 1, without its line end. A line
// that is not there gives an empty span at the end of the file.
func (f *File) Line(n int) Span {
	if n < 1 || n > len(f.lines) {
		return Span{len(f.text), len(f.text)}
	}
	start, end := f.lines[n-1], len(f.text)
	if n < len(f.lines) {
		end = f.lines[n]
	}
	for end > start && (f.text[end-1] == '\n' || f.text[end-1] == '\r') {
		end--
	}
	if n == 1 && start < f.mark && f.mark <= end {
		start = f.mark
	}
	return Span{start, end}
}

// FirstLine gives the first line that holds something, LastLine the last: where what
// is said of the whole file stands. Of a file of blanks alone both are empty.
func (f *File) FirstLine() Span { return f.filled(1, 1) }

// LastLine gives the last line that holds something.
func (f *File) LastLine() Span { return f.filled(f.Lines(), -1) }

func (f *File) filled(from, step int) Span {
	for n := from; n >= 1 && n <= f.Lines(); n += step {
		if line := f.Line(n); len(bytes.TrimSpace(f.text[line.Start:line.End])) > 0 {
			return line
		}
	}
	return Span{f.mark, f.mark}
}

// BadBytes gives the offset of each maximal run of bytes that is not UTF-8, and
// of each NUL, which no text file holds.
func (f *File) BadBytes() []Span {
	var bad []Span
	for i := 0; i < len(f.text); {
		r, size := utf8.DecodeRune(f.text[i:])
		if r == utf8.RuneError && size == 1 || r == 0 {
			if n := len(bad); n > 0 && bad[n-1].End == i {
				bad[n-1].End++
			} else {
				bad = append(bad, Span{i, i + 1})
			}
		}
		i += size
	}
	return bad
}
