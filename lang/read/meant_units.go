package read

import (
	"slices"
	"strings"

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
			for _, want := range r.wantedAt(row, list, i) {
				likely := r.unitsLikely(want.dim, p.text, timesOf(row, list, i))
				for _, unit := range fitting(likely, want.sense.OfAny(want.dim), func(unit string) (quantity.Range, bool) { return rangeIn(p.text, unit) }) {
					made := inUnitWritten(p.text, unit, want.dim)
					if of, ok := ofHowMany(list, i); ok && want.dim == quantity.Share {
						made.text = percent(of)
					}
					more = append(more, with(list, i, i+1, made))
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

// want is what a number may be.
type want struct {
	dim   quantity.Dimension
	sense *vocabulary.Sense
}

// wantedAt lists what a number among the pieces may be: what the clause takes that it stands in,
// or the row in front of its clauses, or any of them of which no other piece is.
func (r *statementReader) wantedAt(row *vocabulary.Row, pieces []piece, at int) (list []want) {
	var slots []vocabulary.Slot
	switch m, ok := vocabulary.FindMeasure(pieces[measureBefore(pieces, at)].text); {
	case ok && slices.Contains(m.Dims, quantity.Number):
		return nil
	case ok:
		slots = []vocabulary.Slot{{Dims: m.Dims}}
	case pieces[at-1].kind == clausePiece:
		if def, ok := row.Clause(pieces[at-1].text); ok {
			slots = def.Slots
		}
	case at == 1 && len(vocabulary.Wanted(row.Slots)) > 0:
		slots = row.Slots
	default:
		slots = slices.Clone(row.Slots)
		for _, c := range row.Clauses {
			slots = append(slots, c.Slots...)
		}
	}
	for _, d := range dimensions {
		taken := slices.ContainsFunc(pieces, func(p piece) bool { return p.kind == valuePiece && p.dim == d })
		i := slices.IndexFunc(slots, func(s vocabulary.Slot) bool { return takes(s, d) })
		if i >= 0 && (!taken || len(slots) == 1 && pieces[at-1].kind == clausePiece) {
			list = append(list, want{d, slots[i].Sense})
		}
	}
	steeped := r.in == vocabulary.Steep || r.in == vocabulary.Repeat
	if len(list) > 1 && list[0].dim == quantity.Temperature && list[1].dim == quantity.Time && steeped {
		return list[:2] // 7 to 14 may be either
	}
	return list[:min(len(list), 1)]
}

// ofHowMany is the share that a number is of the one behind it: 194 of 200.
func ofHowMany(pieces []piece, i int) (share float64, ok bool) {
	if i+2 >= len(pieces) || pieces[i+1].text != clauseOf {
		return 0, false
	}
	n, okN := valueAt(pieces, i)
	all, okAll := valueAt(pieces, i+2)
	return n.SI / all.SI, okN && okAll && all.SI > 0 && n.SI > 1 && n.SI <= all.SI
}

// inUnitWritten is the piece of a number with its unit: a share of one as one of a hundred.
func inUnitWritten(number, unit string, d quantity.Dimension) piece {
	if q, err := quantity.Parse(number); err == nil && d == quantity.Share && q.SI < 1 && q.SI > 0 {
		if plain, ok := numberOf(q); ok {
			number = movePoint(plain, 2)
		} else {
			return piece{text: percent(q.SI), kind: valuePiece, dim: d}
		}
	}
	return piece{text: number + " " + unit, kind: valuePiece, dim: d}
}

// rangeIn reads a number, or the two of a range, in a unit.
func rangeIn(number, unit string) (quantity.Range, bool) {
	low, high, two := strings.Cut(number, " "+vocabulary.To+" ")
	if !two {
		high = low
	}
	return between(low, high, unit)
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
func timesOf(row *vocabulary.Row, pieces []piece, at int) string {
	if pieces[at-1].kind == clausePiece {
		return pieces[at-1].text
	}
	return row.Word
}
