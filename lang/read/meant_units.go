package read

import (
	"slices"

	"maltwright/lang/quantity"
	"maltwright/lang/vocabulary"
)

// unitsRight gives the pieces with the unit behind each number that lacks one, in each way that
// can be meant: of a temperature in the degrees of the house, and where it says of none, in
// either.
func (r *statementReader) unitsRight(row *vocabulary.Row, pieces []piece) [][]piece {
	lists := [][]piece{pieces}
	if takesNumbers(row) {
		return lists
	}
	for i, p := range pieces {
		if p.kind != valuePiece || p.dim != quantity.Number {
			continue
		}
		var more [][]piece
		for _, list := range lists {
			for _, d := range r.wantedAt(row, list, i) {
				for _, unit := range r.unitsLikely(d, p.text, timesOf(r.in, row, list, i)) {
					more = append(more, with(list, i, i+1, piece{text: p.text + " " + unit, kind: valuePiece, dim: d}))
				}
			}
		}
		if len(more) > 0 && len(more) <= 2*mostOffered {
			lists = more
		}
	}
	return lists
}

// takesNumbers tells whether a row takes numbers without a unit.
func takesNumbers(row *vocabulary.Row) bool {
	is := func(s vocabulary.Slot) bool { return slices.Contains(s.Dims, quantity.Number) }
	return slices.ContainsFunc(row.Slots, is) || slices.ContainsFunc(row.Clauses, func(c vocabulary.Clause) bool { return slices.ContainsFunc(c.Slots, is) })
}

// dimensions are those of which a number without its unit may be, the likeliest first.
var dimensions = []quantity.Dimension{quantity.Temperature, quantity.Time, quantity.Share, quantity.Mass, quantity.Volume, quantity.Area, quantity.Length, quantity.Power, quantity.Flow}

// wantedAt lists of which dimensions a number among the pieces may be: those of the clause that
// it stands in, or any that the row takes and no other piece has.
func (r *statementReader) wantedAt(row *vocabulary.Row, pieces []piece, at int) (list []quantity.Dimension) {
	var dims []quantity.Dimension
	if m, ok := vocabulary.FindMeasure(pieces[measureBefore(pieces, at)].text); ok {
		dims = m.Dims
	} else if def, ok := row.Clause(pieces[at-1].text); ok && pieces[at-1].kind == clausePiece {
		dims = vocabulary.Wanted(def.Slots)
	} else {
		dims = vocabulary.Wanted(row.Slots)
		for _, c := range row.Clauses {
			dims = append(dims, vocabulary.Wanted(c.Slots)...)
		}
		dims = slices.DeleteFunc(dims, func(d quantity.Dimension) bool {
			return slices.ContainsFunc(pieces, func(p piece) bool { return p.kind == valuePiece && p.dim == d })
		})
	}
	for _, d := range dimensions {
		if slices.Contains(dims, d) {
			list = append(list, d)
		}
	}
	steeped := r.in == vocabulary.Steep || r.in == vocabulary.Repeat
	if len(list) > 1 && list[0] == quantity.Temperature && list[1] == quantity.Time && steeped {
		return list[:2] // 7 to 14 may be either
	}
	return list[:min(len(list), 1)]
}

// measureBefore is where the measure of a test stands whose value is at a place.
func measureBefore(pieces []piece, at int) int {
	if at > 1 && pieces[at-1].kind == boundPiece {
		return at - 2
	}
	return at - 1
}

// timesOf is the word that tells in which unit a time among the pieces is likely: of the clause
// it stands in, or of the row.
func timesOf(in vocabulary.Block, row *vocabulary.Row, pieces []piece, at int) string {
	if pieces[at-1].kind == clausePiece {
		return pieces[at-1].text
	}
	return row.Word
}
