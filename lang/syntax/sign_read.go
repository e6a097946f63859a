package syntax

import (
	"regexp"
	"sort"
	"strings"
	"unicode/utf8"

	"github.com/alecthomas/participle/v2/lexer"

	"maltwright/lang/source"
	"maltwright/lang/vocabulary"
)

// signReader looks for signs in the tokens of a text.
type signReader struct {
	file    *source.File
	text    string
	toks    []lexer.Token // the last is the end of the file
	changes []change
	opens   map[int]bool // by their offsets, signs that stand for braces
	closes  map[int]int  // how many of them

	in       []vocabulary.Block // the blocks that are open, outer first
	first    int                // the first token of the statement that is read
	capitals bool               // several lines begin with a capital
	named    int                // names whose ends were looked for
}

func newSignReader(f *source.File) *signReader {
	text := string(f.Bytes())
	capitals := len(capitalLine.FindAllStringIndex(text, leastCapitals)) == leastCapitals
	return &signReader{file: f, text: text, capitals: capitals, toks: tokensOf(text), opens: map[int]bool{}, closes: map[int]int{}, in: []vocabulary.Block{vocabulary.File}}
}

// leastCapitals is how many lines that begin with a capital make it the way a file is written.
const leastCapitals = 4

var capitalLine = regexp.MustCompile(`(?m)^[ \t]*[A-Z]`)

func (r *signReader) add(s *sign, start, end int, text string) {
	r.changes = append(r.changes, change{Span: source.Span{Start: start, End: end}, text: text, sign: s})
}

// said adds a change that is told in words of its own.
func (r *signReader) said(s *sign, start, end int, text, says, do string) {
	r.changes = append(r.changes, change{Span: source.Span{Start: start, End: end}, text: text, sign: s, says: says, do: do})
}

// read goes through the tokens.
func (r *signReader) read() {
	r.first = -1
	for i := 0; i < len(r.toks)-1; {
		next := r.one(i)
		if next <= i {
			next = i + 1
		}
		i = next
	}
}

// one looks at one token, and gives the next to look at.
func (r *signReader) one(i int) int {
	t := r.toks[i]
	switch {
	case r.opens[t.Pos.Offset] || t.Type == kindOpen:
		r.open()
		return i + 1
	case r.closes[t.Pos.Offset] > 0 || t.Type == kindClose:
		n := r.closes[t.Pos.Offset]
		if t.Type == kindClose {
			n++
		}
		for range n {
			r.close()
		}
		return i + 1
	case t.Type == kindEnd && t.Value != ";":
		r.first = -1
		return i + 1
	}
	if next := r.commentAt(i); next > i {
		return next
	}
	if t.Type == kindEnd {
		r.first = -1
		return i + 1
	}
	if r.first < 0 && r.continued(i) {
		r.first = r.above(i)
		return i + 1
	}
	if r.first < 0 {
		if next := r.bullet(i); next > i {
			return next
		}
		if next := r.remark(i); next > i {
			return next
		}
		r.first = i
		r.smallWord(i)
		r.header(i)
	}
	for _, look := range signReaders {
		if next := look(r, i); next > i {
			return next
		}
	}
	return i + 1
}

// smallWord writes a word small that opens a block, where lines begin with capitals throughout; a
// single one is told of as a word.
func (r *signReader) smallWord(i int) {
	t := r.toks[i]
	lower := strings.ToLower(t.Value)
	if t.Type == kindWord && lower != t.Value && r.capitals && vocabulary.Opens(r.block(), t.Value) == vocabulary.None && vocabulary.Opens(r.block(), lower) != vocabulary.None {
		r.add(signCapital, t.Pos.Offset, endOf(t), lower)
		r.toks[i].Value = lower
	}
}

// signReaders each look for one kind of sign at a token, and give the token behind it, or the
// same one where there is none.
var signReaders = []func(*signReader, int) int{
	(*signReader).figure, (*signReader).heatAt, (*signReader).split, (*signReader).counted, (*signReader).goesOnBelow, (*signReader).hyphen, (*signReader).degreeRange, (*signReader).spread, (*signReader).ranged, (*signReader).about, (*signReader).arrow, (*signReader).quoted, (*signReader).unclosed,
	(*signReader).bracketed, (*signReader).small, (*signReader).colon, (*signReader).comma, (*signReader).dash, (*signReader).stop,
}

func (r *signReader) open() {
	block := vocabulary.None
	if r.first >= 0 {
		block = vocabulary.Opens(r.block(), r.toks[r.first].Value)
	}
	r.in, r.first = append(r.in, block), -1
}

func (r *signReader) close() {
	if len(r.in) > 1 {
		r.in = r.in[:len(r.in)-1]
	}
	r.first = -1
}

func (r *signReader) block() vocabulary.Block { return r.in[len(r.in)-1] }

// begins tells whether a word begins a statement in the block that is read; of a block that is
// not known, whether it does so anywhere.
func (r *signReader) begins(t lexer.Token) bool {
	if t.Type != kindWord && t.Type != kindClause {
		return false
	}
	if r.block() == vocabulary.None {
		return len(vocabulary.Homes(t.Value)) > 0
	}
	_, ok := vocabulary.Lookup(r.block(), vocabulary.Today(t.Value))
	return ok
}

// row is that of the statement that is read.
func (r *signReader) row() (*vocabulary.Row, bool) {
	if r.first < 0 {
		return nil, false
	}
	return vocabulary.Lookup(r.block(), vocabulary.Today(r.toks[r.first].Value))
}

func (r *signReader) tok(i int) lexer.Token {
	if i < 0 || i >= len(r.toks) {
		return r.toks[len(r.toks)-1]
	}
	return r.toks[i]
}

// before is the token in front of another one in its statement; ok is false where there is none.
func (r *signReader) before(i int) (t lexer.Token, ok bool) {
	if i == 0 || r.first < 0 || i <= r.first {
		return t, false
	}
	return r.toks[i-1], true
}

// above is the first token of the statement on the line above.
func (r *signReader) above(i int) int {
	for i -= 2; i > 0 && !terminal(r.toks[i-1].Type); i-- {
	}
	return i
}

func (r *signReader) is(i int, sign string) bool {
	return r.tok(i).Type == kindStray && r.tok(i).Value == sign
}

func endOf(t lexer.Token) int { return t.Pos.Offset + len(t.Value) }

// from gives the first token that begins at an offset or behind it.
func (r *signReader) from(i, offset int) int {
	more := sort.Search(len(r.toks)-1-i, func(k int) bool { return r.toks[i+k].Pos.Offset >= offset })
	return i + more
}

// lineStart tells whether nothing but blanks stands in front of an offset on its line.
func (r *signReader) lineStart(at int) bool {
	front := strings.TrimRight(r.text[r.file.Start():at], blanks)
	return front == "" || strings.HasSuffix(front, "\n") || strings.HasSuffix(front, "\r")
}

func (r *signReader) lineEnd(at int) int {
	if i := strings.IndexAny(r.text[at:], "\r\n"); i >= 0 {
		return at + i
	}
	return len(r.text)
}

// indent is the blanks at the start of the line that an offset lies in.
func (r *signReader) indent(at int) string {
	start := strings.LastIndexAny(r.text[:at], "\r\n") + 1
	start = max(start, r.file.Start())
	rest := r.text[start:]
	return rest[:len(rest)-len(strings.TrimLeft(rest, " \t"))]
}

// apart is a word as it stands between what is in front of it and what is behind.
func (r *signReader) apart(start, end int, word string) string {
	if start > 0 && !strings.ContainsAny(r.text[start-1:start], blanks+"\r\n") {
		word = " " + word
	}
	if end < len(r.text) && !strings.ContainsAny(r.text[end:end+1], blanks+"\r\n;") {
		word += " "
	}
	return word
}

func firstRune(text string) rune {
	c, _ := utf8.DecodeRuneInString(text)
	return c
}
