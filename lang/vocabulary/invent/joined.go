package invent

import (
	"slices"

	"maltwright/lang/vocabulary"
)

// joined writes the values of a clause that takes several, each of its choices once.
func (w *writer) joined(c *vocabulary.Clause) {
	if c.Slots[0].Kind != vocabulary.Choice {
		w.slots(c.Slots, c.Word)
		return
	}
	left := slices.Clone(c.Slots[0].Words)
	for again := true; again && len(left) > 0; again = w.odds(3) {
		if len(left) < len(c.Slots[0].Words) {
			w.WriteString(" " + vocabulary.And)
		}
		i := w.IntN(len(left))
		word := left[i]
		left = slices.Delete(left, i, i+1)
		w.WriteString(" " + word)
		switch word {
		case vocabulary.WithAirflow, vocabulary.WithOverflow, vocabulary.WithReturns:
			w.WriteString(" ")
			w.returns = word == vocabulary.WithReturns
			w.slot(&c.Slots[1], c.Word)
			w.returns = false
		case vocabulary.WithAir: // as much as the water takes, so that no more can be said of it
			left = slices.DeleteFunc(left, func(s string) bool { return s == vocabulary.WithAirflow })
		}
		if word == vocabulary.WithAirflow {
			left = slices.DeleteFunc(left, func(s string) bool { return s == vocabulary.WithAir })
		}
	}
}
