// Package layout writes a process file in the one canonical form.
//
// There is one style and no options. Indents are two spaces a block; clauses stand
// in the order of the vocabulary; units and bounds are spelt in one way; a
// definition of a few facts stands on one line, every other block on several, with
// an empty line around it. In a run of neighbouring single lines the values begin
// in one column, and so do the comments behind them. A line never depends on
// another further away, so that a changed fact stays a one-line change in version
// control.
//
// Four things hold for every file that reads: the output reads; it means the same;
// written again it is the same; every comment keeps its owner. The tests and a fuzz
// target hold them.
package layout

import (
	"bytes"
	"strings"
	"unicode/utf8"

	"maltwright/lang/source"
	"maltwright/lang/syntax"
	"maltwright/lang/vocabulary"
)

const (
	indent     = "  "
	mostFacts  = 3  // facts that a definition on one line may have
	mostWidth  = 80 // characters that such a line may have
	commentGap = "  "
)

// Write gives the file in the canonical form. The tree must have come from a parse
// without faults: what did not read is not in the tree, and would be lost. Lines end as
// the first one of the file does, and a byte-order mark stays: both are of the editor
// that the file is used with, and no part of the layout.
func Write(t *syntax.Tree) []byte {
	p := &printer{}
	p.block(&t.Top, vocabulary.File, 0)
	return EndedLike(t.File, p.out.Bytes())
}

// EndedLike gives a text whose lines end in \n the line ends and the byte-order mark of a
// file; where the file is nil they stay as they are.
func EndedLike(f *source.File, text []byte) []byte {
	if f == nil {
		return text
	}
	if end := lineEndOf(f.Bytes()); end != "\n" {
		text = bytes.ReplaceAll(text, []byte("\n"), []byte(end))
	}
	return append(bytes.Clone(f.Bytes()[:f.Start()]), text...)
}

// Statement gives one statement of a block of that kind in the canonical form, with
// its comments and its own block.
func Statement(s *syntax.Statement, in vocabulary.Block) string {
	p := &printer{}
	p.block(&syntax.Block{Statements: []*syntax.Statement{s}}, in, 0)
	return p.out.String()
}

type printer struct{ out bytes.Buffer }

// entry is one statement made ready: a single line, or a block over several.
type entry struct {
	s       *syntax.Statement
	in      vocabulary.Block
	head    string // of a single line: what stands before the alignment gap
	rest    string // and behind it
	comment string // behind the line
	single  bool
}

func (e *entry) blankAbove() bool {
	if len(e.s.Lead) > 0 {
		return e.s.Lead[0].Spaced
	}
	return e.s.Spaced
}

func (p *printer) block(b *syntax.Block, in vocabulary.Block, depth int) {
	entries := make([]entry, len(b.Statements))
	for i, s := range b.Statements {
		entries[i] = makeEntry(s, in)
	}
	for i := 0; i < len(entries); {
		n := runOf(entries[i:])
		align(entries[i : i+n])
		for k := i; k < i+n; k++ {
			p.entry(&entries[k], depth, k > 0 && (entries[k].blankAbove() || !entries[k].single || !entries[k-1].single))
		}
		i += n
	}
	for i, c := range b.Tail {
		if c.Spaced && (i > 0 || len(entries) > 0) || i == 0 && len(entries) > 0 && !entries[len(entries)-1].single {
			p.out.WriteByte('\n')
		}
		p.line(depth, comment(&c))
	}
}

// runOf is how many entries from the first on stand on neighbouring single lines of
// the same shape.
func runOf(entries []entry) int {
	n := 1
	for n < len(entries) && entries[0].single && entries[n].single && !entries[n].blankAbove() && len(entries[n].s.Lead) == 0 &&
		(entries[0].s.Body == nil) == (entries[n].s.Body == nil) {
		n++
	}
	return n
}

// align gives the values of a run one column, and the comments behind them another.
func align(run []entry) {
	if !run[0].single {
		return
	}
	widest := 0
	for i := range run {
		widest = max(widest, width(run[i].head))
	}
	line := 0
	for i := range run {
		e := &run[i]
		if e.rest != "" {
			e.head += strings.Repeat(" ", widest-width(e.head)+1)
		}
		e.head, e.rest = e.head+e.rest, ""
		if e.comment != "" {
			line = max(line, width(e.head))
		}
	}
	for i := range run {
		if e := &run[i]; e.comment != "" {
			e.head += strings.Repeat(" ", line-width(e.head)) + commentGap + e.comment
		}
	}
}

func width(s string) int { return utf8.RuneCountInString(s) }

// entry writes one statement with the comments above it.
func (p *printer) entry(e *entry, depth int, blank bool) {
	if blank {
		p.out.WriteByte('\n')
	}
	for i := range e.s.Lead {
		if i > 0 && e.s.Lead[i].Spaced {
			p.out.WriteByte('\n')
		}
		p.line(depth, comment(&e.s.Lead[i]))
	}
	if len(e.s.Lead) > 0 && e.s.Spaced {
		p.out.WriteByte('\n')
	}
	if e.single {
		p.line(depth, e.head)
		return
	}
	p.line(depth, header(e.s, e.in)+" {"+behind(e.s.Trail))
	p.block(e.s.Body, vocabulary.Opens(e.in, e.s.Verb.Text), depth+1)
	p.line(depth, "}"+behind(e.s.Body.Close))
}

func behind(c *syntax.Comment) string {
	if c == nil {
		return ""
	}
	return commentGap + comment(c)
}

func (p *printer) line(depth int, text string) {
	p.out.WriteString(strings.Repeat(indent, depth))
	p.out.WriteString(text)
	p.out.WriteByte('\n')
}

// comment writes a comment with one space behind its sign, unless it is a rule of
// signs such as ####.
func comment(c *syntax.Comment) string {
	text := strings.TrimRight(c.Text, " \t\u00a0")
	if body := text[1:]; body != "" && !strings.HasPrefix(body, " ") && !strings.HasPrefix(body, "#") && !strings.HasPrefix(body, "\t") {
		return "# " + body
	}
	return text
}

// makeEntry decides whether a statement stands on one line, and parts that line at
// the place where it aligns.
func makeEntry(s *syntax.Statement, in vocabulary.Block) entry {
	e := entry{s: s, in: in, single: s.Body == nil}
	if s.Body == nil {
		e.head, e.rest = s.Verb.Text, strings.TrimPrefix(strings.TrimPrefix(header(s, in), s.Verb.Text), " ")
		if s.Trail != nil {
			e.comment = comment(s.Trail)
		}
		return e
	}
	if body, ok := oneLine(s, in); ok {
		e.single, e.head, e.rest = true, header(s, in), body
		if s.Body.Close != nil {
			e.comment = comment(s.Body.Close)
		}
	}
	return e
}

// oneLine gives the block of a definition that stands on one line.
func oneLine(s *syntax.Statement, in vocabulary.Block) (string, bool) {
	b := s.Body
	if in != vocabulary.File || vocabulary.Grows(in, s.Verb.Text) || s.Trail != nil || len(b.Tail) > 0 || len(b.Statements) > mostFacts {
		return "", false
	}
	var facts []string
	inner := vocabulary.Opens(in, s.Verb.Text)
	for _, f := range b.Statements {
		if f.Body != nil || len(f.Lead) > 0 || f.Trail != nil {
			return "", false
		}
		facts = append(facts, header(f, inner))
	}
	body := "{ " + strings.Join(facts, "; ") + " }"
	if len(facts) == 0 {
		body = "{}"
	}
	return body, width(header(s, in))+1+width(body) <= mostWidth
}
