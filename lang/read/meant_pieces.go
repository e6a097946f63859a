package read

import (
	"slices"
	"strings"
	"unicode"

	"maltwright/lang/quantity"
	"maltwright/lang/source"
	"maltwright/lang/syntax"
	"maltwright/lang/vocabulary"
)

// piece is a part of the header of a statement.
type piece struct {
	text string
	kind pieceKind
	dim  quantity.Dimension // of a value
	or   []string           // what may as well be meant by a piece that nobody wrote
}

type pieceKind int

const (
	verbPiece pieceKind = iota
	wordPiece
	clausePiece
	boundPiece
	valuePiece
	textPiece   // in quotes
	momentPiece // a date, a time of day or both
	unitPiece   // what stands where a unit does, and is none
	otherPiece  // what is none of these, as a quantity that does not read
	asidePiece  // a comment, which stands last
)

// piecesOf cuts the header of a statement into its pieces. Values of several kinds that stand
// side by side read as one quantity, and are cut apart.
func piecesOf(at func(source.Span) source.Place, s *syntax.Statement) []piece {
	list := []piece{{text: s.Verb.Text, kind: verbPiece}}
	terms := func(terms []syntax.Term) {
		for _, t := range terms {
			list = append(list, pieceOf(at, t)...)
		}
	}
	terms(s.Terms)
	for _, c := range s.Clauses {
		list = append(list, piece{text: c.Word.Text, kind: clausePiece})
		terms(c.Terms)
	}
	return list
}

func pieceOf(at func(source.Span) source.Place, t syntax.Term) []piece {
	text := at(t.Range()).Text()
	switch t := t.(type) {
	case syntax.Word:
		return []piece{{text: t.Text, kind: wordPiece}}
	case syntax.Text:
		return []piece{{text: text, kind: textPiece}}
	case syntax.Moment:
		return []piece{{text: text, kind: momentPiece}}
	case syntax.Bounded:
		return append([]piece{{text: at(t.Bound.Span).Text(), kind: boundPiece}}, pieceOf(at, t.Value)...)
	case syntax.Amount:
		if t.High == nil && len(t.Low.Parts) > 1 {
			return apart(partsOf(t.Low), text)
		}
		if low, err := quantity.Make(partsOf(t.Low)...); err == nil && t.High != nil && low.Dimension != quantity.Number {
			if high, err := quantity.Make(partsOf(*t.High)...); err == nil && high.Dimension != low.Dimension {
				return []piece{{text: settled(t.Low), kind: valuePiece, dim: low.Dimension}, {text: vocabulary.To, kind: clausePiece}, {text: settled(*t.High), kind: valuePiece, dim: high.Dimension}}
			}
		}
		if t.High == nil {
			text = settled(t.Low)
		} else if _, ok := quantity.OfTime(t.High.Parts[0].Unit.Text); ok {
			text = settled(t.Low) + " " + vocabulary.To + " " + settled(*t.High)
		}
		last := t.Low
		if t.High != nil { // of 14 to 18 °C the first has no unit
			last = *t.High
		}
		if q, err := quantity.Make(partsOf(last)...); err == nil {
			return []piece{{text: text, kind: valuePiece, dim: q.Dimension}}
		}
		if number, unit := last.Parts[0].Number.Text, last.Parts[0].Unit; t.High == nil && wordLike(unit.Text) {
			if _, err := quantity.Parse(number); err == nil {
				return []piece{{text: number, kind: valuePiece}, {text: unit.Text, kind: unitPiece}}
			}
		}
	}
	return []piece{{text: text, kind: otherPiece}}
}

// apart cuts the parts of a quantity apart that are of different kinds.
func apart(parts []quantity.Part, text string) (list []piece) {
	if q, err := quantity.Make(parts...); err == nil {
		return []piece{{text: text, kind: valuePiece, dim: q.Dimension}}
	}
	for _, p := range parts {
		q, err := quantity.Make(p)
		if err != nil {
			return []piece{{text: text, kind: otherPiece}}
		}
		list = append(list, piece{text: strings.TrimSpace(p.Number + " " + p.Unit), kind: valuePiece, dim: q.Dimension})
	}
	return list
}

// partsOf are the parts of a quantity, with the words of other languages for a time put right.
func partsOf(q syntax.Quantity) []quantity.Part {
	parts := q.Written()
	for i := range parts {
		if unit, ok := quantity.OfTime(parts[i].Unit); ok {
			parts[i].Unit = unit
		}
	}
	return parts
}

// settled writes a quantity with the degrees that its file means by a word: 180 °F for 180 deg.
func settled(q syntax.Quantity) string {
	var parts []string
	for _, p := range partsOf(q) {
		parts = append(parts, strings.TrimSpace(p.Number+" "+p.Unit))
	}
	return strings.Join(parts, " ")
}

// wordLike tells whether what stands where a unit does is a word: the out of 194 out of 200.
func wordLike(unit string) bool {
	return len(unit) > 1 && !strings.ContainsFunc(unit, func(r rune) bool { return !unicode.IsLetter(r) })
}

func joined(pieces []piece) string {
	words := make([]string, len(pieces))
	for i, p := range pieces {
		words[i] = p.text
	}
	return strings.Join(words, " ")
}

// with gives the pieces with others in the place of some.
func with(pieces []piece, from, to int, others ...piece) []piece {
	return slices.Concat(pieces[:from], others, pieces[to:])
}

// hasKind tells whether one of the pieces is of a kind.
func hasKind(pieces []piece, kind pieceKind) bool {
	return slices.ContainsFunc(pieces, func(p piece) bool { return p.kind == kind })
}
