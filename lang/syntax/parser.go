package syntax

import (
	"errors"
	"fmt"

	"github.com/alecthomas/participle/v2"
	"github.com/alecthomas/participle/v2/lexer"

	"maltwright/lang/finding"
	"maltwright/lang/source"
)

// Limits on what is read, so that no file can make the tool run for ever.
const (
	MaxNesting    = 32     // blocks inside blocks
	MaxStatements = 10_000 // statements in one file
	maxFindings   = 100    // findings in one file; past them it is no process file
	maxTokens     = 50 * MaxStatements
)

// Parse reads a file into statements. It always gives a tree: what does not read
// is left out of it, and a finding says so. A file that is too large or no text
// at all gives an empty tree and one finding. Of signs that people write for words of the
// language the findings tell what is meant by them.
func Parse(f *source.File) (*Tree, []finding.Finding) {
	tree, found := statements(f)
	if len(found) == 0 {
		return tree, nil
	}
	if form := f.Inner(); form != nil {
		return &Tree{File: f}, []finding.Finding{ofForm(f, form)}
	}
	return tree, meant(f, found)
}

func statements(f *source.File) (*Tree, []finding.Finding) {
	tree := &Tree{File: f}
	found, readable := inspect(f)
	if !readable {
		return tree, found
	}
	scan := &scanner{text: string(f.Bytes())}
	tokens, _ := lexer.Upgrade(scan) // the scanner gives no errors
	p := &parser{file: f, found: found, tokens: tokens}
	if scan.cut {
		p.note(tooManyStatements.At(p.place(f.FirstLine()), fmt.Sprintf("more than %d words and signs in one file", maxTokens)))
		return tree, p.found
	}
	start := tokens.MakeCheckpoint()
	if tree.Top = p.block(0, noEnd); len(p.blamed)+len(p.surplus) > 0 {
		tokens.LoadCheckpoint(start)
		p = p.again(found)
		tree.Top = p.block(0, noEnd)
	}
	tree.Top.Span = source.Span{Start: f.Start(), End: f.Size()}
	if scan.vague {
		p.settle(tree)
	}
	return tree, p.found
}

type parser struct {
	file   *source.File
	tokens *lexer.PeekingLexer
	found  []finding.Finding
	count  int

	lead   []Comment // comments waiting for the statement they belong to
	breaks int       // line ends since the last token that was none
	line   **Comment // where a comment on the current line would belong

	suspect *openBlock  // the block that was most likely left open, if any was
	blamed  []openBlock // the blocks that were left open
	ends    map[int]int // by its opening brace, where a block that was left open most likely ends

	early   *earlyClose  // the brace that most likely closes a block too early, if any does
	surplus map[int]bool // by their offsets, braces that are one too many
}

// block reads statements up to the closing brace or the end of the file, or to the
// offset at which a block that was left open most likely ends.
func (p *parser) block(depth, end int) Block {
	var b Block
	for !p.full() {
		tok := p.tokens.Peek()
		if tok.Pos.Offset >= end {
			b.Tail = p.takeLead()
			return b
		}
		switch tok.Type {
		case lexer.EOF:
			b.Tail = p.takeLead()
			return b
		case kindClose:
			switch {
			case p.surplus[tok.Pos.Offset]:
			case depth > 0:
				b.Tail = p.takeLead()
				return b
			default:
				p.note(p.tooMany(span(*tok)))
			}
			p.next()
		case kindEnd:
			p.lineEnd(tok)
		case kindComment:
			p.comment(tok)
		case kindOpen:
			p.openAlone(&b, depth)
		default:
			p.statement(&b, depth)
		}
	}
	b.Tail = p.takeLead()
	return b
}

func (p *parser) next() *lexer.Token {
	p.breaks = 0
	return p.tokens.Next()
}

func (p *parser) full() bool { return p.count > MaxStatements || len(p.found) >= maxFindings }

func (p *parser) lineEnd(tok *lexer.Token) {
	if tok.Value != ";" {
		p.breaks++
		p.line = nil
	}
	p.tokens.Next()
}

func (p *parser) comment(tok *lexer.Token) {
	c := Comment{Span: span(*tok), Text: tok.Value, Spaced: p.breaks > 1}
	if p.line != nil && *p.line == nil {
		*p.line = &c
	} else {
		p.lead = append(p.lead, c)
	}
	p.next()
}

func (p *parser) takeLead() []Comment {
	lead := p.lead
	p.lead = nil
	return lead
}

// statement reads one header and the block behind it.
func (p *parser) statement(b *Block, depth int) {
	p.count++
	if p.count > MaxStatements {
		p.note(tooManyStatements.At(p.place(span(*p.tokens.Peek())),
			fmt.Sprintf("more than %d statements in one file", MaxStatements)))
		return
	}
	spaced := p.breaks > 1
	s := p.header()
	s.Lead, s.Spaced = p.takeLead(), spaced
	p.breaks = 0
	b.Statements = append(b.Statements, s)
	p.line = &s.Trail
	if p.tokens.Peek().Type == kindOpen {
		p.body(s, depth)
	}
}

// header reads a header with the grammar; where that fails it notes the finding
// and skips to the end of the header.
func (p *parser) header() *Statement {
	first := *p.tokens.Peek()
	h, err := grammar.ParseFromLexer(p.tokens, participle.AllowTrailing(true))
	if err == nil && terminal(p.tokens.Peek().Type) {
		s := convertHeader(h)
		known := len(p.found)
		p.unclosed(s)
		s.Broken = len(p.found) > known // the name has swallowed the rest of the line
		return s
	}
	p.misread(first, err)
	for !terminal(p.tokens.Peek().Type) {
		p.tokens.Next()
	}
	return &Statement{Span: span(first), Verb: Word{span(first), foldBlanks(first.Value)}, Broken: true}
}

func terminal(k lexer.TokenType) bool {
	return k == kindEnd || k == kindOpen || k == kindClose || k == kindComment || k == lexer.EOF
}

// misread notes why a header did not read. The token to blame is the one at which
// participle stopped.
func (p *parser) misread(first lexer.Token, err error) {
	blame := *p.tokens.Peek()
	var at participle.Error
	if errors.As(err, &at) {
		if unexpected := (*participle.UnexpectedTokenError)(nil); errors.As(err, &unexpected) {
			blame = unexpected.Unexpected
		}
	}
	for _, f := range p.found { // bad bytes and hidden characters are already known
		if f.Place.Start < span(blame).End && span(blame).Start < f.Place.End {
			return
		}
	}
	p.note(misreading(p, first, blame))
}

// body reads the block of a statement, from its opening to its closing brace.
func (p *parser) body(s *Statement, depth int) {
	open := *p.next()
	p.line = &s.Trail
	if depth+1 > MaxNesting {
		p.note(tooDeep.At(p.place(span(open)), fmt.Sprintf("blocks stand %d deep here, and %d is the most", depth+1, MaxNesting)))
		p.skipBlock()
		s.Broken = true
		return
	}
	end, leftOpen := p.ends[open.Pos.Offset]
	if !leftOpen {
		end = noEnd
	}
	b := p.block(depth+1, end)
	b.Start = open.Pos.Offset
	b.End = p.closing(openBlock{s, span(open)}, leftOpen)
	if n := len(b.Statements); n > 0 { // a name that is left open at the end of the file may end in what else ends a line
		b.End = max(b.End, b.Statements[n-1].End)
	}
	s.End = b.End
	if s.Body == nil {
		s.Body = &b
		p.line = &s.Body.Close
	}
}

// openAlone takes a brace on a line of its own as the block of the statement above.
func (p *parser) openAlone(b *Block, depth int) {
	if n := len(b.Statements); n > 0 && b.Statements[n-1].Body == nil {
		s := b.Statements[n-1]
		s.Lead = append(s.Lead, p.takeLead()...)
		p.body(s, depth)
		return
	}
	tok := p.tokens.Peek()
	p.note(strayBrace.At(p.place(span(*tok)), "a block needs a statement in front of it"))
	p.body(&Statement{Span: span(*tok), Verb: wordOf(*tok)}, depth)
	p.line = nil
}

// skipBlock passes over a block that is not read, to behind its closing brace.
func (p *parser) skipBlock() {
	for depth := 1; depth > 0; {
		switch p.next().Type {
		case kindOpen:
			depth++
		case kindClose:
			depth--
		case lexer.EOF:
			return
		}
	}
}

func (p *parser) place(s source.Span) source.Place { return source.Place{File: p.file, Span: s} }

func (p *parser) note(f finding.Finding) { p.found = append(p.found, f) }
