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
	var last *syntax.Statement
	if n := len(home.Body.Statements); n > 0 {
		last = home.Body.Statements[n-1]
	}
	text, at, _ := Behind(t, home, last, line, in)
	return text, at
}

// Behind does as Append does behind any statement of the block, which must be the last on its
// line, or nil for a block that has none. It gives the offset, too, at which the text was parted
// to take in the line.
func Behind(t *syntax.Tree, home, last, line *syntax.Statement, in vocabulary.Block) (put []byte, stands source.Span, parted int) {
	text, body := t.File.Bytes(), home.Body
	at, margin, end := body.Start+1, marginOf(text, home.Start)+indent, lineEndOf(text)
	if last != nil {
		at = last.End
		if begins(text, last.Start) {
			margin = marginOf(text, last.Start)
		}
	}
	words, apart := inColumn(text, last, header(line, in), line.Verb.Text)
	before, after := end, ""
	if apart {
		before += end
	}
	stop := at + lineLength(text[at:])
	next := following(body, last)
	if next != nil && apart && next.Spaced && len(next.Lead) == 0 && begins(text, next.Start) { // it begins the run of the next
		words, _ = inColumn(text, next, header(line, in), line.Verb.Text)
		at := lineStart(text, next.Start)
		start := at + len(margin)
		return slices.Concat(text[:at], []byte(margin+words+end), text[at:]), source.Span{Start: start, End: start + len(words)}, at
	}
	switch closing := body.End - 1; {
	case next == nil && closing <= stop: // the brace stands on the same line
		stop, after = closing, end+marginOf(text, home.Start)
	case next != nil && apart && !next.Spaced:
		after = end
	}
	start := stop + len(before) + len(margin)
	out := slices.Concat(text[:stop], []byte(before+margin+words+after), text[stop:])
	return out, source.Span{Start: start, End: start + len(words)}, stop
}

// following is the statement of a block behind one of it, nil for the last.
func following(body *syntax.Block, s *syntax.Statement) *syntax.Statement {
	if i := slices.Index(body.Statements, s); i >= 0 && i+1 < len(body.Statements) {
		return body.Statements[i+1]
	}
	return nil
}

// Instead gives the text of a file with a line in the place of a statement of one line, in the
// column of that where its word is no longer, and where the line then stands. Everything else is
// byte for byte as it was.
func Instead(t *syntax.Tree, s, line *syntax.Statement, in vocabulary.Block) ([]byte, source.Span) {
	text := t.File.Bytes()
	words, apart := inColumn(text, s, header(line, in), line.Verb.Text)
	if apart {
		words = header(line, in)
	}
	return slices.Concat(text[:s.Start], []byte(words), text[s.End:]), source.Span{Start: s.Start, End: s.Start + len(words)}
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
