package offer

import (
	"slices"
	"strings"

	"maltwright/lang/quantity"
	"maltwright/lang/vocabulary"
)

// ops are the bounds that may stand in front of a value.
func (l *list) ops(w *want) []quantity.Op {
	if w.measure != nil && w.measure.Words != nil {
		return []quantity.Op{quantity.Is}
	}
	if w.measure != nil {
		ops := []quantity.Op{quantity.AtLeast, quantity.AtMost, quantity.Above, quantity.Below}
		if up, ok := w.measure.GoesUp(l.stage()); ok && !up {
			ops[0], ops[1], ops[2], ops[3] = ops[1], ops[0], ops[3], ops[2]
		}
		return ops
	}
	if l.in == vocabulary.Limits {
		return []quantity.Op{limitOp(l.row.Word)}
	}
	return []quantity.Op{quantity.AtLeast, quantity.AtMost}
}

func limitOp(word string) quantity.Op {
	for _, limit := range vocabulary.LimitNames() {
		if limit.Word == word {
			return limit.Op
		}
	}
	return quantity.AtMost
}

func (l *list) addBound(w *want, bound string) {
	if l.in == vocabulary.Limits && bound != limitOp(l.row.Word).String() {
		return
	}
	l.add(Item{Label: bound, Kind: Join, Detail: "a bound", Doc: about(bound), Needed: w.needed, Filter: filter(bound, vocabulary.PhrasesFor(bound))})
}

// stage is the block whose measures a condition asks of: that which a statement opens, or in
// which it stands.
func (l *list) stage() vocabulary.Block {
	if l.row.Opens != vocabulary.None {
		return l.row.Opens
	}
	return l.in
}

func (l *list) condition(w *want) {
	switch {
	case w.measure == nil || w.first != "":
		l.measures(w)
		if w.measure == nil || !l.measurable(*w.measure) {
			return
		}
		fallthrough
	case l.measurable(*w.measure):
		l.asked(w)
	}
}

func (l *list) measurable(m vocabulary.Measure) bool {
	return m.Promise && l.stage() == vocabulary.Process || slices.Contains(m.In, l.stage())
}

// measures lists what a condition can name here; of two words where the first stands the second.
func (l *list) measures(w *want) {
	for _, m := range vocabulary.Measures() {
		rest, of := m.Word, true
		if w.first != "" {
			rest, of = strings.CutPrefix(m.Word, w.first+" ")
		}
		if of && l.measurable(m) {
			l.add(Item{Label: m.Word, Kind: Choice, Detail: "what is measured", Doc: m.Doc, Needed: w.needed, Edit: Edit{l.word, rest}, Filter: filter(rest, vocabulary.SynonymsOf(m.Word))})
		}
	}
}

// asked lists what is asked of a measure.
func (l *list) asked(w *want) {
	m := *w.measure
	l.at.Measure = m.Word
	switch {
	case m.Bare:
		return
	case w.unit || w.to:
		if w.unit {
			l.units(w, m.Dims, nil)
		}
		if w.to {
			l.join(w, vocabulary.To, "the other end of the range")
		}
		return
	case !w.bounded:
		for _, op := range l.ops(w) {
			l.addBound(w, op.String())
		}
	}
	if m.Words != nil {
		for _, word := range m.Words {
			l.add(Item{Label: word, Kind: Choice, Detail: m.Word, Doc: about(word), Needed: w.needed, Filter: filter(word, vocabulary.SynonymsOf(word))})
		}
		return
	}
	l.class++
	l.unitOfNumber(w, m.Dims)
	l.figures(w, !w.bounded, m.Dims, nil)
}
