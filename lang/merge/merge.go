// Package merge joins what two people did to one file since they parted, by what it
// means and not by its lines.
//
// # How it works
//
// Three trees come in: the file as it was, ours and theirs. The statements of each
// block are matched with those of the base as a comparison matches them, and then
// merged one by one (statement.go): the values, each clause, each comment and the
// block for themselves. What one side changed is taken from it, wherever it stands;
// so two edits to different clauses of one line go together. What both changed in
// different ways cannot be settled here. Then one of the two stays in force, and a
// comment above the statement names both and what was there before; it is a finding
// until somebody has settled it. The order of the statements is merged after that
// (order.go). The result is written in the canonical layout, with the line ends of ours,
// and read again before it is given out.
package merge

import (
	"errors"
	"fmt"
	"time"

	"maltwright/lang/contrast"
	"maltwright/lang/finding"
	"maltwright/lang/layout"
	"maltwright/lang/read"
	"maltwright/lang/source"
	"maltwright/lang/syntax"
	"maltwright/lang/vocabulary"
)

// ErrUnread says that the merged file would not read: it has more statements than a
// file may have, or is too large.
var ErrUnread = errors.New("the merged file would be too large to read")

// Result is a merged file.
type Result struct {
	Text      []byte
	Unsettled int // places where ours and theirs differ and both are named
}

// Trees merges what ours and theirs made of base. The trees must have come from
// parses without faults: what did not read is not in them, and would be lost.
func Trees(base, ours, theirs *syntax.Tree) (Result, error) {
	m := &merging{}
	b, o, t := &canonical(base).Top, &canonical(ours).Top, &canonical(theirs).Top
	out := &syntax.Tree{Top: *m.block(b, o, t, vocabulary.File)}
	text := layout.Write(out)
	again, found := syntax.Parse(source.New("", text))
	if worst, any := finding.Worst(found); any && worst >= finding.Fault {
		return Result{}, ErrUnread
	}
	text = layout.EndedLike(ours.File, layout.Write(again))
	if len(text) > source.MaxBytes {
		return Result{}, ErrUnread
	}
	return Result{text, m.unsettled}, nil
}

// canonical is the tree of the canonical form, so that layout makes no difference.
func canonical(t *syntax.Tree) *syntax.Tree {
	again, _ := syntax.Parse(source.New("", layout.Write(t)))
	return again
}

type merging struct{ unsettled int }

// mark puts a comment above a statement that names both sides.
func (m *merging) mark(s *syntax.Statement, ours, theirs, before string) {
	text := read.UnsettledMark + ours + "; theirs " + theirs
	if before != "" {
		text += "; before " + before
	}
	c := syntax.Comment{Text: text, Spaced: s.Spaced}
	s.Lead, s.Spaced = append(s.Lead[:len(s.Lead):len(s.Lead)], c), false
	m.unsettled++
}

// item is a statement in up to three versions; nil where it does not stand.
type item struct {
	b, o, t *syntax.Statement
	out     *syntax.Statement // what becomes of it; nil where it goes
}

// block merges three blocks; none of them is nil.
func (m *merging) block(b, o, t *syntax.Block, in vocabulary.Block) *syntax.Block {
	a := newAlignment(b.Statements, o.Statements, t.Statements, in)
	for _, it := range a.items {
		it.out = m.item(it, in)
	}
	out := &syntax.Block{Statements: m.inOrder(a), Tail: comments(b.Tail, o.Tail, t.Tail)}
	var extra *syntax.Comment
	if out.Close, extra = comment(b.Close, o.Close, t.Close); extra != nil {
		out.Tail = append(out.Tail[:len(out.Tail):len(out.Tail)], *extra)
	}
	return out
}

// item gives what becomes of one statement.
func (m *merging) item(it *item, in vocabulary.Block) *syntax.Statement {
	switch {
	case it.o != nil && it.t != nil:
		return m.statement(it.b, it.o, it.t, in)
	case it.b == nil && it.o != nil:
		return it.o
	case it.b == nil:
		return it.t
	case it.o != nil:
		return m.kept(it.b, it.o, in, "changed this", "took it out")
	case it.t != nil:
		return m.kept(it.b, it.t, in, "took this out", "changed it")
	}
	return nil
}

// kept is a statement that one side took out: it goes if the other left it alone.
func (m *merging) kept(b, s *syntax.Statement, in vocabulary.Block, ours, theirs string) *syntax.Statement {
	if layout.Statement(b, in) == layout.Statement(s, in) {
		return nil
	}
	out := *s
	m.mark(&out, ours, theirs, "")
	return &out
}

// alignment is the statements of three blocks, matched.
type alignment struct {
	in    vocabulary.Block
	items []*item
	base  []*item // those of the base, and of both sides, in their order
	o, t  []*item
	place map[*item]int                   // in the base, from 1
	times map[*syntax.Statement]time.Time // of readings, as each side has them
}

func newAlignment(b, o, t []*syntax.Statement, in vocabulary.Block) *alignment {
	a := &alignment{in: in, base: make([]*item, len(b)), o: make([]*item, len(o)), t: make([]*item, len(t)), place: map[*item]int{}, times: timesOf(in, o, t)}
	for i, s := range b {
		a.base[i] = &item{b: s}
		a.place[a.base[i]] = i + 1
	}
	a.items = append(a.items, a.base...)
	for _, p := range contrast.Match(b, o, in) {
		if p.Old >= 0 && p.New >= 0 {
			a.base[p.Old].o, a.o[p.New] = o[p.New], a.base[p.Old]
		}
	}
	for _, p := range contrast.Match(b, t, in) {
		if p.Old >= 0 && p.New >= 0 {
			a.base[p.Old].t, a.t[p.New] = t[p.New], a.base[p.Old]
		}
	}
	a.added(o, t)
	return a
}

// added makes the items of what is new on a side, one for what is new on both.
func (a *alignment) added(o, t []*syntax.Statement) {
	waiting := map[string][]*item{}
	each(a.o, func(i int, behind *item) {
		it := &item{o: o[i]}
		a.items, a.o[i] = append(a.items, it), it
		key := a.key(o[i], behind)
		waiting[key] = append(waiting[key], it)
	})
	each(a.t, func(i int, behind *item) {
		key := a.key(t[i], behind)
		if q := waiting[key]; len(q) > 0 {
			q[0].t, a.t[i] = t[i], q[0]
			waiting[key] = q[1:]
			return
		}
		it := &item{t: t[i]}
		a.items, a.t[i] = append(a.items, it), it
	})
}

// each visits the places that have no item yet, with the item of the base that
// stands before.
func each(list []*item, visit func(i int, behind *item)) {
	var behind *item
	for i, it := range list {
		if it != nil {
			behind = it
		} else {
			visit(i, behind)
		}
	}
}

// key is what makes two new statements one. A thing that stands once, or is
// somebody, is known by its name; a step by all it says and by its place, and a
// reading by its time, which two lines of 20:00 need not share; any
// other by all it says.
func (a *alignment) key(s *syntax.Statement, behind *item) string {
	row, known := vocabulary.Lookup(a.in, s.Verb.Text)
	step := vocabulary.Ordered(a.in, s.Verb.Text)
	switch {
	case known && row.Once, a.in == vocabulary.House, s.Body != nil && !(step && a.in != vocabulary.Process):
		return "name " + contrast.Name(s, a.in)
	case step:
		return fmt.Sprintf("step %d %d %s", a.place[behind], a.times[s].Unix(), layout.Statement(bare(s), a.in))
	}
	return "line " + layout.Statement(bare(s), a.in)
}

// bare is the statement without the comments around it.
func bare(s *syntax.Statement) *syntax.Statement {
	out := *s
	out.Lead, out.Trail = nil, nil
	return &out
}
