package read

import (
	"cmp"
	"slices"
	"strconv"
	"strings"

	"maltwright/lang/nearest"
	"maltwright/lang/quantity"
	"maltwright/lang/sorted"
	"maltwright/lang/vocabulary"
)

// change gives the pieces with a change at one of them, in each way that there is.
type change func(s *search, pieces []piece, i int) [][]piece

// likely are the changes that leave everything said, the likeliest first.
var likely = []change{otherWord, placeWord, joinedOn, clauseInFront, placeInFront, bareName, initials, quotedName, unquoted, parted, needsWords, boundInFront, measureInFront, turnedRound, otherClause, forward, secondClause}

// changesOf lists the pieces with one change each.
func changesOf(s *search, pieces []piece, changes ...change) (list [][]piece) {
	for _, change := range changes {
		for i := 1; i < len(pieces); i++ {
			list = append(list, change(s, pieces, i)...)
		}
	}
	if len(changes) > 1 {
		list = append(list, onlyName(s, pieces)...)
	}
	return list
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
func otherWord(s *search, pieces []piece, i int) (list [][]piece) {
	if pieces[i].kind != wordPiece {
		return nil
	}
	choices(s.row, func(_ *vocabulary.Clause, words []string) {
		if word, sure, ok := vocabulary.Synonym(pieces[i].text, words); ok && sure {
			list = append(list, with(pieces, i, i+1, piece{text: word, kind: wordPiece}))
		}
	})
	return list
}

// placeWord writes the place of a temperature as the language does: air-on for airon, and for
// air on.
func placeWord(s *search, pieces []piece, i int) (list [][]piece) {
	if pieces[i].kind != wordPiece {
		return nil
	}
	for _, word := range placesOf(s.row) {
		if i+1 < len(pieces) && pieces[i].text+"-"+pieces[i+1].text == word {
			list = append(list, with(pieces, i, i+2, piece{text: word, kind: wordPiece}))
		}
	}
	if meant, ok := nearest.Word(pieces[i].text, placesOf(s.row)); ok {
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
func joinedOn(s *search, pieces []piece, i int) [][]piece {
	def, ok := s.row.Clause(pieces[i].text)
	if pieces[i].kind != clausePiece || !ok || !def.Joins || !slices.ContainsFunc(pieces[:i], func(p piece) bool { return p.kind == clausePiece && p.text == def.Word }) {
		return nil
	}
	return [][]piece{with(pieces, i, i+1, piece{text: vocabulary.And, kind: wordPiece})}
}

// clauseInFront writes the clause word that is missing in front of a word or a value, with the
// place of a temperature; or a word that must stand there.
func clauseInFront(s *search, pieces []piece, i int) (list [][]piece) {
	switch pieces[i].kind {
	case wordPiece:
		choices(s.row, func(c *vocabulary.Clause, words []string) {
			if c != nil && slices.Contains(words, pieces[i].text) {
				list = append(list, with(pieces, i, i, piece{text: c.Word, kind: clausePiece}))
			}
		})
		choices(s.row, func(_ *vocabulary.Clause, words []string) {
			if len(words) == 1 && i == 1 && !slices.Contains(words, pieces[i].text) {
				list = append(list, with(pieces, i, i, piece{text: words[0], kind: wordPiece}))
			}
		})
		for _, c := range s.row.Clauses { // in front of a word that may be left out, or of a test
			literal := c.Slots[0].Kind == vocabulary.Literal && slices.Contains(c.Slots[0].Words, pieces[i].text)
			test := c.Slots[0].Kind == vocabulary.Condition && vocabulary.IsMeasure(pieces[i].text) && !ofRow(s.row, pieces[i].text) && !slices.Contains(placesOf(s.row), pieces[i].text)
			if (literal || test) && !said(pieces, c.Word) && !(pieces[i-1].kind == clausePiece && pieces[i-1].text == c.Word) {
				list = append(list, with(pieces, i, i, piece{text: c.Word, kind: clausePiece}))
			}
		}
		for _, c := range leadFirst(s.row) { // in front of the place of a temperature
			if alsoChoice(s.row, pieces[i].text) {
				break // in water rather than at water
			}
			if c.Word == clauseAt && i+1 < len(pieces) && isRange(pieces[i+1]) && said(pieces, clauseOver) {
				continue // a rise is from one to the other
			}
			if i+1 < len(pieces) && pieces[i+1].kind == valuePiece && !ofRow(s.row, pieces[i].text) && len(c.Slots) == 1 && slices.Contains(c.Slots[0].Places, pieces[i].text) && takes(c.Slots[0], pieces[i+1].dim) {
				list = append(list, with(pieces, i, i, piece{text: c.Word, kind: clausePiece}))
			}
		}
	case boundPiece:
		list = append(list, clauseOfBound(s, pieces, i)...)
	case textPiece, momentPiece:
		for _, c := range s.row.Clauses {
			if len(c.Slots) == 1 && holds(c.Slots[0].Kind, pieces[i].kind) && !said(pieces, c.Word) && !headTakes(s.row, pieces, i) {
				list = append(list, with(pieces, i, i, piece{text: c.Word, kind: clausePiece}))
			}
		}
	case valuePiece:
		for _, c := range leadFirst(s.row) {
			slot := c.Slots[len(c.Slots)-1]
			if c.Word == clauseAt && isRange(pieces[i]) && said(pieces, clauseOver) || c.Word == clauseAllow && !said(pieces, clauseUntil) {
				continue // a rise is from one to the other, and a guard is of what is waited for
			}
			if lastAlone(c) && slot.Kind == vocabulary.Amount && takes(slot, pieces[i].dim) && (!another(s.row, pieces, i) || secondOf(s.row, c, pieces, i)) {
				list = append(list, with(pieces, i, i, append(literalBefore(s.row, c.Word, pieces[i-1]), inFront(s.row, c.Word, slot, pieces[i])...)...))
			}
		}
		choices(s.row, func(_ *vocabulary.Clause, words []string) {
			if len(words) == 1 && words[0] != pieces[i-1].text && words[0] != vocabulary.SaidNo {
				list = append(list, with(pieces, i, i, piece{text: words[0], kind: wordPiece}))
			}
		})
	}
	return list
}

// literalBefore is the word that keeps a to behind a value from making a range of it: dried to.
func literalBefore(row *vocabulary.Row, clause string, before piece) []piece {
	if clause != vocabulary.To || before.kind != valuePiece {
		return nil
	}
	for _, slot := range row.Slots {
		if slot.Kind == vocabulary.Literal {
			return []piece{{text: slot.Words[0], kind: wordPiece}}
		}
	}
	return nil
}

// lastAlone tells whether the last value of a clause may stand alone behind its word.
func lastAlone(c vocabulary.Clause) bool {
	return !slices.ContainsFunc(c.Slots[:len(c.Slots)-1], func(s vocabulary.Slot) bool { return !s.Optional && s.Kind != vocabulary.Literal })
}

// secondOf tells whether a value is the second of two of which the row takes one in front of its
// clauses, and this clause, which it needs, the other.
func secondOf(row *vocabulary.Row, c vocabulary.Clause, pieces []piece, i int) bool {
	return c.Required && i == 2 && !said(pieces, c.Word) && len(row.Slots) > 0 && takes(row.Slots[0], pieces[1].dim) && pieces[1].kind == valuePiece
}

// alsoChoice tells whether a word that is a place is a choice of a clause as well.
func alsoChoice(row *vocabulary.Row, word string) (is bool) {
	choices(row, func(c *vocabulary.Clause, words []string) { is = is || c != nil && slices.Contains(words, word) })
	return is
}

// clauseOfBound writes the clause that is missing in front of a bound: one that takes bounds, or
// that is one itself, as within is; or the one that waits for something.
func clauseOfBound(s *search, pieces []piece, i int) (list [][]piece) {
	if i+1 >= len(pieces) || pieces[i+1].kind != valuePiece {
		return nil
	}
	for _, c := range leadFirst(s.row) {
		slot := c.Slots[len(c.Slots)-1]
		word := piece{text: c.Word, kind: clausePiece}
		switch fits := len(c.Slots) == 1 && slot.Kind == vocabulary.Amount && takes(slot, pieces[i+1].dim) && !said(pieces, c.Word); {
		case fits && slot.Bound:
			list = append(list, with(pieces, i, i, word))
		case fits && c.Word == clauseWithin && pieces[i].text == quantity.AtMost.String():
			list = append(list, with(pieces, i, i+1, word))
		case slot.Kind == vocabulary.Condition && c.Word == clauseUntil && !said(pieces, c.Word):
			list = append(list, with(pieces, i, i, word))
		}
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
	sorted.Stable(list, func(x, y vocabulary.Clause) int {
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

// another tells whether another value that no clause word or bound stands in front of is of the
// dimension of this one: of two times nobody knows which is meant.
func another(row *vocabulary.Row, pieces []piece, i int) bool {
	for j, p := range pieces {
		if j == i || p.kind != valuePiece || p.dim != pieces[i].dim || pieces[j-1].kind == boundPiece {
			continue
		}
		def, ok := row.Clause(pieces[j-1].text)
		if placed := ok && slices.ContainsFunc(def.Slots, func(s vocabulary.Slot) bool { return takes(s, p.dim) }); !placed {
			return true
		}
	}
	return false
}

func takes(s vocabulary.Slot, d quantity.Dimension) bool { return slices.Contains(s.Dims, d) }

// inFront is a clause word, and the place of a temperature that must say it.
func inFront(row *vocabulary.Row, word string, slot vocabulary.Slot, value piece) []piece {
	list := []piece{{text: word, kind: clausePiece}}
	if !slot.Placed {
		return list
	}
	return append(list, placeOf(row, slot, value))
}

// placeOf is the place of a temperature that must say it, and the others that may be meant.
func placeOf(row *vocabulary.Row, slot vocabulary.Slot, value piece) piece {
	likely := []string{vocabulary.PlaceAirOn, vocabulary.PlaceOven, vocabulary.PlaceMalt}
	q, err := quantity.Parse(value.text)
	switch {
	case slices.Contains(slot.Places, vocabulary.PlaceBed) && err == nil && q.SI < kilnWarm:
		likely = []string{vocabulary.PlaceBed, vocabulary.PlaceWater, vocabulary.PlaceRoom}
	case slices.Contains([]string{vocabulary.VerbRoast, vocabulary.VerbStew, vocabulary.VerbCool}, row.Word):
		likely = []string{vocabulary.PlaceMalt, vocabulary.PlaceAirOn, vocabulary.PlaceOven}
	}
	likely = slices.DeleteFunc(likely, func(place string) bool { return !slices.Contains(slot.Places, place) })
	if len(likely) == 0 {
		likely = slot.Places
	}
	return piece{text: likely[0], kind: wordPiece, or: likely[1:]}
}

// kilnWarm is warmer than anything is read to be but in a kiln, in K.
const kilnWarm = 315

// placeInFront writes the place of a temperature that stands behind its clause word.
func placeInFront(s *search, pieces []piece, i int) [][]piece {
	slots := s.row.Slots
	if def, ok := s.row.Clause(pieces[i-1].text); ok && pieces[i-1].kind == clausePiece {
		slots = def.Slots
	} else if i > 1 {
		return nil
	}
	if pieces[i].kind != valuePiece || len(slots) != 1 || !slots[0].Placed || !takes(slots[0], pieces[i].dim) {
		return nil
	}
	return [][]piece{with(pieces, i, i, placeOf(s.row, slots[0], pieces[i]))}
}

// turnedRound puts a word in front of its value: 2 l water.
func turnedRound(s *search, pieces []piece, i int) [][]piece {
	if i+1 < len(pieces) && pieces[i].kind == valuePiece && pieces[i+1].kind == wordPiece {
		return [][]piece{with(pieces, i, i+2, pieces[i+1], pieces[i])}
	}
	return nil
}

// otherClause writes a clause word of the row for one that it does not take.
func otherClause(s *search, pieces []piece, i int) (list [][]piece) {
	if def, ok := s.row.Clause(pieces[i].text); ok && pieces[i].kind == clausePiece && i+1 < len(pieces) && isRange(pieces[i+1]) && !def.Slots[len(def.Slots)-1].Range {
		for _, c := range s.row.Clauses { // for 6 to 14 h is what allow says
			if last := c.Slots[len(c.Slots)-1]; last.Range && last.Bound && takes(last, pieces[i+1].dim) && !said(pieces, c.Word) && said(pieces, clauseUntil) {
				list = append(list, with(pieces, i, i+1, piece{text: c.Word, kind: clausePiece}))
			}
		}
		return list
	}
	if !foreign(s.row, pieces[i]) {
		return nil
	}
	for _, c := range s.row.Clauses {
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
func forward(s *search, pieces []piece, i int) (list [][]piece) {
	switch {
	case pieces[i].kind == wordPiece && i > 1 && ofRow(s.row, pieces[i].text):
		return [][]piece{slices.Concat(pieces[:1], pieces[i:i+1], pieces[1:i], pieces[i+1:])}
	case pieces[i].kind != valuePiece:
		return nil
	}
	from := i
	if pieces[i-1].kind == boundPiece {
		from--
	}
	for j := 1; j < from; j++ {
		list = append(list, slices.Concat(pieces[:j], pieces[from:i+1], pieces[j:from], pieces[i+1:]))
	}
	return list
}

// secondClause leaves the word of a clause out that stands twice, in front of a value that it does
// not take: bed at 17.2 °C at 14:00.
func secondClause(s *search, pieces []piece, i int) [][]piece {
	def, ok := s.row.Clause(pieces[i].text)
	if !ok || pieces[i].kind != clausePiece || i+1 == len(pieces) || pieces[i+1].kind != valuePiece {
		return nil
	}
	twice := slices.ContainsFunc(pieces[i+1:], func(p piece) bool { return p.kind == clausePiece && p.text == def.Word })
	if !twice || slices.ContainsFunc(def.Slots, func(slot vocabulary.Slot) bool { return takes(slot, pieces[i+1].dim) }) {
		return nil
	}
	return [][]piece{with(pieces, i, i+1)}
}

// leftOut leaves a word out that only explains, and is none of those that the row knows. One
// that may yet say something is kept behind the statement, as a comment.
func leftOut(s *search, pieces []piece, i int) [][]piece {
	p := pieces[i]
	if p.kind == boundPiece && p.text == quantity.Is.String() {
		return [][]piece{with(pieces, i, i+1)}
	}
	if p.kind != wordPiece && !foreign(s.row, p) || vocabulary.Turns(p.text) || strings.ContainsAny(p.text, "0123456789") {
		return nil
	}
	if p.text == vocabulary.To && pieces[i-1].kind == valuePiece && (i+1 == len(pieces) || pieces[i+1].kind == clausePiece) {
		return nil // it may be a unit: 1.2 to
	}
	says := false
	choices(s.row, func(_ *vocabulary.Clause, words []string) {
		_, _, another := vocabulary.Synonym(p.text, words)
		says = says || another || slices.Contains(words, p.text)
	})
	switch {
	case says:
		return nil
	case vocabulary.SaysNothing(p.text) || p.kind == clausePiece && !carries(pieces, i):
		return [][]piece{with(pieces, i, i+1)}
	case p.kind == clausePiece || vocabulary.Known(p.text):
		return nil
	case !s.aside || s.row.Opens != vocabulary.None || s.r.in == vocabulary.Batch || i+1 < len(pieces) && pieces[i+1].kind == textPiece:
		return nil
	case hasKind(pieces, asidePiece):
		last := len(pieces) - 1
		return [][]piece{append(with(pieces[:last], i, i+1), piece{text: pieces[last].text + " " + p.text, kind: asidePiece})}
	}
	return [][]piece{append(with(pieces, i, i+1), piece{text: "# " + p.text, kind: asidePiece})}
}

// carries tells whether a clause word has something behind it that would then stand elsewhere.
func carries(pieces []piece, i int) bool {
	return i+1 < len(pieces) && pieces[i+1].kind == textPiece
}

// holds tells whether a slot of a kind takes a piece of a kind.
func holds(slot vocabulary.Kind, p pieceKind) bool {
	switch slot {
	case vocabulary.Name, vocabulary.Text:
		return p == textPiece
	case vocabulary.Moment, vocabulary.Hour, vocabulary.Date, vocabulary.Clock:
		return p == momentPiece
	}
	return false
}

// said tells whether a clause stands among the pieces.
func said(pieces []piece, clause string) bool {
	return slices.ContainsFunc(pieces, func(p piece) bool { return p.kind == clausePiece && p.text == clause })
}

// headTakes tells whether a piece right behind the verb stands where the row has one of its
// kind.
func headTakes(row *vocabulary.Row, pieces []piece, i int) bool {
	return i == 1 && len(row.Slots) > 0 && holds(row.Slots[0].Kind, pieces[i].kind)
}

// quotedName puts words in quotes where a name or a text is wanted, the most of them first.
func quotedName(s *search, pieces []piece, i int) (list [][]piece) {
	half := pieces[i].kind == textPiece && i+1 < len(pieces) && pieces[i+1].kind == wordPiece // in "blue" tub
	if !half && pieces[i].kind != wordPiece && !(pieces[i].kind == valuePiece && pieces[i].dim == quantity.Number) || !wantsText(s.row, pieces, i) {
		return nil
	}
	end := i
	for end < len(pieces) && end < i+longestName && quotable(pieces[end]) {
		end++
	}
	if vocabulary.SaysNothing(pieces[i].text) && i+1 < end && pieces[i+1].kind == textPiece {
		return nil
	}
	if rest := strconv.Quote(s.r.home.spelt(joined(pieces[i+1 : end]))); vocabulary.SaysNothing(pieces[i].text) && i+1 < end && s.r.home.knows(rest) { // on the larch floor
		list = append(list, with(pieces, i, end, piece{text: rest, kind: textPiece}))
	}
	for ; end > i; end-- {
		if pieces[end-1].kind != clausePiece {
			name := strconv.Quote(s.r.home.spelt(strings.ReplaceAll(joined(pieces[i:end]), `"`, "")))
			if half && !s.r.home.knows(name) {
				continue
			}
			list = append(list, with(pieces, i, end, piece{text: name, kind: textPiece}))
		}
	}
	return list
}

// initials reads who it was, said with two or three capitals at the end: turned at 21:05 AK.
func initials(s *search, pieces []piece, i int) [][]piece {
	p := pieces[i]
	by, ok := s.row.Clause(vocabulary.ClauseBy)
	if !ok || s.r.in != vocabulary.Batch || p.kind != wordPiece || i != len(pieces)-1 || len(p.text) < 2 || len(p.text) > 3 || strings.Trim(p.text, capitals) != "" || said(pieces, by.Word) || !holds(by.Slots[0].Kind, textPiece) {
		return nil
	}
	return [][]piece{with(pieces, i, i+1, piece{text: by.Word, kind: clausePiece}, piece{text: strconv.Quote(p.text), kind: textPiece})}
}

const capitals = "ABCDEFGHIJKLMNOPQRSTUVWXYZ"

// unquoted takes the quotes off a word that is a choice.
func unquoted(s *search, pieces []piece, i int) (list [][]piece) {
	if pieces[i].kind != textPiece {
		return nil
	}
	word := strings.Trim(pieces[i].text, `"`)
	free := slices.ContainsFunc(s.row.Slots, func(slot vocabulary.Slot) bool { return slot.Kind == vocabulary.Choice && len(slot.Words) == 0 })
	choices(s.row, func(_ *vocabulary.Clause, words []string) {
		if slices.Contains(words, word) || free && !strings.Contains(word, " ") {
			list = [][]piece{with(pieces, i, i+1, piece{text: word, kind: wordPiece})}
		}
	})
	return list
}

func isRange(p piece) bool {
	return p.kind == valuePiece && strings.Contains(p.text, " "+vocabulary.To+" ")
}

// parted writes a range as two values, of which the second stands behind to.
func parted(s *search, pieces []piece, i int) [][]piece {
	low, high, ok := strings.Cut(pieces[i].text, " "+vocabulary.To+" ")
	if _, takesTo := s.row.Clause(vocabulary.To); !ok || !takesTo || pieces[i].kind != valuePiece || said(pieces, vocabulary.To) {
		return nil
	}
	if q, err := quantity.Parse(high); err == nil && !strings.Contains(low, " ") {
		low += " " + q.Unit()
	}
	first, second := piece{text: low, kind: valuePiece, dim: pieces[i].dim}, piece{text: high, kind: valuePiece, dim: pieces[i].dim}
	parts := append([]piece{first}, literalBefore(s.row, vocabulary.To, first)...)
	return [][]piece{with(pieces, i, i+1, append(parts, piece{text: vocabulary.To, kind: clausePiece}, second)...)}
}

// needsWords adds a clause that the row needs and that says one thing alone: at the start.
func needsWords(s *search, pieces []piece, i int) (list [][]piece) {
	if i != len(pieces)-1 {
		return nil
	}
	for _, c := range s.row.Clauses {
		words := []piece{{text: c.Word, kind: clausePiece}}
		for _, slot := range c.Slots {
			if (slot.Kind == vocabulary.Literal || slot.Kind == vocabulary.Choice) && len(slot.Words) == 1 {
				words = append(words, piece{text: slot.Words[0], kind: wordPiece})
			}
		}
		if c.Required && !said(pieces, c.Word) && len(words) == len(c.Slots)+1 {
			list = append(list, append(slices.Clip(pieces), words...))
		}
	}
	return list
}

// bareName leaves a word out that stands in front of a name and says nothing more: the "blue tub",
// vessel "blue tub".
func bareName(s *search, pieces []piece, i int) [][]piece {
	p := pieces[i]
	if p.kind != wordPiece || i+1 >= len(pieces) || pieces[i+1].kind != textPiece || i > 1 && pieces[i-1].kind != clausePiece {
		return nil
	}
	if !vocabulary.SaysNothing(p.text) && !vocabulary.IsGrain(p.text) {
		return nil
	}
	return [][]piece{with(pieces, i, i+1)}
}

// longestName is the most words that are taken for one name.
const longestName = 8

func quotable(p piece) bool {
	return p.kind == wordPiece || p.kind == clausePiece || p.kind == textPiece || p.kind == valuePiece && p.dim == quantity.Number
}

// wantsText tells whether a name or a text may stand at a place among the pieces.
func wantsText(row *vocabulary.Row, pieces []piece, i int) bool {
	if i == 1 {
		return len(row.Slots) > 0 && holds(row.Slots[0].Kind, textPiece)
	}
	if def, ok := row.Clause(pieces[i-1].text); ok && pieces[i-1].kind == clausePiece {
		return len(def.Slots) > 0 && holds(def.Slots[0].Kind, textPiece)
	}
	return slices.ContainsFunc(row.Clauses, func(c vocabulary.Clause) bool {
		return c.Required && holds(c.Slots[0].Kind, textPiece) && !said(pieces, c.Word)
	})
}

// boundInFront writes the bound that is missing of a measure which goes only one way, so that
// no other can be meant.
func boundInFront(s *search, pieces []piece, i int) [][]piece {
	if pieces[i].kind != valuePiece || pieces[i-1].kind != wordPiece || i < 2 {
		return nil
	}
	m, ok := vocabulary.FindMeasure(pieces[i-1].text)
	if !ok {
		return nil
	}
	up, sure := m.GoesUp(s.r.scope(s.row))
	bound := piece{text: wayOf(up).String(), kind: boundPiece}
	if waits := s.row.Word == vocabulary.VerbGate || s.row.Word == clauseUntil || pieces[i-2].text == clauseUntil; !sure || !waits {
		bound = piece{text: quantity.AtLeast.String(), kind: boundPiece, or: []string{quantity.AtMost.String()}}
	}
	return [][]piece{with(pieces, i, i, bound)}
}

// measureInFront writes what is measured of a value that only one measure has: until 10 %.
func measureInFront(s *search, pieces []piece, i int) [][]piece {
	waits := s.row.Word == vocabulary.VerbGate && i == 1 || pieces[i-1].text == clauseUntil
	if !waits || pieces[i].kind != valuePiece && pieces[i].kind != boundPiece {
		return nil
	}
	dim := pieces[i].dim
	if pieces[i].kind == boundPiece && i+1 < len(pieces) {
		dim = pieces[i+1].dim
	}
	var words []string
	for _, word := range s.r.measuresOf(s.row) {
		if m, ok := vocabulary.FindMeasure(word); ok && slices.Contains(m.Dims, dim) {
			words = append(words, word)
		}
	}
	if len(words) != 1 {
		return nil
	}
	return [][]piece{with(pieces, i, i, piece{text: words[0], kind: wordPiece})}
}

// wayOf is the bound by which something that goes up, or down, is waited for.
func wayOf(up bool) quantity.Op {
	if up {
		return quantity.AtLeast
	}
	return quantity.AtMost
}

// scope is the stage of which a statement of a row speaks.
func (r *statementReader) scope(row *vocabulary.Row) vocabulary.Block {
	if row.Opens != vocabulary.None {
		return row.Opens
	}
	return r.in
}

// onlyName adds the clause that a row needs where the house has few definitions that it can name.
func onlyName(s *search, pieces []piece) (list [][]piece) {
	for _, c := range s.row.Clauses {
		if !c.Required || c.Slots[0].Kind != vocabulary.Name || said(pieces, c.Word) {
			continue
		}
		if names := s.r.home.named(c.Slots[0].Of); len(names) > 0 && len(names) <= mostOffered {
			quoted := make([]string, len(names))
			for i, name := range names {
				quoted[i] = strconv.Quote(name)
			}
			list = append(list, append(slices.Clip(pieces), piece{text: c.Word, kind: clausePiece}, piece{text: quoted[0], kind: textPiece, or: quoted[1:]}))
		}
	}
	return list
}
