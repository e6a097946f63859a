package read

import (
	"cmp"
	"slices"
	"strings"

	"maltwright/lang/nearest"
	"maltwright/lang/quantity"
	"maltwright/lang/vocabulary"
)

// change gives the pieces with a change at one of them, in each way that there is.
type change func(row *vocabulary.Row, pieces []piece, i int) [][]piece

// likely are the changes that leave everything said, the likeliest first.
var likely = []change{otherWord, placeWord, joinedOn, clauseInFront, turnedRound, otherClause, forward}

// changesOf lists the pieces with one change each.
func changesOf(row *vocabulary.Row, pieces []piece, changes ...change) (list [][]piece) {
	for _, change := range changes {
		for i := 1; i < len(pieces); i++ {
			list = append(list, change(row, pieces, i)...)
		}
	}
	return list
}

// with gives the pieces with others in the place of some.
func with(pieces []piece, from, to int, others ...piece) []piece {
	return slices.Concat(pieces[:from], others, pieces[to:])
}

// choices lists the words that the values of a row can be, clause by clause.
func choices(row *vocabulary.Row, do func(clause *vocabulary.Clause, words []string)) {
	for _, s := range row.Slots {
		if s.Kind == vocabulary.Choice {
			do(nil, s.Words)
		}
	}
	for i := range row.Clauses {
		for _, s := range row.Clauses[i].Slots {
			if s.Kind == vocabulary.Choice {
				do(&row.Clauses[i], s.Words)
			}
		}
	}
}

// otherWord writes a word of the language for another one of the same meaning.
func otherWord(row *vocabulary.Row, pieces []piece, i int) (list [][]piece) {
	if pieces[i].kind != wordPiece {
		return nil
	}
	choices(row, func(_ *vocabulary.Clause, words []string) {
		if word, _, ok := vocabulary.Synonym(pieces[i].text, words); ok {
			list = append(list, with(pieces, i, i+1, piece{text: word, kind: wordPiece}))
		}
	})
	return list
}

// placeWord writes the place of a temperature as the language does: air-on for airon, and for
// air on.
func placeWord(row *vocabulary.Row, pieces []piece, i int) (list [][]piece) {
	if pieces[i].kind != wordPiece && pieces[i].kind != textPiece {
		return nil
	}
	for _, word := range placesOf(row) {
		if i+1 < len(pieces) && pieces[i].text+"-"+pieces[i+1].text == word {
			list = append(list, with(pieces, i, i+2, piece{text: word, kind: wordPiece}))
		}
	}
	if meant, ok := nearest.Word(pieces[i].text, placesOf(row)); ok {
		list = append(list, with(pieces, i, i+1, piece{text: meant, kind: wordPiece}))
	}
	return list
}

// placesOf lists where the temperatures of a row may be taken.
func placesOf(row *vocabulary.Row) (list []string) {
	for _, c := range row.Clauses {
		for _, s := range c.Slots {
			list = append(list, s.Places...)
		}
	}
	return list
}

// joinedOn joins a clause that stands twice to the first, by and.
func joinedOn(row *vocabulary.Row, pieces []piece, i int) [][]piece {
	def, ok := row.Clause(pieces[i].text)
	if pieces[i].kind != clausePiece || !ok || !def.Joins || !slices.ContainsFunc(pieces[:i], func(p piece) bool { return p.kind == clausePiece && p.text == def.Word }) {
		return nil
	}
	return [][]piece{with(pieces, i, i+1, piece{text: vocabulary.And, kind: wordPiece})}
}

// clauseInFront writes the clause word that is missing in front of a word or a value, with the
// place of a temperature; or a word that must stand there.
func clauseInFront(row *vocabulary.Row, pieces []piece, i int) (list [][]piece) {
	switch pieces[i].kind {
	case wordPiece:
		choices(row, func(c *vocabulary.Clause, words []string) {
			if c != nil && slices.Contains(words, pieces[i].text) {
				list = append(list, with(pieces, i, i, piece{text: c.Word, kind: clausePiece}))
			}
		})
		for _, c := range leadFirst(row) { // in front of the place of a temperature
			if i+1 < len(pieces) && pieces[i+1].kind == valuePiece && !ofRow(row, pieces[i].text) && len(c.Slots) == 1 && slices.Contains(c.Slots[0].Places, pieces[i].text) && takes(c.Slots[0], pieces[i+1].dim) {
				list = append(list, with(pieces, i, i, piece{text: c.Word, kind: clausePiece}))
			}
		}
	case valuePiece:
		for _, c := range leadFirst(row) {
			slot := c.Slots[len(c.Slots)-1]
			if len(c.Slots) == 1 && slot.Kind == vocabulary.Amount && takes(slot, pieces[i].dim) && !another(pieces, i) {
				list = append(list, with(pieces, i, i, inFront(row, c.Word, slot)...))
			}
		}
		choices(row, func(_ *vocabulary.Clause, words []string) {
			if len(words) == 1 && words[0] != pieces[i-1].text {
				list = append(list, with(pieces, i, i, piece{text: words[0], kind: wordPiece}))
			}
		})
	}
	return list
}

// ofRow tells whether a row takes a word itself, in front of its clauses.
func ofRow(row *vocabulary.Row, word string) bool {
	return slices.ContainsFunc(row.Slots, func(s vocabulary.Slot) bool { return slices.Contains(s.Words, word) })
}

// leadFirst lists the clauses of a row, first the one whose value may stand right behind its
// word.
func leadFirst(row *vocabulary.Row) []vocabulary.Clause {
	list := slices.Clone(row.Clauses)
	slices.SortStableFunc(list, func(x, y vocabulary.Clause) int {
		return cmp.Compare(btoi(y.Word == row.Leads), btoi(x.Word == row.Leads))
	})
	return list
}

func btoi(is bool) int {
	if is {
		return 1
	}
	return 0
}

// another tells whether another value is of the dimension of this one: of two times nobody
// knows which is meant.
func another(pieces []piece, i int) bool {
	for j, p := range pieces {
		if j != i && p.kind == valuePiece && p.dim == pieces[i].dim {
			return true
		}
	}
	return false
}

func takes(s vocabulary.Slot, d quantity.Dimension) bool { return slices.Contains(s.Dims, d) }

// inFront is a clause word, and the place of a temperature that must say it.
func inFront(row *vocabulary.Row, word string, slot vocabulary.Slot) []piece {
	list := []piece{{text: word, kind: clausePiece}}
	if !slot.Placed {
		return list
	}
	place := vocabulary.PlaceAirOn
	if slices.Contains([]string{vocabulary.VerbRoast, vocabulary.VerbStew, vocabulary.VerbCool}, row.Word) {
		place = vocabulary.PlaceMalt
	}
	return append(list, piece{text: place, kind: wordPiece})
}

// turnedRound puts a word in front of its value: 2 l water.
func turnedRound(_ *vocabulary.Row, pieces []piece, i int) [][]piece {
	if i+1 < len(pieces) && pieces[i].kind == valuePiece && pieces[i+1].kind == wordPiece {
		return [][]piece{with(pieces, i, i+2, pieces[i+1], pieces[i])}
	}
	return nil
}

// otherClause writes a clause word of the row for one that it does not take.
func otherClause(row *vocabulary.Row, pieces []piece, i int) (list [][]piece) {
	if !foreign(row, pieces[i]) {
		return nil
	}
	for _, c := range row.Clauses {
		list = append(list, with(pieces, i, i+1, piece{text: c.Word, kind: clausePiece}))
	}
	return list
}

// foreign tells whether a piece is a clause word that the row does not take.
func foreign(row *vocabulary.Row, p piece) bool {
	_, known := row.Clause(p.text)
	return p.kind == clausePiece && !known
}

// forward puts a value further to the front.
func forward(_ *vocabulary.Row, pieces []piece, i int) (list [][]piece) {
	if pieces[i].kind != valuePiece {
		return nil
	}
	for j := 1; j < i; j++ {
		list = append(list, slices.Concat(pieces[:j], pieces[i:i+1], pieces[j:i], pieces[i+1:]))
	}
	return list
}

// leftOut leaves a word out that only explains, and is none of those that the row knows.
func leftOut(row *vocabulary.Row, pieces []piece, i int) [][]piece {
	if pieces[i].kind != wordPiece && !foreign(row, pieces[i]) {
		return nil
	}
	says := pieces[i].text == vocabulary.And || strings.ContainsAny(pieces[i].text, "0123456789")
	choices(row, func(_ *vocabulary.Clause, words []string) {
		_, _, another := vocabulary.Synonym(pieces[i].text, words)
		says = says || another || slices.Contains(words, pieces[i].text)
	})
	if says {
		return nil
	}
	return [][]piece{with(pieces, i, i+1)}
}
