package contrast

import (
	"fmt"
	"slices"
	"sort"
	"strconv"
	"strings"

	"maltwright/lang/quantity"
	"maltwright/lang/syntax"
	"maltwright/lang/value"
	"maltwright/lang/vocabulary"
)

// saying is what the head of a statement says, however it is written: verb, values,
// and the clauses in the order of their words.
func saying(s *syntax.Statement, in vocabulary.Block) string {
	s = value.Led(s, in)
	row, known := vocabulary.Lookup(in, s.Verb.Text)
	if !known {
		row = &vocabulary.Row{}
	}
	parts := []string{s.Verb.Text, saysIn(s.Terms, row.Slots)}
	clauses := make([]string, len(s.Clauses))
	for i, c := range s.Clauses {
		clauses[i] = c.Word.Text + "(" + clauseSays(row, c.Word.Text, c.Terms) + ")"
	}
	sort.Strings(clauses)
	return strings.Join(append(parts, clauses...), " ")
}

// clauseSays is what the values of a clause say. Of those that it joins by "and" the order
// means nothing.
func clauseSays(row *vocabulary.Row, word string, list []syntax.Term) string {
	c, ok := row.Clause(word)
	if !ok {
		return saysIn(list, nil)
	}
	if !c.Joins {
		return saysIn(list, c.Slots)
	}
	var says []string
	for _, part := range value.Joined(list) {
		says = append(says, saysIn(part, c.Slots))
	}
	sort.Strings(says)
	return strings.Join(says, " "+vocabulary.And+" ")
}

// Says is what values say, however they are written: two lists of values mean the
// same if they say the same.
func Says(list []syntax.Term) string { return saysIn(list, nil) }

// saysIn is Says of the values of slots: it leaves out the words that only make the line read well.
func saysIn(list []syntax.Term, slots []vocabulary.Slot) string {
	var words []string
	wanted := vocabulary.Wanted(slots)
	for _, t := range list {
		if w, ok := t.(syntax.Word); ok && slices.ContainsFunc(slots, func(s vocabulary.Slot) bool {
			return s.Kind == vocabulary.Literal && slices.Contains(s.Words, w.Text)
		}) {
			continue
		}
		words = append(words, termSays(t, wanted))
	}
	return strings.Join(words, " ")
}

func termSays(t syntax.Term, wanted []quantity.Dimension) string {
	switch t := t.(type) {
	case syntax.Word:
		return t.Text
	case syntax.Text:
		return strconv.Quote(t.Value)
	case syntax.Amount:
		return amountSays(t, wanted)
	case syntax.Bounded:
		return boundSays(t.Bound.Text) + "[" + termSays(t.Value, wanted) + "]"
	case syntax.Moment:
		out := stampSays(t.From, false)
		if t.To != nil {
			out += ".." + stampSays(*t.To, true)
		}
		return out
	}
	return ""
}

func boundSays(written string) string {
	op, _ := vocabulary.BoundOp(written) // the lexer knows no others
	return op.String()
}

func amountSays(a syntax.Amount, wanted []quantity.Dimension) string {
	if a.High == nil {
		return quantitySays(a.Low, wanted)
	}
	return quantitySays(a.LowEnd(), wanted) + ".." + quantitySays(*a.High, wanted)
}

// quantitySays is the quantity in SI to nine figures, with its dimension; one that
// cannot be read says its words.
func quantitySays(q syntax.Quantity, wanted []quantity.Dimension) string {
	v, err := value.Quantity(q, wanted)
	if err != nil {
		words := make([]string, len(q.Parts))
		for i, p := range q.Parts {
			words[i] = p.Number.Text + p.Unit.Text
		}
		return strings.Join(words, "+")
	}
	return fmt.Sprintf("%d:%.9g", v.Dimension, v.SI)
}

func stampSays(s syntax.Stamp, ends bool) string {
	return s.Date.Text + "T" + value.ClockText(s, ends)
}

// parts lists what differs between two statements of one verb.
func parts(old, new *syntax.Statement, in vocabulary.Block) []Part {
	old, new = value.Led(old, in), value.Led(new, in)
	row, known := vocabulary.Lookup(in, new.Verb.Text)
	if !known {
		row = &vocabulary.Row{}
	}
	var out []Part
	add := func(what string, a, b []syntax.Term, same bool) {
		if !same {
			out = append(out, Part{what, written(a), written(b)})
		}
	}
	add("", old.Terms, new.Terms, saysIn(old.Terms, row.Slots) == saysIn(new.Terms, row.Slots))
	for _, word := range clauseWords(old, new, in) {
		a, b := clause(old, word), clause(new, word)
		switch {
		case a == nil:
			add(word, nil, b.Terms, false)
		case b == nil:
			add(word, a.Terms, nil, false)
		default:
			add(word, a.Terms, b.Terms, clauseSays(row, word, a.Terms) == clauseSays(row, word, b.Terms))
		}
	}
	return out
}

// clauseWords lists the clauses of both, those of the vocabulary in its order first.
func clauseWords(old, new *syntax.Statement, in vocabulary.Block) []string {
	var out []string
	seen := map[string]bool{}
	add := func(word string) {
		if !seen[word] && (clause(old, word) != nil || clause(new, word) != nil) {
			seen[word] = true
			out = append(out, word)
		}
	}
	if row, ok := vocabulary.Lookup(in, new.Verb.Text); ok {
		for _, c := range row.Clauses {
			add(c.Word)
		}
	}
	for _, s := range []*syntax.Statement{old, new} {
		for _, c := range s.Clauses {
			add(c.Word.Text)
		}
	}
	return out
}

func clause(s *syntax.Statement, word string) *syntax.Clause {
	for _, c := range s.Clauses {
		if c.Word.Text == word {
			return c
		}
	}
	return nil
}
