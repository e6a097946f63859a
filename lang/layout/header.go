package layout

import (
	"slices"
	"strings"

	"maltwright/lang/quantity"
	"maltwright/lang/sorted"
	"maltwright/lang/source"
	"maltwright/lang/syntax"
	"maltwright/lang/value"
	"maltwright/lang/vocabulary"
)

// header writes a statement without its block.
func header(s *syntax.Statement, in vocabulary.Block) string {
	s = value.Led(s, in)
	return strings.Join(spell(s, ordered(s, in)), " ")
}

// ordered gives the clauses in the order of the vocabulary; those that the
// statement does not take stand last, in the order in which they were written.
// Where a clause would read otherwise behind its new neighbour, as "to 45 %" does
// behind "at 17 °C", all stay as they were written.
func ordered(s *syntax.Statement, in vocabulary.Block) []*syntax.Clause {
	row, ok := vocabulary.Lookup(in, s.Verb.Text)
	if !ok {
		return s.Clauses
	}
	place := func(c *syntax.Clause) int {
		i := slices.IndexFunc(row.Clauses, func(d vocabulary.Clause) bool { return d.Word == c.Word.Text })
		if i < 0 {
			return len(row.Clauses)
		}
		return i
	}
	list := slices.Clone(s.Clauses)
	sorted.Stable(list, func(a, b *syntax.Clause) int { return place(a) - place(b) })
	if !slices.Equal(list, s.Clauses) && !readsBack(s, list) {
		return s.Clauses
	}
	return list
}

// readsBack tells whether the statement with its clauses in this order, written and
// read again, has the same clauses with the same values.
func readsBack(s *syntax.Statement, order []*syntax.Clause) bool {
	want := spell(s, order)
	tree, _ := syntax.Parse(source.New("", []byte(strings.Join(want, " ")+"\n")))
	list := tree.Top.Statements
	return len(list) == 1 && slices.Equal(spell(list[0], list[0].Clauses), want)
}

// spell gives the parts of a header: the verb with its values, then each clause with
// its own.
func spell(s *syntax.Statement, order []*syntax.Clause) []string {
	out := []string{strings.Join(append([]string{s.Verb.Text}, terms(s.Terms)...), " ")}
	for _, c := range order {
		out = append(out, strings.Join(append([]string{c.Word.Text}, terms(c.Terms)...), " "))
	}
	return out
}

func terms(list []syntax.Term) []string {
	out := make([]string, len(list))
	for i, t := range list {
		out[i] = Term(t)
	}
	return out
}

// Term writes one value in its canonical spelling.
func Term(t syntax.Term) string {
	switch t := t.(type) {
	case syntax.Word:
		return t.Text
	case syntax.Text:
		return text(t.Value)
	case syntax.Amount:
		return amount(t)
	case syntax.Bounded:
		return bound(t.Bound.Text) + " " + Term(t.Value)
	case syntax.Moment:
		return moment(t)
	}
	return ""
}

var escape = strings.NewReplacer(`\`, `\\`, `"`, `\"`, "“", `\“`, "”", `\”`)

func text(bare string) string { return `"` + escape.Replace(bare) + `"` }

func bound(word string) string {
	if op, ok := vocabulary.BoundOp(word); ok {
		return op.String()
	}
	return word
}

// amount writes a quantity or a range; the unit stands once where both ends have
// the same, or where only the second had one.
func amount(a syntax.Amount) string {
	if a.High == nil {
		return written(a.Low)
	}
	low, high := written(a.Low), written(*a.High)
	if len(a.Low.Parts) == 1 && len(a.High.Parts) == 1 {
		l, h := made(a.Low), made(*a.High)
		if l != nil && h != nil && l.Unit() == h.Unit() {
			low = number(a.Low.Parts[0].Number.Text)
		}
	}
	return low + " " + vocabulary.To + " " + high
}

// made reads the quantity where one of the dimensions is wanted, or gives nil where it is
// none.
func made(q syntax.Quantity, wanted ...quantity.Dimension) *quantity.Quantity {
	got, err := value.Quantity(q, wanted)
	if err != nil {
		return nil
	}
	return &got
}

// written writes a quantity in its canonical spelling, or as it stands where it
// cannot be read: the layout mends nothing.
func written(q syntax.Quantity) string {
	if got := made(q); got != nil {
		return got.String()
	}
	var words []string
	for _, p := range q.Parts {
		blank := " "
		if quantity.OfMark(p.Unit.Text) != "" {
			blank = "" // behind one the mark of an inch would open a text
		}
		words = append(words, strings.TrimRight(p.Number.Text+blank+p.Unit.Text, " "))
	}
	return strings.Join(words, " ")
}

func number(text string) string {
	return strings.Join(strings.Fields(strings.Replace(quantity.Spell(text), "\u2212", "-", 1)), " ")
}

func moment(m syntax.Moment) string {
	out := stamp(m.From, false)
	if m.To != nil {
		out += " " + vocabulary.To + " " + stamp(*m.To, true)
	}
	return out
}

// stamp writes the date first; where one of both does not read they stay as they stand.
func stamp(s syntax.Stamp, ends bool) string {
	_, day := value.Date(s.Date)
	if _, clock := value.Second(s.Clock); s.Date.Text != "" && s.Clock.Start < s.Date.Start && s.Clock.Text != "" && !(day && clock) {
		return s.Clock.Text + " " + s.Date.Text
	}
	return strings.TrimSpace(s.Date.Text + " " + value.ClockText(s, ends))
}
