package offer

import (
	"strings"

	"maltwright/lang/source"
	"maltwright/lang/syntax"
	"maltwright/lang/vocabulary"
)

// spot is a place in a text, as far as the line in front of it says what it is.
type spot struct {
	file  *source.File
	tree  *syntax.Tree
	in    vocabulary.Block
	block *syntax.Block
	start int // where the statement begins

	word  source.Span // what is replaced; empty where no word stands at the place
	typed string      // the word, up to the place
	kind  syntax.LexemeKind

	head  *syntax.Statement // the statement in front of the word; nil where the word begins it
	bound string            // a bound that stands right in front of the word
	last  source.Span       // the last piece in front of the word
	after []string          // the pieces of the statement behind the word
}

// pieces are the words and signs of a line, by their offsets in the file.
func pieces(f *source.File, line source.Span) []syntax.Lexeme {
	list := syntax.Lexemes(source.New("", []byte(f.Text(line))))
	for i := range list {
		list[i].Start += line.Start
		list[i].End += line.Start
	}
	return list
}

// closed tells whether a quoted text has its closing quote.
func closed(f *source.File, p syntax.Lexeme) bool {
	return syntax.Text{Span: p.Span}.Inner(f).End < p.End
}

// lineAt is the line of an offset.
func lineAt(f *source.File, offset int) source.Span {
	text := f.Bytes()
	from, to := offset, offset
	for from > f.Start() && text[from-1] != '\n' && text[from-1] != '\r' {
		from--
	}
	for to < len(text) && text[to] != '\n' && text[to] != '\r' {
		to++
	}
	return source.Span{Start: from, End: to}
}

// ends tells whether a statement ends at a piece.
func ends(k syntax.LexemeKind) bool {
	return k == syntax.OpenLexeme || k == syntax.CloseLexeme || k == syntax.EndLexeme || k == syntax.CommentLexeme
}

// spotAt finds out about a place. It is false where nothing of the language may stand.
func spotAt(f *source.File, tree *syntax.Tree, offset int) (*spot, bool) {
	offset = min(max(offset, f.Start()), f.Size())
	line := lineAt(f, offset)
	sp := &spot{file: f, tree: tree, start: -1, word: source.Span{Start: offset, End: offset}}
	var before []syntax.Lexeme
	behind := false
	for _, p := range pieces(f, line) {
		switch {
		case p.Kind == syntax.CommentLexeme && p.Start < offset:
			return nil, false
		case ends(p.Kind) && p.End <= offset:
			before = before[:0]
		case ends(p.Kind):
			behind = true
		case behind:
		case p.End < offset || p.End == offset && !sp.touches(p):
			before = append(before, p)
		case p.Start < offset:
			sp.within(p, offset)
		default:
			sp.after = append(sp.after, f.Text(p.Span))
		}
	}
	sp.in, sp.block = blockAt(f, tree, offset, line)
	sp.start = sp.word.Start
	if len(before) > 0 {
		sp.start = before[0].Start
		sp.parse(before)
		return sp, sp.head != nil
	}
	return sp, sp.kind != syntax.TextLexeme
}

// touches tells whether a piece that ends at the place may yet go on.
func (sp *spot) touches(p syntax.Lexeme) bool {
	return p.Kind != syntax.TextLexeme || !closed(sp.file, p)
}

// within takes the piece in which the place lies.
func (sp *spot) within(p syntax.Lexeme, offset int) {
	sp.word, sp.kind = p.Span, p.Kind
	if p.Kind == syntax.TextLexeme && !closed(sp.file, p) { // it has swallowed the rest of the line
		sp.word.End = offset
	}
	sp.typed = sp.file.Text(source.Span{Start: sp.word.Start, End: offset})
}

// parse reads what stands in front of the word.
func (sp *spot) parse(before []syntax.Lexeme) {
	last := before[len(before)-1]
	sp.last = last.Span
	end := last.End
	if last.Kind == syntax.BoundLexeme {
		sp.bound, end = strings.Join(strings.Fields(sp.file.Text(last.Span)), " "), last.Start
	}
	sp.head = header(sp.file, source.Span{Start: sp.start, End: end})
}

// header reads the text of a header, with the offsets of the file; nil where it does not read.
func header(f *source.File, at source.Span) *syntax.Statement {
	tree, _ := syntax.Parse(source.New("", []byte(f.Text(at))))
	if len(tree.Top.Statements) != 1 || tree.Top.Statements[0].Broken {
		return nil
	}
	return tree.Top.Statements[0]
}
