package highlight_test

import (
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"unicode"
	"unicode/utf8"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/lang/quantity"
	"maltwright/lang/source"
	"maltwright/lang/syntax"
	"maltwright/lang/vocabulary"
	"maltwright/lang/vocabulary/invent"
)

// kind is what a word is, as the language reads it and as an editor colours it.
type kind string

const (
	ofVerb    kind = "statement"
	ofClause  kind = "clause"
	ofBound   kind = "bound"
	ofRange   kind = "range"
	ofNumber  kind = "number"
	ofUnit    kind = "unit"
	ofTime    kind = "time"
	ofWord    kind = "word"
	ofText    kind = "text"
	ofComment kind = "comment"
	ofStray   kind = "stray"
	ofSign    kind = "brace or end"
)

// sample is a text that editors colour, and what each of its bytes is.
type sample struct {
	name, text string
	kinds      []kind // "" where it is not known: blanks, and statements that do not read
}

// samples are the examples, those that are meant to be broken too, the lines of the reference, and
// so many files as no person would write them.
func samples(t *testing.T, invented uint64) []sample {
	t.Helper()
	var list []sample
	for _, pattern := range []string{"*.malt", "*/*.malt"} {
		paths, err := filepath.Glob(filepath.Join("../../../examples", pattern))
		require.NoError(t, err)
		for _, path := range paths {
			text, err := os.ReadFile(path)
			require.NoError(t, err)
			list = append(list, newSample(path, text))
		}
	}
	require.Greater(t, len(list), 150)
	var lines strings.Builder
	for _, r := range vocabulary.Rows() {
		lines.WriteString(r.Example + "\n")
	}
	list = append(list, newSample("the lines of the reference", []byte(lines.String())))
	for seed := range invented {
		list = append(list, newSample(fmt.Sprintf("invented %d", seed), []byte(invent.File(seed))))
	}
	return slices.DeleteFunc(list, func(s sample) bool { // an editor shows such a file by another encoding, or not at all
		return !utf8.ValidString(s.text) || strings.ContainsRune(s.text, 0)
	})
}

func newSample(name string, text []byte) sample {
	text = []byte(strings.ReplaceAll(string(text), "\r\n", "\n"))
	f := source.New(name, text)
	tree, _ := syntax.Parse(f)
	s := sample{name, string(text), make([]kind, len(text))}
	if !utf8.Valid(text) {
		return s
	}
	s.block(&tree.Top)
	return s
}

func (s *sample) mark(at source.Span, k kind) {
	for i := at.Start; i < at.End; i++ {
		if s.kinds[i] == "" && !unicode.IsSpace(rune(s.text[i])) {
			s.kinds[i] = k
		}
	}
}

func (s *sample) comments(list ...*syntax.Comment) {
	for _, c := range list {
		if c != nil {
			s.mark(c.Span, ofComment)
		}
	}
}

func (s *sample) block(b *syntax.Block) {
	for _, st := range b.Statements {
		for i := range st.Lead {
			s.comments(&st.Lead[i])
		}
		s.comments(st.Trail)
		if !st.Broken {
			s.mark(st.Verb.Span, verbKind(st.Verb.Text))
			s.terms(st.Terms)
			for _, c := range st.Clauses {
				s.mark(c.Word.Span, ofClause)
				s.terms(c.Terms)
			}
		}
		if st.Body != nil {
			s.block(st.Body)
		}
	}
	for i := range b.Tail {
		s.comments(&b.Tail[i])
	}
	s.comments(b.Close)
}

// verbKind is what the first word of a statement is: one that the language does not know
// is a word like any other.
func verbKind(word string) kind {
	isLimit := func(l vocabulary.Limit) bool { return l.Word == word }
	if len(vocabulary.Homes(word)) == 0 && !slices.ContainsFunc(vocabulary.LimitNames(), isLimit) {
		return ofWord
	}
	return ofVerb
}

func (s *sample) terms(list []syntax.Term) {
	for _, t := range list {
		switch t := t.(type) {
		case syntax.Word:
			s.mark(t.Span, ofWord)
		case syntax.Text:
			s.mark(t.Span, ofText)
		case syntax.Bounded:
			s.mark(t.Bound.Span, ofBound)
			s.terms([]syntax.Term{t.Value})
		case syntax.Amount:
			s.quantity(t.Low)
			if t.High != nil {
				s.quantity(*t.High)
			}
			s.mark(t.Span, ofRange)
		case syntax.Moment:
			for _, w := range stamps(t) {
				s.mark(w.Span, ofTime)
			}
			s.mark(t.Span, ofRange)
		}
	}
}

func stamps(m syntax.Moment) []syntax.Word {
	list := []syntax.Word{m.From.Date, m.From.Clock}
	if m.To != nil {
		list = append(list, m.To.Date, m.To.Clock)
	}
	return list
}

// quantity marks numbers and units. One that the language does not know is no unit to an editor.
func (s *sample) quantity(q syntax.Quantity) {
	for _, p := range q.Parts {
		s.mark(p.Number.Span, ofNumber)
		if _, known := quantity.Lookup(p.Unit.Text); known || slices.Contains(quantity.Degrees(), p.Unit.Text) {
			s.mark(p.Unit.Span, ofUnit)
		} else {
			s.mark(p.Unit.Span, ofStray)
		}
	}
}

// compare lays what an editor says of each byte beside what the language does. What the language
// could not read must be coloured as something all the same.
func (s *sample) compare(t *testing.T, seen []kind) (words int) {
	t.Helper()
	require.Len(t, seen, len(s.text), s.name)
	var wrong []string
	for i := 0; i < len(s.text); {
		end := i + 1
		for end < len(s.text) && seen[end] == seen[i] && s.kinds[end] == s.kinds[i] && !blankAt(s.text, end) && !blankAt(s.text, i) {
			end++
		}
		switch want := s.kinds[i]; {
		case blankAt(s.text, i):
		case want == "" && seen[i] == "", want != "" && want != seen[i]:
			line := 1 + strings.Count(s.text[:i], "\n")
			wrong = append(wrong, fmt.Sprintf("%s:%d: %q is %q to the language and %q to the editor: %s", s.name, line, s.text[i:end], want, seen[i], lineAt(s.text, i)))
		default:
			words++
		}
		i = end
	}
	assert.Empty(t, wrong, s.name)
	return words
}

func lineAt(text string, at int) string {
	start := strings.LastIndexByte(text[:at], '\n') + 1
	line, _, _ := strings.Cut(text[start:], "\n")
	return strings.TrimSpace(line)
}

// blankAt tells whether a byte is a blank, or a part of a sign that is not seen.
func blankAt(text string, i int) bool {
	for i > 0 && !utf8.RuneStart(text[i]) {
		i--
	}
	r, _ := utf8.DecodeRuneInString(text[i:])
	return unicode.IsSpace(r) || r == '\ufeff'
}
