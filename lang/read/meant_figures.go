package read

import (
	"slices"
	"strconv"
	"strings"

	"maltwright/lang/quantity"
	"maltwright/lang/vocabulary"
)

// figure reads a figure as people say it with some pieces: seven hours, half an hour, 60 m3 per
// hour, 8 h 30, 3 x 3 ft. It gives how many pieces say it.
func (w *wording) figure(pieces []piece) (taken int, made []piece) {
	for _, say := range []func([]piece) (int, string){rate, w.perThousand, w.product, smaller, spoken} {
		if n, text := say(pieces); n > 0 {
			if q, err := quantity.Parse(text); err == nil {
				return n, []piece{{text: text, kind: valuePiece, dim: q.Dimension}}
			}
		}
	}
	return 0, nil
}

// wordAt is the word, small, at a place of the pieces; "" where none is.
func wordAt(pieces []piece, i int) string {
	if i < len(pieces) && slices.Contains([]pieceKind{wordPiece, clausePiece, unitPiece, boundPiece}, pieces[i].kind) {
		return strings.ToLower(pieces[i].text)
	}
	return ""
}

func valueAt(pieces []piece, i int) (q quantity.Quantity, ok bool) {
	if i >= len(pieces) || pieces[i].kind != valuePiece {
		return q, false
	}
	q, err := quantity.Parse(pieces[i].text)
	return q, err == nil
}

// rate joins a unit and the time for each of which it is: 60 m3 per hour, 12 l per minute.
func rate(pieces []piece) (int, string) {
	q, ok := valueAt(pieces, 0)
	if !ok || len(pieces) < 3 || !vocabulary.Apiece(wordAt(pieces, 1)) {
		return 0, ""
	}
	per, ok := quantity.Lookup(wordAt(pieces, 2))
	if !ok || per.Dimension != quantity.Time {
		return 0, ""
	}
	number, plain := numberOf(q)
	u, ok := quantity.Lookup(q.Unit() + "/" + per.Name)
	if !ok || !plain {
		return 0, ""
	}
	return 3, number + " " + u.Name
}

// perThousand leaves out of a weight of a thousand kernels that it is of a thousand.
func (w *wording) perThousand(pieces []piece) (int, string) {
	if w.row.Word != vocabulary.KernelWeight || len(pieces) < 3 || pieces[0].kind != valuePiece || !vocabulary.Apiece(wordAt(pieces, 1)) || !strings.HasPrefix(pieces[2].text, "1000") {
		return 0, ""
	}
	return 3, pieces[0].text
}

// product is the area of so much by so much, where the row takes one.
func (w *wording) product(pieces []piece) (int, string) {
	takesArea := slices.Contains(vocabulary.Wanted(w.row.Slots), quantity.Area)
	one, ok := valueAt(pieces, 0)
	if !ok || !takesArea {
		return 0, ""
	}
	n := 1
	if by := wordAt(pieces, 1); by == "x" || by == vocabulary.ClauseBy || by == "×" {
		n = 2
	} else if one.Dimension != quantity.Count {
		return 0, ""
	}
	other, ok := valueAt(pieces, n)
	unit := other.Unit()
	if !ok || other.Dimension != quantity.Length || one.Dimension == quantity.Length && one.Unit() != unit || one.Dimension != quantity.Length && one.Dimension != quantity.Count && one.Dimension != quantity.Number {
		return 0, ""
	}
	u, ok := quantity.Lookup(unit + "2")
	first, okOne := numberOf(one)
	second, okOther := numberOf(other)
	x, errX := strconv.ParseFloat(first, 64)
	y, errY := strconv.ParseFloat(second, 64)
	if !ok || !okOne || !okOther || errX != nil || errY != nil {
		return 0, ""
	}
	return n + 1, strconv.FormatFloat(x*y, 'g', 6, 64) + " " + u.Name
}

// unitBelow is the unit that people leave out behind a larger one: 8 h 30, 12 lb 8.
var unitBelow = map[string]string{"h": "min", "lb": "oz", "ft": "in", "min": "s"}

// smaller reads the part behind a larger one whose unit is left out, or shortened: 8h30m.
func smaller(pieces []piece) (int, string) {
	large, ok := valueAt(pieces, 0)
	small, okSmall := valueAt(pieces, 1)
	unit := unitBelow[large.Unit()]
	if !ok || !okSmall || unit == "" || small.Dimension != quantity.Number && !(small.Unit() == "m" && unit == "min") {
		return 0, ""
	}
	number, plain := numberOf(small)
	if !plain || strings.Contains(number, ".") {
		return 0, ""
	}
	return 2, pieces[0].text + " " + number + " " + unit
}

// spoken reads numbers that are written as words in front of a unit: seven hours, an hour, half
// an hour.
func spoken(pieces []piece) (int, string) {
	i, number := 1, ""
	n, ok := vocabulary.Times(wordAt(pieces, 0))
	switch first := wordAt(pieces, 0); {
	case first == "half":
		number = "1/2"
		if a := wordAt(pieces, 1); a == "a" || a == "an" {
			i = 2
		}
	case first == "a" || first == "an":
		number = "1"
	case ok && vocabulary.Cardinal(first):
		number = strconv.Itoa(n)
	case ok && len(pieces) > 1 && pieces[1].kind != wordPiece || ok && len(pieces) == 1: // twice
		return 1, strconv.Itoa(n) + " times"
	default:
		return 0, ""
	}
	u, ok := quantity.Lookup(wordAt(pieces, i))
	if !ok || len(wordAt(pieces, i)) < 3 {
		return 0, ""
	}
	text := number + " " + u.Name
	if u.One != "" && number != "1" && number != "1/2" {
		return i + 1, text
	}
	if u.One != "" {
		text = number + " " + u.One
	}
	return i + 1, text
}
