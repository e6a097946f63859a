// Package contrast says what changed between two files by what they mean: not a
// line, but a soak that got longer, a gate that went, a stage that moved.
//
// # How it works
//
// Each statement has a saying: its verb, values and clauses with every quantity in
// SI, so that 59 °F and 15 °C are the same, and with comments, layout and the order
// of clauses left out. Two blocks are compared by matching their statements in
// three rounds: first those that say the same and keep their order (by patience:
// sayings that stand once on both sides, their longest rising run, and the equal
// neighbours around it); then, between these, those of the same verb and name, in
// order; then what is left on both sides and says the same, which has moved. What is
// left after that is new or gone. A matched pair that does not say the same has
// changed, and its blocks are compared in turn.
package contrast

import (
	"fmt"
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
	c.blocks(statements(old), statements(new), vocabulary.File, nil)
	return c.out
}

// located is a statement and its file.
type located struct {
	s    *syntax.Statement
	file *source.File
	say  string // what its head says
}

func statements(trees []*syntax.Tree) []located {
	var list []located
	for _, t := range trees {
		for _, s := range t.Top.Statements {
			if s.Verb.Text != "use" {
				list = append(list, located{s, t.File, saying(s, vocabulary.File)})
			}
		}
	}
	return list
}

func inside(l located, in vocabulary.Block) []located {
	if l.s.Body == nil {
		return nil
	}
	list := make([]located, len(l.s.Body.Statements))
	for i, s := range l.s.Body.Statements {
		list[i] = located{s, l.file, saying(s, in)}
	}
	return list
}

func (l located) side() Side {
	p := source.Place{File: l.file, Span: l.s.Head()}
	return Side{p, strings.Join(strings.Fields(p.Text()), " ")}
}

type comparison struct{ out []Change }

func (c *comparison) blocks(old, new []located, in vocabulary.Block, path []string) {
	for _, p := range match(old, new) {
		switch {
		case p.new == nil:
			c.out = append(c.out, Change{Kind: Removed, Path: path, Old: p.old.side()})
		case p.old == nil:
			c.out = append(c.out, Change{Kind: Added, Path: path, New: p.new.side()})
		default:
			c.pair(p, in, path)
		}
	}
}

func (c *comparison) pair(p pair, in vocabulary.Block, path []string) {
	if p.moved {
		c.out = append(c.out, Change{Kind: Moved, Path: path, Old: p.old.side(), New: p.new.side()})
	}
	if p.old.say != p.new.say {
		c.out = append(c.out, Change{Kind: Changed, Path: path, Old: p.old.side(), New: p.new.side(), Parts: parts(p.old.s, p.new.s, in)})
	}
	opens := vocabulary.None
	if row, ok := vocabulary.Lookup(in, p.new.s.Verb.Text); ok {
		opens = row.Opens
	}
	c.blocks(inside(*p.old, opens), inside(*p.new, opens), opens, append(path[:len(path):len(path)], title(p.new.s)))
}

// title names a statement as a place: steep, process "Loft pale".
func title(s *syntax.Statement) string {
	if len(s.Terms) > 0 {
		if t, ok := s.Terms[0].(syntax.Text); ok {
			return fmt.Sprintf("%s %q", s.Verb.Text, t.Value)
		}
	}
	return s.Verb.Text
}
