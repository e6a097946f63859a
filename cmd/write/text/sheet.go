// Package text writes answers for a terminal: tables, paragraphs and findings. Whatever
// comes from a file is made safe first, so that no control character of it reaches the
// terminal. Words and numbers are those of package words; here they are put into columns.
package text

import (
	"fmt"
	"strings"

	"github.com/rivo/uniseg"

	"maltwright/cmd/words"
)

// Options say how to write. The zero value is plain text, 80 columns wide.
type Options struct {
	Width  int    // columns; 0 is 80
	Colour bool   // whether to use colours and underlining of the terminal
	Folder string // file names are shown relative to it where they lie below it

	Assumed, Cautions bool // these are told in full
}

const (
	usualWidth = 80
	leastWidth = 40
	mostWidth  = 100 // of a sheet: longer lines are hard to read
)

// Sheet is what one answer is written on, in the units of a house.
type Sheet struct {
	words.House
	Options
	b strings.Builder
}

// String is what was written.
func (s *Sheet) String() string { return s.b.String() }

// columns is how wide a sheet is.
func (s *Sheet) columns() int {
	if s.Width == 0 {
		return usualWidth
	}
	return min(s.Width, mostWidth)
}

func (s *Sheet) line(format string, args ...any) { fmt.Fprintf(&s.b, format+"\n", args...) }

func (s *Sheet) bold(text string) string { return paint{s.Colour}.bold(text) }

// indent is where the words of a paragraph begin, behind its label.
const indent = 14

// narrow is a sheet on which labels stand above what they are of.
func (s *Sheet) narrow() bool { return s.columns() < 60 }

// para writes a paragraph behind a label; on a narrow sheet the label is its first words, and it
// hangs by two blanks.
func (s *Sheet) para(label, format string, args ...any) {
	text := fmt.Sprintf(format, args...)
	if s.narrow() {
		s.hanging(label, text)
		return
	}
	for i, line := range words.Wrap(text, s.columns()-indent) {
		if i > 0 {
			label = ""
		}
		s.line("%-*s%s", indent, label, line)
	}
}

// hanging writes a label and a text as one paragraph, its further lines two blanks in.
func (s *Sheet) hanging(label, text string) {
	if label != "" {
		text = label + ": " + text
	}
	for i, line := range words.Wrap(text, s.columns()-2) {
		if i > 0 || label == "" {
			line = "  " + line
		}
		s.line("%s", line)
	}
}

// item is one of a list: its further lines are two blanks in.
func (s *Sheet) item(format string, args ...any) {
	for i, line := range words.Wrap(fmt.Sprintf(format, args...), s.columns()-4) {
		if i > 0 {
			line = "  " + line
		}
		s.line("  %s", line)
	}
}

// hang writes a text behind a margin, in as many lines as it needs.
func (s *Sheet) hang(margin, text string) {
	if text != "" {
		s.hangs(margin, margin, text)
	}
}

// hangs writes a text with a margin in front of its first line, and another in front of the others.
func (s *Sheet) hangs(first, rest, text string) {
	for i, line := range words.Wrap(text, s.columns()-max(len(first), len(rest))) {
		if i > 0 {
			first = rest
		}
		s.line("%s%s", first, line)
	}
}

// title writes a line in bold, in as many lines as it needs.
func (s *Sheet) title(text string) {
	for _, line := range words.Wrap(text, s.columns()) {
		s.line("%s", s.bold(line))
	}
}

// column is one column of a table.
type column struct {
	head  string
	width int // without the gap
	gap   int // blanks in front
	right bool
}

// boldHeads writes those of a table.
func (s *Sheet) boldHeads(columns []column) {
	cells := make([]string, len(columns))
	for i, c := range columns {
		cells[i] = c.head
	}
	s.line("%s", s.bold(rowOf(columns, cells)))
}

// row writes one row of a table. What is wider than its column pushes the rest on.
func (s *Sheet) row(columns []column, cells []string) { s.line("%s", rowOf(columns, cells)) }

func rowOf(columns []column, cells []string) string {
	var b strings.Builder
	for i, c := range columns {
		pad := strings.Repeat(" ", max(0, c.width-uniseg.StringWidth(cells[i])))
		b.WriteString(strings.Repeat(" ", c.gap))
		if c.right {
			b.WriteString(pad + cells[i])
		} else {
			b.WriteString(cells[i] + pad)
		}
	}
	return strings.TrimRight(b.String(), " ")
}
