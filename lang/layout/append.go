package layout

import (
	"bytes"
	"slices"
	"strings"

	"maltwright/lang/source"
	"maltwright/lang/syntax"
	"maltwright/lang/vocabulary"
)

// Append gives the text of a file with one more line in a block of it, behind the
// block's last statement, and where that line then stands. Everything else is byte
// for byte as it was. The line stands as Write would have it: indented as its
// neighbour, its value in the neighbour's column; where its verb does not fit in
// front of that column it begins a run of its own, below an empty line. So a file
// that was in the canonical form still is.
//
// The tree must have come from a parse without faults, and home must be a statement
// of it with a block; line is a statement of one line, in is the kind of the block.
func Append(t *syntax.Tree, home, line *syntax.Statement, in vocabulary.Block) ([]byte, source.Span) {
	text, body := t.File.Bytes(), home.Body
	at, margin, end := body.Start+1, marginOf(text, home.Start)+indent, lineEndOf(text)
	var last *syntax.Statement
	if n := len(body.Statements); n > 0 {
		last = body.Statements[n-1]
		at = last.End
		if begins(text, last.Start) {
			margin = marginOf(text, last.Start)
		}
	}
	words, parted := inColumn(text, last, header(line, in), line.Verb.Text)
	before, after := end, ""
	if parted {
		before += end
	}
	stop := at + lineLength(text[at:])
	if closing := body.End - 1; closing <= stop { // the brace stands on the same line
		stop, after = closing, end+marginOf(text, home.Start)
	}
	start := stop + len(before) + len(margin)
	out := slices.Concat(text[:stop], []byte(before+margin+words+after), text[stop:])
	return out, source.Span{Start: start, End: start + len(words)}
}

// inColumn writes the line with its value in the column of the one above, and tells
// whether an empty line must part the two.
func inColumn(text []byte, last *syntax.Statement, words, verb string) (string, bool) {
	rest := strings.TrimPrefix(words, verb)
	if last == nil {
		return words, false
	}
	if last.Body != nil {
		return words, true
	}
	value := last.Head().End
	switch {
	case len(last.Terms) > 0:
		value = last.Terms[0].Range().Start
	case len(last.Clauses) > 0:
		value = last.Clauses[0].Start
	}
	column := width(string(text[last.Start:value]))
	if column <= width(verb) {
		return words, true
	}
	return verb + strings.Repeat(" ", column-width(verb)) + strings.TrimLeft(rest, " "), false
}

// begins tells whether only blanks stand in front of the offset on its line.
func begins(text []byte, at int) bool {
	return strings.Trim(string(text[lineStart(text, at):at]), " \t") == ""
}

// marginOf is the blanks with which the line of the offset begins.
func marginOf(text []byte, at int) string {
	line := string(text[lineStart(text, at):at])
	return line[:len(line)-len(strings.TrimLeft(line, " \t"))]
}

func lineStart(text []byte, at int) int { return bytes.LastIndexAny(text[:at], "\r\n") + 1 }

func lineLength(text []byte) int {
	if i := bytes.IndexAny(text, "\r\n"); i >= 0 {
		return i
	}
	return len(text)
}

// lineEndOf is how the lines of a text end, by the first of them that does not end in a
// carriage return alone: of those a stray one is likelier than a text of them, unless
// there is nothing else.
func lineEndOf(text []byte) string {
	switch i := bytes.IndexByte(text, '\n'); {
	case i < 0 && bytes.IndexByte(text, '\r') >= 0:
		return "\r"
	case i > 0 && text[i-1] == '\r':
		return "\r\n"
	}
	return "\n"
}
