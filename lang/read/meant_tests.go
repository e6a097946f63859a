package read

import (
	"slices"

	"maltwright/lang/quantity"
	"maltwright/lang/vocabulary"
)

// testsRight puts what is measured in front of what is asked of it: at most 35 % moisture, chalky
// rub; and names it where a word is of one measure alone: and chalky.
func (r *statementReader) testsRight(measures []string, pieces []piece) []piece {
	if len(measures) == 0 {
		return pieces
	}
	for i := 1; i < len(pieces); i++ {
		at, words := i, 0
		switch {
		case pieces[i].kind == valuePiece:
			if pieces[i-1].kind == boundPiece {
				at--
			}
			words = measureAt(measures, pieces, i+1)
		case pieces[i].kind == wordPiece && i > 1 && asks(measures, pieces[i].text) == pieces[i-1].text:
			pieces = with(pieces, i, i, piece{text: quantity.Is.String(), kind: boundPiece})
			i++
			continue
		case pieces[i].kind == wordPiece && asks(measures, pieces[i].text) != "":
			words = measureAt(measures, pieces, i+1)
			if free := i > 1 && pieces[i-1].text == vocabulary.And; words == 0 && free {
				return r.testsRight(measures, with(pieces, i, i, piece{text: asks(measures, pieces[i].text), kind: wordPiece}, piece{text: quantity.Is.String(), kind: boundPiece}))
			}
		}
		if before := at - 1; words == 0 || before > 0 && slices.Contains(measures, pieces[before].text) || at > 2 && slices.Contains(measures, pieces[at-2].text+" "+pieces[before].text) {
			continue
		}
		pieces = slices.Concat(pieces[:at], pieces[i+1:i+1+words], pieces[at:i+1], pieces[i+1+words:])
		if i += words; pieces[i].kind == wordPiece {
			i -= 1 + words // a word may lack its is
		}
	}
	return pieces
}

// measureAt tells how many pieces from a place on name a measure.
func measureAt(measures []string, pieces []piece, i int) int {
	switch {
	case i+1 < len(pieces) && slices.Contains(measures, pieces[i].text+" "+pieces[i+1].text):
		return 2
	case i < len(pieces) && slices.Contains(measures, pieces[i].text):
		return 1
	}
	return 0
}

// asks is the measure that is asked of by a word; "" where none is.
func asks(measures []string, word string) string {
	for _, name := range measures {
		if m, ok := vocabulary.FindMeasure(name); ok && slices.Contains(m.Words, word) {
			return name
		}
	}
	return ""
}

// placesRight puts the place of a temperature behind its clause word: air-on from 55 to 65 °C, at
// air-on from 55 to 65 °C; and joins from air-on 55 °C to air-on 65 °C.
func (w *wording) placesRight(pieces []piece) []piece {
	for i := 1; i+1 < len(pieces); i++ {
		if pieces[i].kind != wordPiece || !slices.Contains(w.places, pieces[i].text) || alsoChoice(w.row, pieces[i].text) || vocabulary.SaysNothing(pieces[i].text) && pieces[i-1].kind == verbPiece {
			continue
		}
		next := pieces[i+1]
		switch last := i + 2; {
		case next.kind == clausePiece && (next.text == clauseFrom || next.text == clauseAt) && last < len(pieces) && pieces[last].kind == valuePiece:
			from := i
			if pieces[i-1].kind == clausePiece && (pieces[i-1].text == clauseAt || pieces[i-1].text == clauseFrom) {
				from--
			}
			pieces = with(pieces, from, i+2, next, pieces[i])
		case next.kind == valuePiece && i+4 < len(pieces) && pieces[i+2].text == vocabulary.To && pieces[i+3].text == pieces[i].text && pieces[i+4].kind == valuePiece:
			pieces = with(pieces, i+1, i+5, piece{text: next.text + " " + vocabulary.To + " " + pieces[i+4].text, kind: valuePiece, dim: next.dim})
		}
	}
	return pieces
}
