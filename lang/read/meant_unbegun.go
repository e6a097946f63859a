package read

import (
	"slices"
	"strings"

	"maltwright/lang/finding"
	"maltwright/lang/source"
	"maltwright/lang/syntax"
	"maltwright/lang/vocabulary"
)

// unbegun says what to write for a statement that begins with a value, where that can be told:
// its word may stand further behind, as in 7 h soak in water, or be left out, as in
// 6 kg of "Far field".
func (r *statementReader) unbegun(s *syntax.Statement) {
	f, ok := r.verbMissing(s)
	if !ok || r.tried == nil {
		return
	}
	head := r.header(s.Start)
	pieces, ok := r.valuesOf(head)
	if !ok || head.End-head.Start > longestTried {
		return
	}
	texts := r.numberInWord(pieces)
	if texts == nil {
		texts = r.wordBehind(pieces)
	}
	if texts == nil {
		texts = r.wordLeftOut(pieces)
	}
	if len(texts) == 0 || len(texts) > mostOffered {
		return
	}
	f.Write(r.at(head), texts...)
	r.note(f)
}

// verbMissing is what the text stage found of a statement that begins with a value.
func (r *statementReader) verbMissing(s *syntax.Statement) (finding.Finding, bool) {
	if r.home == nil {
		return finding.Finding{}, false
	}
	i := slices.IndexFunc(r.home.text, func(f finding.Finding) bool {
		return f.Place.File == r.file && f.Place.Start == s.Start && f.Rule == syntax.VerbMissing && len(f.Fixes)+len(f.Offers) == 0
	})
	if i < 0 {
		return finding.Finding{}, false
	}
	return r.home.text[i], true
}

// header is the rest of a line up to what ends a statement.
func (r *statementReader) header(start int) source.Span {
	text, quoted := r.file.Bytes(), false
	end := start
	for ; end < len(text) && (quoted || !strings.ContainsRune("\n\r;{}#", rune(text[end]))); end++ {
		quoted = quoted != (text[end] == '"')
	}
	for end > start && strings.ContainsRune(" \t", rune(text[end-1])) {
		end--
	}
	return source.Span{Start: start, End: end}
}

// valuesOf cuts a header that has no first word into its pieces.
func (r *statementReader) valuesOf(head source.Span) ([]piece, bool) {
	tree, found := syntax.Parse(source.New(r.file.Name(), []byte("x "+r.at(head).Text())))
	if len(found) > 0 || len(tree.Top.Statements) != 1 {
		return nil, false
	}
	at := func(s source.Span) source.Place { return source.Place{File: tree.File, Span: s} }
	pieces := piecesOf(at, tree.Top.Statements[0])
	return pieces[1:], len(pieces) > 1
}

// numberInWord reads a statement whose word people write with a number: 1000 kernel weight 46 g.
func (r *statementReader) numberInWord(pieces []piece) []string {
	for n := min(len(pieces)-1, longestVerb+1); n > 0; n-- {
		for _, other := range vocabulary.OtherWords(r.in, joined(pieces[:n])) {
			row, ok := vocabulary.Lookup(r.in, other.Means)
			if !ok {
				continue
			}
			list := slices.Concat([]piece{{text: row.Word, kind: verbPiece}}, pieces[n:])
			if r.reads(row, list) {
				return []string{joined(list)}
			}
		}
	}
	return nil
}

// wordBehind reads a statement whose first word stands further behind: the values in front of
// it right behind it, or at its end.
func (r *statementReader) wordBehind(pieces []piece) []string {
	for i := 1; i < len(pieces); i++ {
		if pieces[i].kind != wordPiece && pieces[i].kind != clausePiece && pieces[i].kind != unitPiece {
			continue
		}
		for _, word := range wordsFor(r.in, pieces[i].text) {
			row, ok := vocabulary.Lookup(r.in, word)
			if !ok {
				continue
			}
			verb := []piece{{text: row.Word, kind: verbPiece}}
			inFront, atEnd := slices.Concat(verb, pieces[:i], pieces[i+1:]), slices.Concat(verb, pieces[i+1:], pieces[:i])
			for _, list := range [][]piece{inFront, atEnd} {
				if r.reads(row, list) {
					return []string{joined(list)}
				}
			}
			for _, list := range [][]piece{inFront, atEnd} {
				if texts := r.readings(row, list, likely, false); len(texts) > 0 {
					return texts
				}
			}
		}
	}
	return nil
}

// wordsFor are the statements of a block that are meant by a word.
func wordsFor(in vocabulary.Block, written string) (list []string) {
	if _, ok := vocabulary.Lookup(in, written); ok {
		list = append(list, written)
	}
	for _, other := range vocabulary.OtherWords(in, written) {
		list = append(list, other.Means)
	}
	return list
}

// wordLeftOut reads a statement without its first word as each one of the block that opens no
// block and takes what is written, as it stands or with the clause words that are missing.
func (r *statementReader) wordLeftOut(pieces []piece) (texts []string) {
	changes := inPlace
	if pieces[0].kind == momentPiece { // 14:00 7.34 kg
		changes = append(slices.Clip(changes), forward)
	}
	for _, changed := range []bool{false, true} {
		for _, word := range vocabulary.Words(r.in) {
			row, ok := vocabulary.Lookup(r.in, word)
			if !ok || row.Opens != vocabulary.None {
				continue
			}
			list := slices.Concat([]piece{{text: word, kind: verbPiece}}, pieces)
			switch {
			case !changed && r.reads(row, list):
				texts = append(texts, joined(list))
			case changed:
				texts = append(texts, r.readings(row, list, changes, false)...)
			}
		}
		if len(texts) > 0 {
			return texts
		}
	}
	return nil
}

// inPlace are the changes that leave every piece in its place.
var inPlace = []change{clauseInFront, placeInFront}
