package invent

import (
	"slices"

	"maltwright/lang/vocabulary"
)

// alternatives are clauses of which a statement has one.
var alternatives = map[string][]string{vocabulary.VerbTurn: {"every", "at"}, vocabulary.VerbGerminate: {"on", "in"}}

// chosen is the one of them that is written, mostly the first; "" where the statement has no
// choice.
func (w *writer) chosen(word string) string {
	list := alternatives[word]
	switch {
	case list == nil:
		return ""
	case w.odds(3):
		return list[1]
	}
	return list[0]
}

// written tells whether a clause that may be left out is written beside the one that was chosen.
func (w *writer) written(word, clause, chosen string) bool {
	if slices.Contains(alternatives[word], clause) {
		return clause == chosen
	}
	return w.wants(clause)
}
