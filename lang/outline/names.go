package outline

import (
	"slices"

	"maltwright/lang/source"
	"maltwright/lang/syntax"
	"maltwright/lang/vocabulary"
)

// Name is one place where the name of something stands: where it is defined, or where it is
// meant.
type Name struct {
	Kind    vocabulary.Block   // what is called so
	Or      []vocabulary.Block // what else may be meant, where a statement takes things of several kinds
	Text    string             // the name, as its quotes hold it
	Place   source.Place       // with its quotes
	Inner   source.Span        // without them
	Defines bool
	Whole   source.Span // of a definition: its statement, with its block
}

// May tells whether something of a kind may be meant.
func (n Name) May(kind vocabulary.Block) bool {
	return n.Kind == kind || slices.Contains(n.Or, kind)
}

// Definer gives what a statement at the top of a file defines, by the word it begins with;
// ok is false for one that gives nothing a name.
func Definer(word string) (kind vocabulary.Block, ok bool) {
	row, ok := vocabulary.Lookup(vocabulary.File, word)
	if !ok || row.Opens == vocabulary.None || len(row.Slots) == 0 || row.Slots[0].Kind != vocabulary.Text {
		return vocabulary.None, false
	}
	return row.Opens, true
}

// Names lists the names that a file holds, in the order in which they stand. A statement
// that does not read has none.
func Names(t *syntax.Tree) []Name {
	c := collector{file: t.File}
	c.block(&t.Top, vocabulary.File)
	slices.SortStableFunc(c.names, func(a, b Name) int { return a.Place.Start - b.Place.Start })
	return c.names
}

type collector struct {
	file  *source.File
	names []Name
}

func (c *collector) block(b *syntax.Block, in vocabulary.Block) {
	for _, s := range b.Statements {
		row, ok := vocabulary.Lookup(in, s.Verb.Text)
		if !ok {
			continue
		}
		if !s.Broken {
			c.statement(s, row, in)
		}
		if s.Body != nil {
			c.block(s.Body, row.Opens)
		}
	}
}

func (c *collector) statement(s *syntax.Statement, row *vocabulary.Row, in vocabulary.Block) {
	if kind, ok := Definer(s.Verb.Text); ok && in == vocabulary.File && len(s.Terms) > 0 {
		if t, ok := s.Terms[0].(syntax.Text); ok {
			n := c.name(t, kind)
			n.Defines, n.Whole = true, s.Span
			c.names = append(c.names, n)
		}
	}
	c.slots(row.Slots, s.Terms)
	for _, clause := range s.Clauses {
		if def, ok := row.Clause(clause.Word.Text); ok {
			c.slots(def.Slots, clause.Terms)
		}
	}
}

// slots takes the names among some values. All that stands in quotes where a name is taken is one:
// several are joined by "and".
func (c *collector) slots(slots []vocabulary.Slot, terms []syntax.Term) {
	i := slices.IndexFunc(slots, func(s vocabulary.Slot) bool { return s.Kind == vocabulary.Name })
	if i < 0 {
		return
	}
	for _, term := range terms {
		if t, ok := term.(syntax.Text); ok {
			n := c.name(t, slots[i].Of)
			n.Or = slots[i].Or
			c.names = append(c.names, n)
		}
	}
}

func (c *collector) name(t syntax.Text, kind vocabulary.Block) Name {
	return Name{Kind: kind, Text: t.Value, Place: source.Place{File: c.file, Span: t.Span}, Inner: t.Inner(c.file)}
}
