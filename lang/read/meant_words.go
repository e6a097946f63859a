package read

import (
	"slices"
	"strconv"
	"strings"

	"maltwright/lang/quantity"
	"maltwright/lang/vocabulary"
)

// wordsRight writes the words of a statement as the language has them: small, with their
// hyphens, and for no more than 35 % or twice a day what the language says.
func (r *statementReader) wordsRight(row *vocabulary.Row, pieces []piece) []piece {
	w := &wording{row: row, measures: r.measuresOf(row), places: placesOf(row)}
	out, first := pieces[:1:1], 1
	if len(pieces) > 1 && pieces[1].kind != valuePiece && vocabulary.SaysSame(r.in, row.Word, pieces[1].text) {
		first = 2 // cool down
	}
	for i := first; i < len(pieces); {
		taken, made := w.right(pieces[i:], out)
		out = append(out, made...)
		i += taken
	}
	return r.testsRight(w.measures, w.placesRight(boundsInFront(out)))
}

// wordsAhead are the words that some pieces begin with.
func wordsAhead(pieces []piece) (words []string) {
	for i := range min(len(pieces), vocabulary.LongestPhrase) {
		word := wordAt(pieces, i)
		if word == "" {
			break
		}
		words = append(words, word)
	}
	return words
}

// insteadOf keeps what a step was changed from behind its statement, as a comment: from 7 h to 6 h.
func insteadOf(row *vocabulary.Row, pieces []piece) []piece {
	if row.Word != vocabulary.RecordChanged {
		return pieces
	}
	for i := 1; i+1 < len(pieces); i++ {
		was, now, ok := strings.Cut(pieces[i+1].text, " "+vocabulary.To+" ")
		if !ok || pieces[i].kind != clausePiece || pieces[i].text != clauseFrom || pieces[i+1].kind != valuePiece {
			continue
		}
		made := with(pieces, i, i+2, piece{text: vocabulary.To, kind: clausePiece}, piece{text: now, kind: valuePiece, dim: pieces[i+1].dim})
		return append(made, piece{text: "# " + clauseFrom + " " + was, kind: asidePiece})
	}
	return pieces
}

// wording is what a row knows of words.
type wording struct {
	row              *vocabulary.Row
	measures, places []string
}

// right puts the words right with which some pieces begin: how many of them, and what stands
// in their place.
func (w *wording) right(pieces, before []piece) (taken int, made []piece) {
	p := pieces[0]
	if n, length := often(pieces); n > 0 {
		if _, ok := w.row.Clause(clauseEvery); ok {
			q, _ := quantity.Parse(length)
			made = []piece{{text: length, kind: valuePiece, dim: q.Dimension}}
			if last := before[len(before)-1]; last.kind != clausePiece || last.text != clauseEvery {
				made = append([]piece{{text: clauseEvery, kind: clausePiece}}, made...)
			}
			return n, made
		}
	}
	if n := vocabulary.Idle(w.row.Word, wordsAhead(pieces)); n > 0 && !w.knows(pieces[0].text) {
		return n, nil
	}
	if w.row.Word == vocabulary.VerbSoak && wordAt(pieces, 0) == "under" && wordAt(pieces, 1) == vocabulary.PlaceWater {
		return 2, []piece{{text: "in", kind: clausePiece}, {text: vocabulary.PlaceWater, kind: wordPiece}}
	}
	if first := strings.ToLower(p.text); w.row.Word == vocabulary.RecordSample && p.kind == wordPiece && (first == vocabulary.VerbDry || first == vocabulary.SampleDried) && before[len(before)-1].kind == valuePiece && len(pieces) > 1 && pieces[1].kind == valuePiece {
		return 1, []piece{{text: vocabulary.SampleDried, kind: wordPiece}, {text: vocabulary.To, kind: clausePiece}}
	}
	if n, made := w.numbered(pieces); n > 0 {
		return n, made
	}
	if n, made := w.figure(pieces); n > 0 {
		return n, made
	}
	if p.kind != wordPiece && p.kind != clausePiece && p.kind != boundPiece && p.kind != unitPiece {
		return 1, pieces[:1]
	}
	if len(pieces) > 1 && slices.Contains(w.measures, p.text+" "+pieces[1].text) {
		return 2, pieces[:2]
	}
	if made, ok := rangeSaid(pieces); ok {
		return 4, []piece{made}
	}
	if n, made := w.phrase(pieces, before); n > 0 {
		return n, made
	}
	if len(pieces) > 1 && (pieces[1].kind == wordPiece || pieces[1].kind == clausePiece) && !w.knows(p.text+" "+pieces[1].text) {
		if word, ok := vocabulary.Same(p.text+pieces[1].text, w.hyphened()); ok {
			return 2, []piece{{text: word, kind: wordPiece}}
		}
	}
	if len(pieces) > 1 && slices.Contains(w.measures, pieces[1].text+" "+p.text) {
		return 2, []piece{pieces[1], p}
	}
	if p.text == vocabulary.ClauseBy && wordAt(pieces, 1) == "hand" {
		return 2, nil
	}
	if p.kind == unitPiece && w.knows(p.text) {
		return 1, []piece{w.piece(p.text)}
	}
	if (p.kind == wordPiece || p.kind == unitPiece) && !w.knows(p.text) {
		if made, ok := w.other(p.text); ok {
			return 1, []piece{made}
		}
	}
	return 1, pieces[:1]
}

// phrase writes the bound or the clause word that several words stand for.
func (w *wording) phrase(pieces, before []piece) (taken int, made []piece) {
	for n := min(vocabulary.LongestPhrase, len(pieces)); n > 0; n-- {
		p, ok := vocabulary.FindPhrase(joined(pieces[:n]))
		if !ok || n == 1 && pieces[0].kind == boundPiece {
			continue
		}
		_, clause := w.row.Clause(pieces[0].text)
		switch last := before[len(before)-1]; {
		case p.Kind == vocabulary.ClausePhrase:
			means := p.Means
			if _, rises := w.row.Clause(clauseOver); rises && means == clauseFor && said(before, clauseFrom) && !said(before, clauseOver) {
				means = clauseOver
			}
			if _, takes := w.row.Clause(means); takes && !clause {
				return n, []piece{{text: means, kind: clausePiece}}
			}
		case clause && n == 1 && !(last.kind == wordPiece && vocabulary.IsMeasure(last.text)):
		case n < len(pieces) && pieces[n].kind == valuePiece || last.kind == valuePiece:
			return n, []piece{{text: p.Means, kind: boundPiece}}
		}
	}
	return 0, nil
}

// rangeSaid reads a range as people say it: between 14 and 17 °C.
func rangeSaid(pieces []piece) (p piece, ok bool) {
	if len(pieces) < 4 || !strings.EqualFold(pieces[0].text, "between") || pieces[2].text != vocabulary.And || pieces[1].kind != valuePiece || pieces[3].kind != valuePiece {
		return p, false
	}
	return piece{text: pieces[1].text + " " + vocabulary.To + " " + pieces[3].text, kind: valuePiece, dim: pieces[3].dim}, true
}

// numbered reads which of several steps is meant: first soak, soak1, soak one.
func (w *wording) numbered(pieces []piece) (taken int, made []piece) {
	steps := func(word string) bool {
		return vocabulary.IsStep(word) && w.knows(word)
	}
	number := func(n int) piece { return piece{text: strconv.Itoa(n), kind: valuePiece} }
	first := wordAt(pieces, 0)
	if n, ok := vocabulary.Ordinal(pieces[0].text + wordAt(pieces, 1)); ok && pieces[0].kind == valuePiece && steps(wordAt(pieces, 2)) {
		return 3, []piece{{text: wordAt(pieces, 2), kind: wordPiece}, number(n)} // 1st soak
	}
	if n, ok := vocabulary.Ordinal(first); ok && steps(wordAt(pieces, 1)) {
		return 2, []piece{pieces[1], number(n)}
	}
	if n, ok := vocabulary.Times(wordAt(pieces, 1)); ok && steps(first) && vocabulary.Cardinal(wordAt(pieces, 1)) {
		return 2, []piece{pieces[0], number(n)}
	}
	step := strings.TrimRight(first, "0123456789")
	if n, err := strconv.Atoi(strings.TrimPrefix(first, step)); err == nil && steps(step) {
		return 1, []piece{{text: step, kind: wordPiece}, number(n)}
	}
	return 0, nil
}

// boundsInFront puts a bound that stands behind its value in front of it: 35 % or less.
func boundsInFront(pieces []piece) []piece {
	for i := 1; i+1 < len(pieces); i++ {
		last := i+2 == len(pieces) || pieces[i+2].kind != valuePiece
		if pieces[i].kind == valuePiece && pieces[i+1].kind == boundPiece && last {
			pieces = with(pieces, i, i+2, pieces[i+1], pieces[i])
		}
	}
	return pieces
}

// other is the word of the row, in whatever place, that somebody means who writes another one.
func (w *wording) other(written string) (p piece, ok bool) {
	for _, words := range w.lists() {
		if word, ok := vocabulary.Same(written, words); ok {
			return w.piece(word), true
		}
	}
	for _, words := range w.lists() {
		if word, ok := vocabulary.Inflected(written, words); ok && len(written) > 3 {
			return w.piece(word), true
		}
	}
	for _, words := range w.lists() {
		if word, sure, ok := vocabulary.Synonym(written, words); ok && (sure || len(words) == len(w.measures)) {
			return piece{text: word, kind: wordPiece}, true
		}
	}
	return p, false
}

func (w *wording) piece(word string) piece {
	if _, clause := w.row.Clause(word); clause {
		return piece{text: word, kind: clausePiece}
	}
	return piece{text: word, kind: wordPiece}
}

// lists are the words that the row knows: its choices, its measures, its places and its clauses.
func (w *wording) lists() [][]string {
	var lists [][]string
	choices(w.row, func(_ *vocabulary.Clause, words []string) { lists = append(lists, words) })
	clauses := make([]string, len(w.row.Clauses))
	for i, c := range w.row.Clauses {
		clauses[i] = c.Word
	}
	return append(lists, w.measures, w.places, clauses)
}

// hyphened are its words that have a hyphen, which people write as two.
func (w *wording) hyphened() (list []string) {
	for _, words := range w.lists() {
		for _, word := range words {
			if strings.Contains(word, "-") {
				list = append(list, word)
			}
		}
	}
	return list
}

func (w *wording) knows(word string) bool {
	for _, words := range w.lists() {
		for _, known := range words {
			if known == word || strings.HasPrefix(known, word+" ") {
				return true
			}
		}
	}
	return false
}

// measuresOf lists what a condition of the row can name.
func (r *statementReader) measuresOf(row *vocabulary.Row) []string {
	tests := func(slots []vocabulary.Slot) bool {
		return len(slots) > 0 && slots[0].Kind == vocabulary.Condition
	}
	asks := tests(row.Slots)
	for _, c := range row.Clauses {
		asks = asks || tests(c.Slots)
	}
	if !asks {
		return nil
	}
	return (&statementReader{in: r.in, opens: row.Opens}).measureWords()
}

// often reads how often something is done, as people say it: twice a day, 3 times a day, daily,
// every other day. It gives how many pieces say it, and the time from one to the next.
func often(pieces []piece) (taken int, length string) {
	i, times, only := 0, 1, false
	word := func() string {
		if i < len(pieces) && (pieces[i].kind == wordPiece || pieces[i].kind == clausePiece) {
			return strings.ToLower(pieces[i].text)
		}
		return ""
	}
	skip := vocabulary.EachOne(word())
	if skip {
		i++
	}
	if n, ok := vocabulary.Times(word()); ok {
		times, i, only = n, i+1, true
	} else if i < len(pieces) && pieces[i].kind == valuePiece && pieces[i].dim == quantity.Count {
		q, err := quantity.Parse(pieces[i].text)
		if err != nil || !vocabulary.OfTimes(q.Unit()) || q.SI != float64(int(q.SI)) || q.SI < 1 || q.SI > 24 {
			return 0, ""
		}
		times, i, only = int(q.SI), i+1, true
	}
	if vocabulary.OfTimes(word()) {
		i++
	}
	if vocabulary.Apiece(word()) {
		i++
	} else if !only && !skip && !vocabulary.AlsoOften(word()) {
		return 0, ""
	}
	span, ok := vocabulary.DayParts(word())
	if !ok {
		return 0, ""
	}
	q, err := quantity.Parse(span)
	if err != nil {
		return 0, ""
	}
	si := q.SI / float64(times)
	if skip { // every second day
		si = q.SI * float64(times)
	}
	return i + 1, intervalOf(si)
}

// intervalOf writes a time from one to the next: 12 h, 4.8 h, 30 min.
func intervalOf(seconds float64) string {
	const hour = 3600
	if seconds < hour {
		return strconv.FormatFloat(seconds/60, 'g', 3, 64) + " min"
	}
	return strconv.FormatFloat(seconds/hour, 'g', 3, 64) + " h"
}
