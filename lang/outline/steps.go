package outline

import (
	"math"
	"slices"

	"maltwright/lang/source"
	"maltwright/lang/syntax"
	"maltwright/lang/value"
	"maltwright/lang/vocabulary"
)

// StepName is a step as the record of a batch names it: after soak 3.
type StepName struct {
	Process Name // of which the batch is
	Word    string
	Number  int // from 1; 0 where it is not said
	Place   source.Place
}

// StepAt gives the step that is named at a place of a file; ok is false where none is.
func StepAt(t *syntax.Tree, offset int) (step StepName, ok bool) {
	for _, b := range t.Top.Statements {
		if vocabulary.Opens(vocabulary.File, b.Verb.Text) != vocabulary.Batch || b.Body == nil || offset < b.Start || b.End < offset {
			continue
		}
		of := slices.IndexFunc(Names(t), func(n Name) bool {
			return n.Kind == vocabulary.Process && b.Start <= n.Place.Start && n.Place.End <= b.Body.Start
		})
		if of < 0 {
			return step, false
		}
		for _, s := range b.Body.Statements {
			row, known := vocabulary.Lookup(vocabulary.Batch, s.Verb.Text)
			if !known || s.Broken || offset < s.Start || s.Head().End < offset {
				continue
			}
			step, ok = stepIn(row.Slots, s.Terms)
			for _, c := range s.Clauses {
				if def, takes := row.Clause(c.Word.Text); takes && c.Start <= offset && offset <= c.End {
					step, ok = stepIn(def.Slots, c.Terms)
				}
			}
			step.Process, step.Place.File = Names(t)[of], t.File
			return step, ok && step.Place.Start <= offset && offset <= step.Place.End
		}
	}
	return step, false
}

// stepIn reads a step where the first of some slots is one.
func stepIn(slots []vocabulary.Slot, terms []syntax.Term) (s StepName, ok bool) {
	if len(slots) == 0 || len(terms) == 0 || slots[0].Kind != vocabulary.Choice || !slices.ContainsFunc(slots[0].Words, vocabulary.IsStep) {
		return s, false
	}
	w, ok := terms[0].(syntax.Word)
	if !ok || !vocabulary.IsStep(w.Text) {
		return s, false
	}
	s.Word, s.Place.Span = w.Text, w.Span
	if len(slots) > 1 && len(terms) > 1 {
		if a, is := terms[1].(syntax.Amount); is {
			s.Number = times(a, slots[1])
			s.Place.Span = s.Place.Join(a.Span)
		}
	}
	return s, true
}

// mostTimes is more often than any step is done.
const mostTimes = 1_000_000

// times is a whole number of a slot, the high end of a range; 0 where it is none.
func times(a syntax.Amount, slot vocabulary.Slot) int {
	r, err := value.Range(a, slot.Dims)
	if err != nil || !(r.High.SI >= 1) || r.High.SI != math.Trunc(r.High.SI) {
		return 0
	}
	return int(min(r.High.SI, mostTimes))
}

// StepOf finds a step of a process of a file, by its word and its number: the steps of a repeat are
// counted each time, as a forecast counts them. Where the number is 0 it is the first.
func StepOf(t *syntax.Tree, process, word string, number int) (source.Place, bool) {
	for _, s := range t.Top.Statements {
		if vocabulary.Opens(vocabulary.File, s.Verb.Text) != vocabulary.Process || s.Body == nil || len(s.Terms) == 0 {
			continue
		}
		if name, ok := s.Terms[0].(syntax.Text); ok && name.Value == process {
			c := stepCount{word: word, left: max(number, 1)}
			if at := c.find(s.Body, vocabulary.Process); at != nil {
				return source.Place{File: t.File, Span: at.Head()}, true
			}
		}
	}
	return source.Place{}, false
}

// stepCount looks for the n-th step of a word.
type stepCount struct {
	word string
	left int
}

func (c *stepCount) find(b *syntax.Block, in vocabulary.Block) *syntax.Statement {
	for _, s := range b.Statements {
		if s.Verb.Text == c.word && vocabulary.IsStep(s.Verb.Text) && vocabulary.Ordered(in, s.Verb.Text) {
			if c.left--; c.left == 0 {
				return s
			}
		}
		if s.Body == nil {
			continue
		}
		opens := vocabulary.Opens(in, s.Verb.Text)
		if opens == vocabulary.Repeat {
			c.shorten(s)
		}
		if at := c.find(s.Body, opens); at != nil {
			return at
		}
	}
	return nil
}

// shorten leaves out of the count what a repeat does again and again, but for one round that is left to be
// looked through: the one with the step in it, or the last.
func (c *stepCount) shorten(repeat *syntax.Statement) {
	each, most := c.in(repeat.Body), timesOf(repeat)
	if each == 0 {
		return
	}
	rounds := min((c.left-1)/each, most-1)
	c.left -= rounds * each
}

// in counts the steps of the word in one round.
func (c *stepCount) in(b *syntax.Block) int {
	n := 0
	for _, s := range b.Statements {
		if s.Verb.Text == c.word {
			n++
		}
		if s.Body != nil {
			n = min(n+c.in(s.Body)*timesOf(s), mostTimes)
		}
	}
	return n
}

// timesOf is how often a repeat does its steps at the most.
func timesOf(s *syntax.Statement) int {
	row, ok := vocabulary.Lookup(vocabulary.Steep, s.Verb.Text)
	if !ok || row.Opens != vocabulary.Repeat {
		return 1
	}
	for _, t := range s.Terms {
		if b, is := t.(syntax.Bounded); is {
			t = b.Value
		}
		if a, is := t.(syntax.Amount); is {
			return max(times(a, row.Slots[0]), 1)
		}
	}
	return mostTimes
}
