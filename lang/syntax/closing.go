package syntax

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"maltwright/lang/finding"
	"maltwright/lang/source"
)

// Where a closing brace is missing, the braces below it all close the wrong block
// and the end of the file finds an outer one open. The block that was left open
// shows by its indentation: the brace that closed it stands further out than it.

type openBlock struct {
	of    *Statement
	brace source.Span
}

// closing takes the closing brace and gives the offset behind it.
func (p *parser) closing(open openBlock, leftOpen bool) int {
	tok := p.tokens.Peek()
	if tok.Type == kindClose && !leftOpen {
		if p.suspect == nil && p.furtherOut(tok.Pos.Offset, open.of.Start) {
			p.suspect = &open
		}
		if p.early == nil && p.tooEarly(tok.Pos.Offset, open) {
			p.early = &earlyClose{open.of, span(*tok)}
		}
		p.next()
		return tok.Pos.Offset + 1
	}
	if !p.full() && !leftOpen {
		p.note(p.leftOpen(open))
	}
	inside := p.file.Text(source.Span{Start: open.brace.End, End: tok.Pos.Offset})
	return open.brace.End + len(strings.TrimRight(inside, blanks+"\r\n;"))
}

// earlyClose is a brace that most likely closes its block too early.
type earlyClose struct {
	of    *Statement
	brace source.Span
}

// tooEarly tells whether the brace of a block over several lines stands behind other
// words of its line, or further in than the head of the block.
func (p *parser) tooEarly(brace int, open openBlock) bool {
	if p.surplus[brace] || p.file.Position(brace, source.Bytes).Line == p.file.Position(open.brace.Start, source.Bytes).Line {
		return false
	}
	out, alone := p.indent(brace)
	in, first := p.indent(open.of.Start)
	return !alone || first && (out > in || p.indentBelow(brace) > in)
}

// indentBelow is how far in the next line below a place stands that is no comment, 0 where there is none.
func (p *parser) indentBelow(at int) int {
	for n := p.file.Position(at, source.Bytes).Line + 1; n <= p.file.Lines(); n++ {
		line := p.file.Text(p.file.Line(n))
		if text := strings.Trim(line, blanks+"\r\n"); text != "" && text[0] != '#' {
			in, _ := p.indent(p.file.Line(n).Start + strings.Index(line, text))
			return in
		}
	}
	return 0
}

// tooMany tells of a brace that closes no block. Where one above it closes its block
// too early, that one is to blame, and a second reading leaves it out.
func (p *parser) tooMany(stray source.Span) finding.Finding {
	if p.early == nil || p.ends != nil {
		return strayBrace.At(p.place(stray), "this brace closes no block")
	}
	early := *p.early
	p.early = nil
	if p.surplus == nil {
		p.surplus = map[int]bool{}
	}
	p.surplus[early.brace.Start] = true
	f := strayBrace.At(p.place(early.brace), fmt.Sprintf("this brace seems to be one too many: it ends the block of %s", early.of.Verb.Text))
	f.Related = []finding.Related{{Place: p.place(stray), Message: "so this one closes no block"}}
	withoutIt(&f)
	return f
}

// leftOpen tells of a block that the end of the file found open. With another to
// blame for it, it is itself the one to blame for the next further out.
func (p *parser) leftOpen(open openBlock) finding.Finding {
	blame := open
	if p.suspect != nil {
		blame, p.suspect = *p.suspect, &open
	}
	p.blamed = append(p.blamed, blame)
	f := unclosedBlock.At(p.place(blame.brace), fmt.Sprintf("the block of %s is not closed", blame.of.Verb.Text))
	p.offerClosing(&f, blame)
	if blame.brace != open.brace {
		f.Related = []finding.Related{{Place: p.place(open.brace),
			Message: fmt.Sprintf("so the end of the file finds the block of %s open", open.of.Verb.Text)}}
	}
	return f
}

// offerClosing offers the brace of a block that was left open, below the last line that is its own by
// its indentation.
func (p *parser) offerClosing(f *finding.Finding, open openBlock) {
	in, first := p.indent(open.of.Start)
	if !first {
		return
	}
	text := p.file.Text(source.Span{End: p.likelyEnd(open)})
	at := len(strings.TrimRight(text, blanks+"\r\n"))
	if at < open.brace.End {
		return
	}
	f.Hint = fmt.Sprintf("put } below line %d, where the indentation says that it ends", p.file.Position(at, source.Bytes).Line)
	f.Offers = []finding.Offer{{Says: "}", Edits: []finding.Edit{{Place: p.place(source.Span{Start: at, End: at}), New: "\n" + strings.Repeat(" ", in) + "}"}}}}
}

// noEnd is the end of a block that its brace or the end of the file closes.
const noEnd = math.MaxInt

// again makes a parser for a second reading, in which the blocks that were left
// open end where their indentation says. So one missing brace does not make all
// below it stand in the wrong block. What the first reading found of braces stays.
func (p *parser) again(found []finding.Finding) *parser {
	q := &parser{file: p.file, tokens: p.tokens, ends: map[int]int{}, surplus: p.surplus}
	q.found = slices.Clip(found)
	for _, f := range p.found {
		if f.Rule == unclosedBlock.Name || f.Rule == strayBrace.Name && p.surplus[f.Place.Start] {
			q.found = append(q.found, f)
		}
	}
	for _, open := range p.blamed {
		q.ends[open.brace.Start] = p.likelyEnd(open)
	}
	return q
}

// likelyEnd gives the offset of the first line below a block's head that is not
// indented further than the head, or the end of the file.
func (p *parser) likelyEnd(open openBlock) int {
	in, first := p.indent(open.of.Start)
	if !first {
		return p.file.Size()
	}
	for n := p.file.Position(open.brace.Start, source.Bytes).Line + 1; n <= p.file.Lines(); n++ {
		line := p.file.Line(n)
		text := p.file.Text(line)
		if rest := strings.TrimLeft(text, " \t"); rest != "" && rest[0] != '#' && len(text)-len(rest) <= in {
			return line.Start
		}
	}
	return p.file.Size()
}

// furtherOut tells whether a brace is the first of its line and stands further to
// the left than the statement, which is the first of its own.
func (p *parser) furtherOut(brace, statement int) bool {
	out, alone := p.indent(brace)
	in, first := p.indent(statement)
	return alone && first && out < in
}

// indent counts the blanks in front of an offset, and tells whether nothing else
// stands there on its line.
func (p *parser) indent(offset int) (blanks int, first bool) {
	text, at := p.file.Bytes(), offset
	for at > p.file.Start() && (text[at-1] == ' ' || text[at-1] == '\t') {
		at--
	}
	return offset - at, at == p.file.Start() || text[at-1] == '\n' || text[at-1] == '\r'
}

// withoutIt offers the line without a brace that has no partner.
func withoutIt(f *finding.Finding) {
	const says = "the line without it"
	f.Hint = "look which brace has no partner: where this one is too many, write " + says
	f.Offers = []finding.Offer{{Says: says, Edits: []finding.Edit{{Place: f.Place}}}}
}
