package offer

import (
	"fmt"
	"slices"
	"strings"

	"maltwright/lang/quantity"
	"maltwright/lang/source"
	"maltwright/lang/syntax"
	"maltwright/lang/value"
	"maltwright/lang/vocabulary"
)

// held is a value in a text, with what it fills.
type held struct {
	source.Span
	asked Asked
	slot  *vocabulary.Slot
	block []vocabulary.Block // of a name, what it names
	names vocabulary.Block   // of a name that is given, what it is given to
	one   bool               // a bound stands in front of it
	time  bool               // a date and a time of day
}

// fill puts the names of the house, its units and what is usual into a text, and gives the places
// of the values.
func (k Known) fill(in vocabulary.Block, text string) (string, []source.Span) {
	tree, _ := syntax.Parse(source.New("", []byte(text)))
	var list []held
	heldIn(in, &tree.Top, &list)
	slices.SortFunc(list, func(a, b held) int { return a.Start - b.Start })
	var out strings.Builder
	var stops []source.Span
	at := 0
	for _, h := range list {
		out.WriteString(text[at:h.Start])
		is := k.filled(h, tree.File.Text(h.Span))
		stops = append(stops, source.Span{Start: out.Len(), End: out.Len() + len(is)})
		out.WriteString(is)
		at = h.End
	}
	out.WriteString(text[at:])
	return out.String(), stops
}

// filled is a value of a text in a house.
func (k Known) filled(h held, text string) string {
	if len(h.block) > 0 {
		if name, ok := k.nameFor(h); ok {
			return quote(name)
		}
		return text
	}
	if h.time && !k.Now.IsZero() {
		return k.Now.Format("2006-01-02 15:04")
	}
	if h.names != vocabulary.None {
		return k.unused(h.names, text)
	}
	a, ok := amountOf(text)
	if !ok || h.slot == nil {
		return text
	}
	told := k.System.Retold(text)
	for _, u := range k.usual(h.asked) {
		r, err := value.Range(a, []quantity.Dimension{u.Low.Dimension})
		switch {
		case err != nil || u.Contains(r.Low.SI) && u.Contains(r.High.SI):
		case h.slot.Range && !h.one:
			return u.Range.String()
		default:
			return within(u.Range, told)
		}
	}
	return told
}

// unused is a name, in quotes, that nothing of its kind has yet.
func (k Known) unused(b vocabulary.Block, quoted string) string {
	name := strings.Trim(quoted, `"`)
	for n, is := 2, name; ; n++ {
		if !slices.ContainsFunc(k.Names, func(other Named) bool { return other.Block == b && other.Text == is }) {
			return quote(is)
		}
		is = fmt.Sprintf("%s %d", name, n)
	}
}

// nameFor is the first that fits in the house; of a withering the second, where there is one: the piece
// is moved on to another floor.
func (k Known) nameFor(h held) (name string, ok bool) {
	for _, n := range k.Names {
		switch {
		case !slices.Contains(h.block, n.Block):
		case ok:
			return n.Text, true
		case h.asked.Verb != vocabulary.VerbWither:
			return n.Text, true
		default:
			name, ok = n.Text, true
		}
	}
	return name, ok
}

// heldIn gathers the values of a block.
func heldIn(in vocabulary.Block, b *syntax.Block, list *[]held) {
	for _, s := range b.Statements {
		row, ok := vocabulary.Lookup(in, s.Verb.Text)
		if !ok {
			continue
		}
		stage := row.Opens
		if stage == vocabulary.None {
			stage = in
		}
		asked := Asked{In: in, Verb: row.Word}
		first := heldBy(row.Slots, s.Terms, asked)
		if len(first) > 0 && row.Opens != vocabulary.None && len(first[0].block) == 0 && in == vocabulary.File {
			first[0].names = row.Opens
		}
		*list = append(*list, first...)
		for _, c := range s.Clauses {
			if def, ok := row.Clause(c.Word.Text); ok {
				asked.Clause = c.Word.Text
				*list = append(*list, heldBy(def.Slots, c.Terms, asked)...)
			}
		}
		if s.Body != nil {
			heldIn(row.Opens, s.Body, list)
		}
	}
}

// heldBy gathers the values of a statement or a clause.
func heldBy(slots []vocabulary.Slot, terms []syntax.Term, asked Asked) (list []held) {
	for i, t := range terms {
		h := held{Span: t.Range(), asked: asked}
		if b, ok := t.(syntax.Bounded); ok {
			t, h.one = b.Value, true
			h.Span = t.Range()
		}
		switch t := t.(type) {
		case syntax.Text:
			for _, slot := range slots {
				if slot.Kind == vocabulary.Name {
					h.block = append([]vocabulary.Block{slot.Of}, slot.Or...)
				}
			}
		case syntax.Moment:
			h.time = true
		case syntax.Amount:
			h.slot = slotOf(slots, terms[:i], &h.asked)
		case syntax.Word:
			if choices := slotsOf(slots, vocabulary.Choice); len(choices) == 0 || !slices.Contains(choices[0].Words, t.Text) || len(choices[0].Words) < 3 {
				continue
			}
		}
		list = append(list, h)
	}
	return list
}

func slotsOf(slots []vocabulary.Slot, kind vocabulary.Kind) (list []vocabulary.Slot) {
	for _, s := range slots {
		if s.Kind == kind {
			list = append(list, s)
		}
	}
	return list
}

// slotOf is the slot of an amount behind other terms, and what stands in front of it.
func slotOf(slots []vocabulary.Slot, before []syntax.Term, asked *Asked) *vocabulary.Slot {
	for i := range slots {
		slot := &slots[i]
		if slot.Kind == vocabulary.Condition {
			tests := value.Joined(before)
			if m, ok := value.MeasuredBy(tests[len(tests)-1]); ok {
				asked.Measure = m.Name
			}
			return slot
		}
		if slot.Kind == vocabulary.Amount {
			if n := len(before); n > 0 {
				if w, ok := before[n-1].(syntax.Word); ok && slices.Contains(slot.Places, w.Text) {
					asked.Place = w.Text
				}
			}
			return slot
		}
	}
	return nil
}
