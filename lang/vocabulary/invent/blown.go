package invent

import (
	"slices"

	"maltwright/lang/vocabulary"
)

// whole are the statements of which some clauses stand only together, or not at all: each
// writes all of its own.
var whole = map[string]func(*writer, *vocabulary.Row){vocabulary.VerbAir: (*writer).air, vocabulary.VerbSprinkle: (*writer).sprinkle, vocabulary.FactFan: (*writer).fan}

// ofItself writes such a statement; it is false for every other, as for the air of a site.
func (w *writer) ofItself(row *vocabulary.Row) bool {
	write := whole[row.Word]
	if write == nil || len(row.Clauses) == 0 || w.word == vocabulary.VerbAir && w.block == vocabulary.KilnFacts {
		return false
	}
	write(w, row)
	return true
}

// air is that of the room over a withering piece, or what a fan blows.
func (w *writer) air(row *vocabulary.Row) {
	at, _ := row.Clause("at")
	c, slot := *at, at.Slots[0]
	blown := w.block == vocabulary.Germinate || w.odds(2)
	slot.Places, slot.Placed = []string{vocabulary.PlaceAirOn}, true
	if !blown {
		slot.Places, slot.Placed = []string{vocabulary.PlaceRoom, vocabulary.PlaceAir}, false
	}
	c.Slots = []vocabulary.Slot{slot}
	w.clause(&c)
	if !blown {
		return
	}
	if w.odds(2) {
		w.of(row, "with")
	}
	if w.odds(2) {
		w.of(row, "when")
	}
	if w.odds(3) {
		w.of(row, "for", "every")
	}
}

// sprinkle is of an amount or to a moisture, at intervals or when something holds.
func (w *writer) sprinkle(row *vocabulary.Row) {
	if w.odds(2) {
		much := row.Slots[0]
		much.Optional = false
		w.slots([]vocabulary.Slot{much}, "")
	} else {
		w.of(row, "to")
	}
	if w.odds(2) {
		w.of(row, "every")
	} else {
		w.of(row, "when")
	}
}

// of writes clauses of the row.
func (w *writer) of(row *vocabulary.Row, words ...string) {
	for i := range row.Clauses {
		if slices.Contains(words, row.Clauses[i].Word) {
			w.clause(&row.Clauses[i])
		}
	}
}
