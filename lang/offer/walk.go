package offer

import (
	"slices"

	"maltwright/lang/quantity"
	"maltwright/lang/syntax"
	"maltwright/lang/value"
	"maltwright/lang/vocabulary"
)

// want is what a statement may go on with.
type want struct {
	slot    *vocabulary.Slot
	needed  bool
	place   string              // of a temperature, said already
	beside  string              // the choice in front
	bounded bool                // a bound stands in front
	unit    bool                // a number stands in front that has no unit
	to      bool                // one end of a range stands in front
	high    bool                // and the to behind it
	more    []quantity.Part     // a number stands in front that goes on with this
	measure *vocabulary.Measure // what a condition asks of
	first   string              // the first word of a measure of two
	closes  string              // a word behind it that only makes the line read well: pale malt
	said    []string            // what stands already, of values that are joined
}

// course is how far a run of values goes.
type course struct {
	wants []want
	done  bool // all that is needed stands
	last  *want
}

// walk reads values by their slots, and tells what may stand behind them.
func walk(slots []vocabulary.Slot, terms []syntax.Term) (c course) {
	beside := ""
	for i := range slots {
		slot := &slots[i]
		w := want{slot: slot, beside: beside, needed: !slot.Optional && !slices.Contains(slot.Unless, beside)}
		if i+1 < len(slots) && slots[i+1].Kind == vocabulary.Literal && slots[i+1].Optional && i == 0 {
			w.closes = slots[i+1].Words[0]
		}
		if len(terms) == 0 {
			c.wants = append(c.wants, w)
			if w.needed {
				return c
			}
			continue
		}
		c.wants, c.last = nil, nil
		rest, more, ok := take(&w, terms)
		switch {
		case !ok && w.needed:
			return c
		case !ok:
			continue
		}
		if word, is := terms[0].(syntax.Word); is && slot.Kind == vocabulary.Choice {
			beside = word.Text
		}
		if terms = rest; more {
			c.wants = append(c.wants, w)
			if w.needed {
				return c
			}
		}
	}
	c.done = len(terms) == 0
	return c
}

// take takes the value of a slot. More tells that the last of the terms may go on in the slot,
// and w then says how.
func take(w *want, terms []syntax.Term) (rest []syntax.Term, more, ok bool) {
	switch w.slot.Kind {
	case vocabulary.Condition:
		more = takeCondition(w, terms)
		return nil, more, true
	case vocabulary.Amount:
		return takeAmount(w, terms)
	case vocabulary.Choice, vocabulary.Literal:
		word, is := terms[0].(syntax.Word)
		return terms[1:], false, is && (len(w.slot.Words) == 0 || slices.Contains(w.slot.Words, word.Text))
	case vocabulary.Name, vocabulary.Text:
		_, is := terms[0].(syntax.Text)
		return terms[1:], false, is
	}
	m, is := terms[0].(syntax.Moment)
	w.to, w.needed = is && m.To == nil && (w.slot.Kind == vocabulary.Clock || w.slot.Range), w.slot.Kind == vocabulary.Clock
	return terms[1:], is && len(terms) == 1 && w.to, is
}

func takeAmount(w *want, terms []syntax.Term) (rest []syntax.Term, more, ok bool) {
	if word, is := terms[0].(syntax.Word); is && slices.Contains(w.slot.Places, word.Text) {
		if w.place = word.Text; len(terms) == 1 {
			w.needed = true
			return nil, true, true
		}
		terms = terms[1:]
	}
	term := terms[0]
	if b, is := term.(syntax.Bounded); is {
		w.bounded, term = true, b.Value
	}
	a, is := term.(syntax.Amount)
	if !is || !fits(a, w.slot.Dims) {
		return terms, false, false
	}
	if len(terms) == 2 && goesOnIn(a, terms[1]) {
		w.unit, w.needed, w.more = true, true, a.Low.Written()
		return nil, true, true
	}
	w.goesOn(a, w.slot.Dims, w.slot.Range && !w.bounded)
	return terms[1:], len(terms) == 1 && (w.unit || w.to), true
}

// goesOnIn tells whether a number behind an amount goes on with it: the 4 of 5 lb 4 oz.
func goesOnIn(a syntax.Amount, behind syntax.Term) bool {
	next, ok := behind.(syntax.Amount)
	return ok && a.High == nil && next.High == nil && a.Low.Parts[0].Unit.Text != "" && next.Low.Parts[0].Unit.Text == ""
}

// goesOn tells how the last amount of a statement may go on.
func (w *want) goesOn(a syntax.Amount, dims []quantity.Dimension, ranged bool) {
	end := a.Low
	if a.High != nil {
		end = *a.High
	}
	w.unit = end.Parts[len(end.Parts)-1].Unit.Text == "" && !slices.Equal(dims, []quantity.Dimension{quantity.Number})
	w.to = ranged && a.High == nil
	w.needed = w.unit && !slices.Contains(dims, quantity.Number)
}

// fits tells whether an amount is of one of the dimensions, or may become so by a unit.
func fits(a syntax.Amount, dims []quantity.Dimension) bool {
	r, err := value.Range(a, dims)
	return err == nil || a.Low.Parts[0].Unit.Text == "" && (a.High == nil || r.Low.Dimension == quantity.Number)
}

// takeCondition tells how a condition may go on.
func takeCondition(w *want, terms []syntax.Term) (more bool) {
	tests := value.Joined(terms)
	part := tests[len(tests)-1]
	w.needed = true
	if len(part) == 0 {
		return true
	}
	m, ok := value.MeasuredBy(part)
	switch {
	case !ok:
		w.needed = false
		return false
	case len(m.Rest) == 0 && len(part) == 1 && begins(m.Name):
		w.first, w.measure = m.Name, m.Measure
		w.needed = m.Measure == nil || !m.Measure.Bare
		return true
	case m.Measure == nil:
		return false
	}
	w.measure = m.Measure
	switch {
	case len(m.Rest) == 0:
		w.needed = !m.Measure.Bare
		return w.needed
	case len(m.Rest) > 1:
		return false
	}
	return w.bears(m.Rest[0])
}

// bears tells whether the value of a measure may go on.
func (w *want) bears(t syntax.Term) (more bool) {
	b, bounded := t.(syntax.Bounded)
	if bounded {
		t = b.Value
	}
	w.bounded = bounded
	a, is := t.(syntax.Amount)
	if !is {
		w.needed = false
		return false
	}
	w.goesOn(a, w.measure.Dims, !bounded)
	w.needed = w.needed || w.to // a measure needs a bound or a range
	return w.unit || w.to
}

// begins tells whether a word is the first of a measure of two.
func begins(word string) bool {
	return slices.ContainsFunc(vocabulary.Measures(), func(m vocabulary.Measure) bool {
		return len(m.Word) > len(word) && m.Word[:len(word)+1] == word+" "
	})
}
