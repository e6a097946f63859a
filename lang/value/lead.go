package value

import (
	"slices"

	"maltwright/lang/source"
	"maltwright/lang/syntax"
	"maltwright/lang/vocabulary"
)

// Led gives a statement of a block with the time that stands right behind its verb put
// into the clause that this is short for: cure 4 h at malt 82 °C says what cure at malt
// 82 °C for 4 h does. The clause stands last, its word has no place of its own, and the
// statement itself is as it was.
func Led(s *syntax.Statement, in vocabulary.Block) *syntax.Statement {
	row, ok := vocabulary.Lookup(in, s.Verb.Text)
	if !ok || row.Leads == "" || len(s.Terms) == 0 {
		return s
	}
	def, _ := row.Clause(row.Leads)
	if !leads(s.Terms[0], &def.Slots[0]) || len(s.Terms) > 1 && leads(s.Terms[1], &def.Slots[0]) {
		return s // of two times neither is the one that is meant
	}
	out, at := *s, s.Terms[0].Range()
	out.Terms = s.Terms[1:]
	out.Clauses = append(slices.Clip(s.Clauses), &syntax.Clause{Span: at, Terms: s.Terms[:1],
		Word: syntax.Word{Span: source.Span{Start: at.Start, End: at.Start}, Text: row.Leads}})
	return &out
}

// leads tells whether a value is of the kind that a slot takes.
func leads(t syntax.Term, slot *vocabulary.Slot) bool {
	if b, ok := t.(syntax.Bounded); ok && slot.Bound {
		t = b.Value
	}
	a, ok := t.(syntax.Amount)
	if !ok {
		return false
	}
	_, err := Range(a, slot.Dims)
	return err == nil
}
