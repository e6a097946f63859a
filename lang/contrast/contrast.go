// Package contrast says what changed between two files by what they mean: not a
// line, but a soak that got longer, a gate that went, a stage that moved.
//
// # How it works
//
// Each statement has a saying: its verb, values and clauses with every quantity in
// SI, so that 59 °F and 15 °C are the same, and with comments, layout, the order of
// clauses and words that only make a line read well left out. Two blocks are
// compared by matching their statements (match.go). What has no partner is new or
// gone. A matched pair that does not say the same has changed, and its blocks are
// compared in turn. Only where the order means something - stages, steps and gates,
// but not the facts of a house - has a statement in another place moved.
package contrast

import (
	"fmt"
	"slices"
	"strings"

	"maltwright/lang/source"
	"maltwright/lang/syntax"
	"maltwright/lang/vocabulary"
)

// Kind is what became of a statement.
type Kind int

// The kinds of change.
const (
	Changed Kind = iota
	Added
	Removed
	Moved
)

var kindWords = [...]string{"changed", "new", "gone", "moved"}

// String is the word for the kind.
func (k Kind) String() string {
	if k < 0 || int(k) >= len(kindWords) {
		return "unknown"
	}
	return kindWords[k]
}

// Change is one thing that is otherwise.
type Change struct {
	Kind     Kind
	Path     []string // the statements around it: process "Loft pale", steep
	Old, New Side     // empty where there is none
	Parts    []Part   // of Changed: the values and clauses that differ
	Of       string   // of Changed: the lot or kiln that both sides are a figure of, in quotes
}

// Side is a statement on one of the two sides.
type Side struct {
	Place source.Place
	Text  string // its head, as written
}

// Part is a value or clause that differs; a side where it does not stand is "".
type Part struct{ What, Old, New string }

// Files compares two houses of files, each in the order in which it was read. Use
// statements do not count: what they bring in does.
func Files(old, new []*syntax.Tree) []Change {
	c := &comparison{}
	c.blocks(top(old), top(new), vocabulary.File, nil)
	return c.out
}

// statements are those of a block, and the file of each.
type statements struct {
	list  []*syntax.Statement
	files []*source.File
}

func top(trees []*syntax.Tree) statements {
	var all statements
	for _, t := range trees {
		for _, s := range t.Top.Statements {
			if !vocabulary.Includes(s.Verb.Text) {
				all.list, all.files = append(all.list, lowered(s, vocabulary.File)), append(all.files, t.File)
			}
		}
	}
	return all
}

// inside gives the statements of the block of one, which is of a kind.
func (s statements) inside(i int, kind vocabulary.Block) statements {
	body := s.list[i].Body
	if body == nil {
		return statements{}
	}
	in := statements{make([]*syntax.Statement, len(body.Statements)), slices.Repeat(s.files[i:i+1], len(body.Statements))}
	for k, t := range body.Statements {
		in.list[k] = lowered(t, kind)
	}
	return in
}

// lowered is the statement with those clauses that may as well stand in its block,
// such as the until of a stage, as statements of the block: they mean the same.
func lowered(s *syntax.Statement, in vocabulary.Block) *syntax.Statement {
	out, block := *s, syntax.Block{}
	out.Clauses = nil
	for _, c := range s.Clauses {
		if _, ok := vocabulary.Lookup(vocabulary.Opens(in, s.Verb.Text), c.Word.Text); ok {
			block.Statements = append(block.Statements, &syntax.Statement{Span: c.Span, Verb: c.Word, Terms: c.Terms})
		} else {
			out.Clauses = append(out.Clauses, c)
		}
	}
	if len(block.Statements) == 0 {
		return s
	}
	if s.Body != nil {
		block.Statements = append(block.Statements, s.Body.Statements...)
	}
	out.Body = &block
	return &out
}

// side shows one of the statements; without one it is empty.
func (s statements) side(i int) Side {
	if i < 0 {
		return Side{}
	}
	p := source.Place{File: s.files[i], Span: s.list[i].Head()}
	return Side{p, strings.Join(strings.Fields(p.Text()), " ")}
}

type comparison struct{ out []Change }

func (c *comparison) blocks(old, new statements, in vocabulary.Block, path []string) {
	titles := titlesOf(new.list, in)
	for _, p := range Match(old.list, new.list, in) {
		change := Change{Path: path, Old: old.side(p.Old), New: new.side(p.New)}
		switch {
		case p.New < 0:
			change.Kind = Removed
			c.out = append(c.out, change)
		case p.Old < 0:
			change.Kind = Added
			c.out = append(c.out, change)
		default:
			c.pair(old, new, p, in, change, titles)
		}
	}
}

func (c *comparison) pair(old, new statements, p Pair, in vocabulary.Block, change Change, titles []string) {
	a, b := old.list[p.Old], new.list[p.New]
	if p.Moved {
		change.Kind = Moved
		c.out = append(c.out, change)
	}
	if saying(a, in) != saying(b, in) {
		change.Kind, change.Parts, change.Of = Changed, parts(a, b, in), figureOf(b, in)
		c.out = append(c.out, change)
	}
	path := append(change.Path[:len(change.Path):len(change.Path)], titles[p.New])
	kind := vocabulary.Opens(in, b.Verb.Text)
	c.blocks(old.inside(p.Old, kind), new.inside(p.New, kind), kind, path)
}

// titlesOf names statements as places: steep, process "Loft pale", germinate 2 where a
// process has several.
func titlesOf(list []*syntax.Statement, in vocabulary.Block) []string {
	titles, count, seen := make([]string, len(list)), map[string]int{}, map[string]int{}
	for i, s := range list {
		titles[i] = s.Verb.Text
		if len(s.Terms) > 0 {
			if t, ok := s.Terms[0].(syntax.Text); ok {
				titles[i] = fmt.Sprintf("%s %q", s.Verb.Text, t.Value)
			}
		}
		count[titles[i]]++
	}
	for i, title := range titles {
		seen[title]++
		if in == vocabulary.Process && count[title] > 1 && vocabulary.Ordered(in, title) {
			titles[i] = fmt.Sprintf("%s %d", title, seen[title])
		}
	}
	return titles
}
