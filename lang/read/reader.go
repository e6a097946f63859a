package read

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
	"time"

	"maltwright/lang/calendar"
	"maltwright/lang/finding"
	"maltwright/lang/model"
	"maltwright/lang/nearest"
	"maltwright/lang/quantity"
	"maltwright/lang/source"
	"maltwright/lang/syntax"
	"maltwright/lang/value"
	"maltwright/lang/vocabulary"
)

// given is what was read into one slot.
type given struct {
	place     source.Place
	amount    source.Place // of an amount: its numbers and units alone, without a place or a bound
	rng       quantity.Range
	op        *quantity.Op // where a bound was written
	where     string
	word      string // of a choice, a name or a text
	condition *model.Condition
	clock     [2]int // of a clock, seconds from midnight; of a moment or an hour the first
	last      string // of a range of dates
}

func (v *given) quantity() *model.Quantity {
	if v == nil {
		return nil
	}
	return &model.Quantity{Quantity: v.rng.Low, Place: v.place}
}

func (v *given) ranged() *model.Range {
	if v == nil {
		return nil
	}
	return &model.Range{Range: v.rng, Place: v.place}
}

func (v *given) temperature() *model.Temperature {
	if v == nil {
		return nil
	}
	return &model.Temperature{Range: model.Range{Range: v.rng, Place: v.place}, Where: v.where}
}

func (v *given) chosen() model.Word {
	if v == nil {
		return model.Word{}
	}
	return model.Word{Text: v.word, Place: v.place}
}

// filled is a statement read by its row: a value for each slot, nil where an
// optional one is missing or one could not be read.
type filled struct {
	*syntax.Statement
	row     *vocabulary.Row
	place   source.Place // the head of the statement
	slots   []*given
	clauses map[string][]*given
	whole   bool // all of it was read
}

func (r *filled) slot(i int) *given {
	if i < len(r.slots) {
		return r.slots[i]
	}
	return nil
}

// clause gives the i-th value of a clause, nil where it is not there.
func (r *filled) clause(word string, i int) *given {
	if list := r.clauses[word]; i < len(list) {
		return list[i]
	}
	return nil
}

func (r *filled) has(word string) bool { return r.clauses[word] != nil }

// statementReader reads the statements of one file.
type statementReader struct {
	file      *source.File
	found     *[]finding.Finding
	in        vocabulary.Block
	opens     vocabulary.Block                // the block that the statement being read opens
	statement *syntax.Statement               // being read
	verb      string                          // of the statement being read
	chosen    string                          // the choice that was read last
	clause    string                          // the clause that is being read, "" behind the verb
	home      *home                           // what the files of the house say by themselves; nil where they are not known
	tried     *int                            // texts of the whole house that were tried for others that do not read; nil where none is to be
	trials    map[trialText][]finding.Finding // what is wrong with each of them; nil where it is not kept
	told      bool                            // what does not read of the statement is told already
	block     *syntax.Block                   // in which the statement stands; nil where that is of no matter
}

func (r *statementReader) note(f finding.Finding) { *r.found = append(*r.found, f) }

func (r *statementReader) at(s source.Span) source.Place { return source.Place{File: r.file, Span: s} }

// read reads a statement in the reader's block. It gives false where the
// statement is of no use, which it has then reported.
func (r *statementReader) read(s *syntax.Statement) (*filled, bool) {
	if s.Broken {
		r.unbegun(s)
		return nil, false
	}
	row, ok := vocabulary.Lookup(r.in, s.Verb.Text)
	if !ok {
		r.unknown(s)
		return nil, false
	}
	r.opens, r.verb, r.clause, r.statement, r.told = row.Opens, row.Word, "", s, false
	before := len(*r.found)
	out := &filled{Statement: s, row: row, place: r.at(s.Head())}
	led := value.Led(s, r.in)
	out.slots = r.slots(row.Slots, led.Terms, s.Verb)
	out.clauses = r.readClauses(row, led)
	r.checkBody(row, s)
	whole := len(*r.found) == before && !r.told
	r.meant(s, row, before)
	return out, whole
}

// verbMeant is the one word of this block near to that of a statement with which it reads as it
// stands: hold 30 l of a vessel.
func (r *statementReader) verbMeant(s *syntax.Statement) (string, bool) {
	meant, ok := nearest.Only(s.Verb.Text, vocabulary.Words(r.in))
	row, known := vocabulary.Lookup(r.in, meant)
	if !ok || !known || s.Head().End-s.Head().Start > longestTried {
		return "", false
	}
	pieces := piecesOf(r.at, s)
	pieces[0].text = meant
	return meant, r.reads(row, pieces)
}

func (r *statementReader) checkBody(row *vocabulary.Row, s *syntax.Statement) {
	switch {
	case s.Body != nil && row.Opens == vocabulary.None:
		r.note(blockUnexpected.At(r.at(source.Span{Start: s.Body.Start, End: s.Body.Start + 1}), fmt.Sprintf("%s takes no block", row.Word)))
	case s.Body == nil && row.Opens != vocabulary.None:
		r.note(blockMissing.At(r.at(s.Head()), fmt.Sprintf("%s needs a block", row.Word)))
	}
}

func (r *statementReader) readClauses(row *vocabulary.Row, s *syntax.Statement) map[string][]*given {
	if len(row.Clauses) == 0 && len(s.Clauses) == 0 {
		return nil
	}
	out := make(map[string][]*given, len(s.Clauses))
	for _, c := range s.Clauses {
		def, ok := row.Clause(c.Word.Text)
		if !ok {
			r.unknownClause(row, c)
			continue
		}
		r.clause = c.Word.Text
		if out[c.Word.Text] != nil {
			said := fmt.Sprintf("%s stands twice in this statement", c.Word.Text)
			if c.Word.Start == c.Word.End { // of a value right behind the verb
				said = fmt.Sprintf("%s is given two times: %s, and %s in front", row.Word, r.saidFirst(s, c.Word.Text), r.at(c.Span).Text())
			}
			r.note(twoOfAClause.At(r.at(c.Span), said))
			continue
		}
		out[c.Word.Text] = append(r.joined(def, c), nil)
	}
	for _, def := range row.Clauses {
		if def.Required && out[def.Word] == nil {
			f := valueNeeded.At(r.at(s.Head()), fmt.Sprintf("%s needs %s: %s", row.Word, def.Word, def.Doc))
			f.Hint = "its form: " + vocabulary.Form(*row)
			r.note(f)
		}
	}
	return out
}

func (r *statementReader) unknownClause(row *vocabulary.Row, c *syntax.Clause) {
	f := unknownClause.At(r.at(c.Span), fmt.Sprintf("%s takes no %q", row.Word, c.Word.Text))
	if len(row.Clauses) > 0 {
		words := make([]string, len(row.Clauses))
		for i := range row.Clauses {
			words[i] = row.Clauses[i].Word
		}
		f.Hint = fmt.Sprintf("%s takes: %s", row.Word, strings.Join(words, ", "))
	}
	r.note(f)
}

// slots reads terms into slots, one after another.
func (r *statementReader) slots(slots []vocabulary.Slot, terms []syntax.Term, after syntax.Word) []*given {
	out := make([]*given, len(slots), len(slots)+1)
	for i := range slots {
		rest, v, ok := slotReaderOf(slots[i].Kind)(r, &slots[i], terms)
		switch {
		case !ok:
			return out // reported
		case v == nil && !slots[i].Optional && !(i > 0 && out[i-1] != nil && slices.Contains(slots[i].Unless, out[i-1].word)):
			r.needed(&slots[i], i+1 < len(slots) && slots[i+1].Kind == vocabulary.Amount, terms, after)
			return out
		}
		out[i], terms = v, rest
	}
	if len(terms) > 0 {
		r.tooMany(terms, after)
	}
	return out
}

func (r *statementReader) needed(slot *vocabulary.Slot, amountNext bool, terms []syntax.Term, after syntax.Word) {
	if len(terms) == 0 {
		f := valueNeeded.At(r.at(after.Span), fmt.Sprintf("%s needs %s", after.Text, describe(slot)))
		if slot.Kind == vocabulary.Choice && len(slot.Words) <= mostOffered {
			texts := make([]string, len(slot.Words))
			for i, word := range slot.Words {
				texts[i] = after.Text + " " + word
			}
			f.Write(f.Place, texts...)
		}
		r.note(f)
		return
	}
	place := r.at(terms[0].Range())
	said := place.Text()
	if _, ok := terms[0].(syntax.Word); ok {
		said = strconv.Quote(said)
	}
	f := wrongDimension.At(place, fmt.Sprintf("%s needs %s, not %s", after.Text, describe(slot), said))
	if slot.Kind == vocabulary.Amount && len(terms) > 1 && slices.Contains(strings.Fields(slot.Label), place.Text()) {
		f.Message = fmt.Sprintf("%s takes %s without the word %q in front", after.Text, slot.Label, place.Text())
	}
	switch {
	case slot.Kind == vocabulary.Choice && amountNext && len(slot.Words) <= mostOffered:
		texts := make([]string, len(slot.Words))
		for i, word := range slot.Words {
			texts[i] = word + " " + place.Text()
		}
		f.Write(place, texts...)
	case slot.Kind == vocabulary.Choice && amountNext && analysesOf(terms[0]) != nil:
		words := analysesOf(terms[0])
		for i, word := range words {
			words[i] = word + " " + place.Text()
		}
		f.Write(place, words...)
	case slot.Kind == vocabulary.Choice && amountNext:
		f.Hint = "in front of it stands what it is of: " + strings.Join(slot.Words, ", ")
	case slot.Kind == vocabulary.Choice:
		f.Hint = "known here: " + strings.Join(slot.Words, ", ")
	case slot.Kind == vocabulary.Amount:
		f.Hint = "its form: " + formOf(r.in, r.verb)
	}
	if word, ok := terms[0].(syntax.Word); ok && slot.Kind == vocabulary.Choice {
		f = unknownWord.At(place, fmt.Sprintf("%q is not one of the words %s takes", word.Text, after.Text))
		f.Hint = "known here: " + strings.Join(slot.Words, ", ")
		if meant, sure, ok := vocabulary.Synonym(word.Text, slot.Words); ok && sure {
			f.Repair(place, meant)
		} else if ok {
			f.Write(place, meant)
			f.Hint = fmt.Sprintf("%s is the nearest to it; known here: %s", meant, strings.Join(slot.Words, ", "))
		} else if meant, ok := vocabulary.Inflected(word.Text, slot.Words); ok {
			f.Repair(place, meant)
		} else if meant, ok := nearest.Word(word.Text, slot.Words); ok && !strings.ContainsAny(word.Text, "0123456789") {
			f.AskOnly(place, meant, certain(word.Text, slot.Words))
		}
	}
	number := func(t syntax.Term) bool { _, ok := t.(syntax.Amount); return ok }
	if slices.Contains([]vocabulary.Kind{vocabulary.Moment, vocabulary.Clock, vocabulary.Hour}, slot.Kind) && slices.ContainsFunc(terms, number) {
		f.Hint = "a time of day has its minutes, or am or pm: 07:00, 7 am"
		r.clocksMeant(&f, terms)
	}
	if day := place.Text(); slot.Kind == vocabulary.Moment && len(terms) == 1 && isDay(day) {
		f.Hint = "the time of day stands behind the date"
	}
	if t, ok := terms[0].(syntax.Text); ok && slices.Contains([]vocabulary.Kind{vocabulary.Moment, vocabulary.Clock, vocabulary.Hour, vocabulary.Date}, slot.Kind) && calendar.Looks(t.Value) {
		f.Repair(place, t.Value) // a time stands in no quotes
	}
	if slot.Kind == vocabulary.Name || slot.Kind == vocabulary.Text {
		f.Hint = "write it in quotes, with all its words"
	}
	r.note(f)
}

// analysesOf are what a value may have been found of, where it is few.
func analysesOf(t syntax.Term) (words []string) {
	a, ok := t.(syntax.Amount)
	if !ok {
		return nil
	}
	q, err := value.Quantity(a.Low, nil)
	if err != nil {
		return nil
	}
	for _, one := range vocabulary.Analyses() {
		if slices.Contains(one.Dims(), q.Dimension) {
			words = append(words, one.Word)
		}
	}
	if len(words) > mostOffered {
		return nil
	}
	return words
}

// formOf is the form of a statement.
func formOf(in vocabulary.Block, word string) string {
	if row, ok := vocabulary.Lookup(in, word); ok {
		return vocabulary.Form(*row)
	}
	return ""
}

func isDay(text string) bool { _, err := time.Parse(time.DateOnly, text); return err == nil }

func (r *statementReader) tooMany(terms []syntax.Term, after syntax.Word) {
	s := terms[0].Range().Join(terms[len(terms)-1].Range())
	place := r.at(s)
	f := wordsTooMany.At(place, fmt.Sprintf("%s has no place for %s", after.Text, place.Text()))
	if a, ok := terms[0].(syntax.Amount); ok && len(terms) == 1 {
		f.Hint = orElse(r.leadHint(a, after), f.Hint)
	}
	r.note(f)
}
