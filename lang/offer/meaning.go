package offer

import (
	"strings"

	"maltwright/lang/source"
	"maltwright/lang/syntax"
	"maltwright/lang/vocabulary"
)

// Meaning is what the word or value at a place means.
type Meaning struct {
	source.Span
	Title string   // the word, or what the value is
	Doc   string   // what it means
	Form  string   // of its statement; "" where it stands in none
	Facts []string // a line each: the value in other units, what is usual
	Says  string   // of a name: the lines of its definition
	From  source.Place
	// Of a value, what it was asked as; the zero value of what is none.
	Asked Asked
}

// MeaningAt tells what stands at an offset. It is false in comments, and where nothing stands.
func MeaningAt(f *source.File, tree *syntax.Tree, offset int, k Known) (Meaning, bool) {
	offset = min(max(offset, f.Start()), f.Size())
	at, start, ok := pieceAt(f, offset)
	if !ok {
		return Meaning{}, false
	}
	in, block := blockAt(f, tree, offset, lineAt(f, offset))
	sp := &spot{file: f, tree: tree, in: in, block: block, start: start, word: at.Span}
	head := header(f, span(start, at.End))
	if at.Kind == syntax.BoundLexeme {
		head = header(f, span(start, at.Start))
	}
	if head == nil {
		return Meaning{}, false
	}
	row, ok := rowOf(in, head.Verb.Text)
	if !ok {
		return Meaning{}, false
	}
	l := &list{spot: sp, known: k, row: row, at: Asked{In: in, Verb: row.Word}}
	m := Meaning{Span: at.Span, Form: formOf(in, *row)}
	return m, l.tell(&m, head, at)
}

// pieceAt finds the piece of a line at an offset, of a quantity all from there on, and where its statement
// begins.
func pieceAt(f *source.File, offset int) (at syntax.Lexeme, start int, ok bool) {
	start = -1
	line := pieces(f, lineAt(f, offset))
	for i, p := range line {
		if start < 0 && !ends(p.Kind) {
			start = p.Start
		}
		if p.Start <= offset && offset <= p.End && p.Start < p.End && !(offset == p.End && i+1 < len(line) && line[i+1].Start == offset) {
			if _, to := run(line, i); p.Kind == syntax.NumberLexeme || p.Kind == syntax.UnitLexeme {
				p.End = line[to].End // with its unit, and the parts behind it
			}
			return p, start, !ends(p.Kind)
		}
		if ends(p.Kind) {
			start = -1
		}
	}
	return at, start, false
}

// tell says what a piece means, which is the last of a header.
func (l *list) tell(m *Meaning, head *syntax.Statement, at syntax.Lexeme) bool {
	text := strings.Join(strings.Fields(l.file.Text(at.Span)), " ")
	n := len(head.Clauses)
	switch {
	case at.Kind == syntax.BoundLexeme:
		m.Title, m.Doc = text, about(boundWord(text))
	case len(head.Terms) == 0 && n == 0:
		m.Title, m.Doc = l.row.Word, l.row.Doc
		if g, ok := vocabulary.GlossOf(l.row.Word); ok && g.Looks != "" {
			m.Facts = append(m.Facts, g.Looks)
		}
	case n > 0 && len(head.Clauses[n-1].Terms) == 0 && at.Kind != syntax.ToLexeme:
		c, ok := l.row.Clause(head.Clauses[n-1].Word.Text)
		if !ok {
			return false
		}
		m.Title, m.Doc = l.row.Word+" … "+c.Word, c.Doc
	default:
		return l.tellValue(m, head, at, text)
	}
	return m.Doc != ""
}

// boundWord is the word of a bound that is written with a sign.
func boundWord(text string) string {
	if op, ok := vocabulary.BoundOp(text); ok {
		return op.String()
	}
	return text
}
