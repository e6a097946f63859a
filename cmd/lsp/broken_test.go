package lsp

import (
	"context"
	"io"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/cmd/lsp/desk"
	"maltwright/cmd/lsp/typist"
	"maltwright/cmd/lsp/wire"
	"maltwright/lang/outline"
	"maltwright/lang/source"
	"maltwright/lang/source/golden"
	"maltwright/lang/syntax"
)

// broken are the texts that come of a file when each of its statements is broken in turn: its verb and all behind it
// to its block is no statement. At is that statement.
func broken(text string, each func(with string, at *syntax.Statement)) {
	tree, _ := syntax.Parse(source.New("x.malt", []byte(text)))
	var walk func(list []*syntax.Statement)
	walk = func(list []*syntax.Statement) {
		for _, s := range list {
			// as long as before, so that all else stays in its place
			each(text[:s.Verb.Start]+strings.Repeat("?", s.Verb.End-s.Verb.Start)+text[s.Verb.End:], s)
			if s.Body != nil {
				walk(s.Body.Statements)
			}
		}
	}
	walk(tree.Top.Statements)
}

// leaves are the statements of a text without a block, which lie outside of a span.
func leaves(tree *syntax.Tree, outside source.Span) (list []*syntax.Statement) {
	var walk func(in []*syntax.Statement)
	walk = func(in []*syntax.Statement) {
		for _, s := range in {
			switch {
			case s.Body != nil:
				walk(s.Body.Statements)
			case s.End <= outside.Start || outside.End <= s.Start:
				list = append(list, s)
			}
		}
	}
	walk(tree.Top.Statements)
	return list
}

// While a statement of a file is broken, all that does not need it is answered as before: symbols, hover, completion,
// names, folds, kinds of words, in every example and in the house that it uses.
func TestEverythingElseGoesOnWhileAStatementIsBroken(t *testing.T) {
	paths, err := filepath.Glob("../../examples/*.malt")
	require.NoError(t, err)
	batches, _ := filepath.Glob("../../examples/batches/*.malt")
	for i, path := range append(paths, batches...) {
		path, err := filepath.Abs(path)
		require.NoError(t, err)
		s := newSession(io.Discard, Options{}.whole())
		s.ctx, s.leave = context.WithCancel(context.Background())
		s.client.TextDocument.DocumentSymbol.HierarchicalDocumentSymbolSupport = true
		whole, err := s.desk.Now().Doc(path)
		require.NoError(t, err)
		text, n := string(whole.Text()), 0
		before := newAsker(t, s, path, text)
		broken(text, func(with string, at *syntax.Statement) {
			if n++; !golden.Long() && (n+i)%7 != 0 {
				return
			}
			before.holds(with, at)
		})
	}
}

// asker asks of a document what is asked while one writes in it.
type asker struct {
	*testing.T
	s       *session
	path    string
	version int32
	whole   *syntax.Tree
	hovers  map[int]bool // by the place of a verb, whether something is said there
	offers  map[int]bool
	symbols []outline.Symbol
}

func newAsker(t *testing.T, s *session, path, text string) *asker {
	b := &asker{T: t, s: s, path: path, hovers: map[int]bool{}, offers: map[int]bool{}}
	b.s.desk.Open(desk.URI(path), 1, text)
	doc := b.doc()
	b.whole, b.symbols = doc.Tree(), outline.Symbols(doc.Tree())
	for _, st := range leaves(b.whole, source.Span{}) {
		b.hovers[st.Start], b.offers[st.Start] = b.hover(doc, st.Start) != nil, b.offered(doc, st.Start) > 0
	}
	return b
}

func (b *asker) doc() *desk.Doc {
	doc, err := b.s.desk.Now().Doc(b.path)
	require.NoError(b, err)
	return doc
}

func (b *asker) at(doc *desk.Doc, offset int) wire.TextDocumentPositionParams {
	return wire.TextDocumentPositionParams{TextDocument: wire.TextDocumentIdentifier{URI: desk.URI(b.path)}, Position: desk.Position(doc.File, offset, source.UTF16)}
}

func (b *asker) hover(doc *desk.Doc, offset int) *wire.Hover {
	h, err := hover(b.s.ctx, b.s, b.s.desk.Now(), wire.HoverParams(b.at(doc, offset)))
	require.NoError(b, err)
	return h
}

func (b *asker) offered(doc *desk.Doc, offset int) int {
	p := b.at(doc, offset)
	list, err := completion(b.s.ctx, b.s, b.s.desk.Now(), wire.CompletionParams{TextDocument: p.TextDocument, Position: p.Position})
	require.NoError(b, err)
	return len(list.Items)
}

func (b *asker) holds(text string, at *syntax.Statement) {
	b.version++
	b.s.desk.Open(desk.URI(b.path), b.version, text)
	doc := b.doc()
	said := b.path + ": " + b.whole.File.Text(at.Head())
	list := leaves(b.whole, at.Span)
	for i, st := range list {
		if len(list) > 6 && (i+int(b.version))%(len(list)/6) != 0 {
			continue
		}
		assert.Equal(b, b.hovers[st.Start], b.hover(doc, st.Start) != nil, "hover of %q\n%s", b.whole.File.Text(st.Head()), said)
		assert.Equal(b, b.offers[st.Start], b.offered(doc, st.Start) > 0, "completion of %q\n%s", b.whole.File.Text(st.Head()), said)
	}
	b.sameSymbols(b.symbols, outline.Symbols(doc.Tree()), at, said)
	// each name that does not stand in the broken statement is known as one, and leads to where it is defined
	now := map[int]outline.Name{}
	for _, n := range outline.Names(doc.Tree()) {
		now[n.Place.Start] = n
	}
	for _, n := range outline.Names(b.whole) {
		if n.Place.Start >= at.Start && n.Place.End <= at.End {
			continue
		}
		is, ok := now[n.Place.Start]
		assert.True(b, ok && is.Kind == n.Kind && is.Text == n.Text, "the name %q\n%s", n.Text, said)
	}
}

// sameSymbols holds that a symbol outside of the broken statement is still listed. The days of a record go by the dates
// that its statements name.
func (b *asker) sameSymbols(was, is []outline.Symbol, at *syntax.Statement, said string) {
	have := map[int]string{}
	var walk func([]outline.Symbol, func(outline.Symbol))
	walk = func(list []outline.Symbol, each func(outline.Symbol)) {
		for _, s := range list {
			if s.Kind != outline.Day {
				each(s)
			}
			walk(s.Inside, each)
		}
	}
	walk(is, func(s outline.Symbol) { have[s.Whole.Start] = s.Name })
	walk(was, func(s outline.Symbol) {
		if s.Whole.Start < at.Start || s.Whole.End > at.End {
			assert.Equal(b, s.Name, have[s.Whole.Start], "a symbol\n%s", said)
		}
	})
}

// Hints of the stages before stay while a statement of one is broken, and all of them while one of the house is.
func TestHintsOfStagesBeforeStayWhileAStatementIsBroken(t *testing.T) {
	c := loft(t)
	pale := c.Text("pale.malt")
	before := hints(c, "pale.malt")
	require.Greater(t, len(before), 5)
	words := []string{"soak", "wither", "dry", "cure"}
	n := 0
	broken(pale, func(with string, at *syntax.Statement) {
		if n++; at.Body != nil || at.Verb.Text == "use" || !golden.Long() && n%5 != 0 {
			return
		}
		c.Change("pale.malt", with, wire.TextDocumentContentChangeEvent{Text: with})
		c.Found("pale.malt")
		for _, w := range words { // what a forecast says of a stage comes of all that stands before its end
			if before := strings.Index(pale, w); stageOf(pale, before) != stageOf(pale, at.Start) && before < at.Start {
				soon(t, "a hint at "+w+" while "+at.Verb.Text+" is broken", func() bool { return hintAt(c, w) != "" })
			}
		}
	})
	c.Change("pale.malt", pale, wire.TextDocumentContentChangeEvent{Text: pale})
	soon(t, "all hints again", func() bool { return len(hints(c, "pale.malt")) >= len(before) })
	c.Open("loft.malt")
	house := c.Text("loft.malt")
	n = 0
	broken(house, func(with string, at *syntax.Statement) {
		if n++; !golden.Long() && n%9 != 0 {
			return
		}
		c.Change("loft.malt", with, wire.TextDocumentContentChangeEvent{Text: with})
		c.Found("loft.malt")
		for end := time.Now().Add(time.Second); len(hints(c, "pale.malt")) < len(before) && time.Now().Before(end); {
			time.Sleep(20 * time.Millisecond)
		}
		assert.GreaterOrEqual(t, len(hints(c, "pale.malt")), len(before), "while %q of the house is broken", at.Verb.Text)
	})
}

func hintAt(c *typist.Typist, word string) string { return with(hints(c, "pale.malt"), word) }

// stageOf is the stage of a process in which an offset lies, by its verb.
func stageOf(text string, offset int) string {
	tree, _ := syntax.Parse(source.New("x.malt", []byte(text)))
	for _, p := range tree.Top.Statements {
		if p.Body == nil {
			continue
		}
		for _, s := range p.Body.Statements {
			if s.Start <= offset && offset < s.End {
				return s.Verb.Text
			}
		}
	}
	return ""
}
