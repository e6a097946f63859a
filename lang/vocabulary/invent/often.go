package invent

import "maltwright/lang/vocabulary"

// oftens are the clauses of which a statement that is done again has one.
var oftens = []string{"every", "at"}

// often is the one of them that is written; "" where the statement has no choice.
func (w *writer) often(word string) string {
	if word != vocabulary.VerbTurn {
		return ""
	}
	if w.odds(3) {
		return oftens[1]
	}
	return oftens[0]
}
