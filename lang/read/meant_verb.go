package read

import (
	"fmt"
	"slices"
	"strings"

	"maltwright/lang/finding"
	"maltwright/lang/quantity"
	"maltwright/lang/source"
	"maltwright/lang/syntax"
	"maltwright/lang/vocabulary"
)

// otherVerb puts right what was noted of a statement whose first words, up to three, people write
// for another statement of the block. It is false where none of them is.
func (r *statementReader) otherVerb(f *finding.Finding, s *syntax.Statement, fewest int) bool {
	pieces := piecesOf(r.at, s)
	verb, place := f.Hint, f.Place
	for n := longestVerb; n >= fewest; n-- {
		written, end, ok := firstWords(s, n)
		if !ok {
			continue
		}
		for _, other := range vocabulary.OtherWords(r.in, written) {
			words := strings.Fields(other.Means)
			if len(words) == 0 {
				f.Hint = withValues(other, pieces)
				return true
			}
			row, ok := vocabulary.Lookup(r.in, words[0])
			if !ok {
				continue
			}
			f.Place = r.at(source.Span{Start: s.Verb.Start, End: end})
			measured := unitOfVerb(written, pieces)
			if r.asStatement(f, s, row, with(measured, 0, n, verbOf(words)...), other, joined(measured) != joined(pieces)) {
				return true
			}
			f.Hint, f.Place = verb, place
		}
	}
	return false
}

// longestVerb is the most words that are taken for one: thousand kernel weight.
const longestVerb = 3

// firstWords gives the first words of a statement, with a blank between each, and their end. The
// last may be a clause word.
func firstWords(s *syntax.Statement, n int) (words string, end int, ok bool) {
	words, end = s.Verb.Text, s.Verb.End
	for i := 1; i < n; i++ {
		var w syntax.Word
		switch {
		case i-1 < len(s.Terms):
			if w, ok = s.Terms[i-1].(syntax.Word); !ok {
				return "", 0, false
			}
		case i-1 == len(s.Terms) && len(s.Clauses) > 0:
			w = s.Clauses[0].Word
		default:
			return "", 0, false
		}
		words, end = words+" "+w.Text, w.End
	}
	return words, end, true
}

// asStatement says what to write for a statement that is meant to be one of the row. Changed
// tells whether more than its first words is another.
func (r *statementReader) asStatement(f *finding.Finding, s *syntax.Statement, row *vocabulary.Row, pieces []piece, other vocabulary.Other, changed bool) bool {
	switch {
	case r.reads(row, pieces) && other.Likely:
		f.Write(r.at(s.Head()), joined(pieces))
	case r.reads(row, pieces) && !changed:
		f.Repair(f.Place, other.Means)
		if row.Opens == vocabulary.None {
			f.Hint = "write " + joined(pieces)
		}
	case r.reads(row, pieces):
		f.Repair(r.at(s.Head()), joined(pieces))
	default:
		if r.tried != nil && s.Head().End-s.Head().Start <= longestTried {
			if texts := r.readings(row, pieces, likely, r.endsLine(s)); len(texts) > 0 {
				f.Write(r.at(s.Head()), texts...)
				return true
			}
		}
		if len(vocabulary.Homes(s.Verb.Text)) > 0 || len(vocabulary.OtherWords(r.in, s.Verb.Text)) > 1 {
			return false // it may be a statement of that block, or another one, all the same
		}
		f.Ask(f.Place, other.Means)
		f.Hint += " its form: " + vocabulary.Form(*row)
	}
	return true
}

// ofChoice puts right a statement that says only a choice of the block: electric, pale malt.
func (r *statementReader) ofChoice(f *finding.Finding, s *syntax.Statement) bool {
	var texts []string
	pieces := piecesOf(r.at, s)
	for _, word := range vocabulary.Words(r.in) {
		row, _ := vocabulary.Lookup(r.in, word)
		if len(row.Slots) == 0 || row.Slots[0].Kind != vocabulary.Choice || !slices.Contains(row.Slots[0].Words, s.Verb.Text) {
			continue
		}
		said := with(pieces, 0, 1, piece{text: word, kind: verbPiece}, piece{text: s.Verb.Text, kind: wordPiece})
		if r.reads(row, said) {
			texts = append(texts, joined(said))
		}
	}
	if len(texts) == 0 || len(texts) > mostOffered {
		return false
	}
	f.Write(r.at(s.Head()), texts...)
	return true
}

// verbBehind puts right a statement whose word stands further behind: every 8 h turn.
func (r *statementReader) verbBehind(pieces []piece) []string {
	for i := 1; i < len(pieces); i++ {
		if pieces[i].kind != wordPiece && pieces[i].kind != unitPiece {
			continue
		}
		for _, other := range vocabulary.OtherWords(r.in, pieces[i].text) {
			row, ok := vocabulary.Lookup(r.in, other.Means)
			if !ok {
				continue
			}
			list := slices.Concat([]piece{{text: row.Word, kind: verbPiece}}, pieces[:i], pieces[i+1:])
			if list[1].kind == verbPiece {
				list[1].kind = wordPiece
				if _, clause := row.Clause(list[1].text); clause {
					list[1].kind = clausePiece
				}
			}
			if texts := r.readings(row, list, likely, false); len(texts) > 0 {
				return texts
			}
		}
	}
	return nil
}

func verbOf(words []string) []piece {
	list := []piece{{text: words[0], kind: verbPiece}}
	for _, w := range words[1:] {
		list = append(list, piece{text: w, kind: wordPiece})
	}
	return list
}

// unitOfVerb gives numbers without a unit that of the verb, where that is one: watts 2000.
func unitOfVerb(verb string, pieces []piece) []piece {
	u, ok := quantity.Lookup(verb)
	if !ok {
		return pieces
	}
	pieces = slices.Clone(pieces)
	for i, p := range pieces {
		if p.kind == valuePiece && p.dim == quantity.Number {
			pieces[i] = piece{text: p.text + " " + u.Name, kind: valuePiece, dim: u.Dimension}
		}
	}
	return pieces
}

// withValues is what to write for another word, with the value that was written.
func withValues(other vocabulary.Other, pieces []piece) string {
	sample, err := quantity.Parse(other.Sample)
	if err != nil {
		return other.Write
	}
	for _, p := range pieces {
		if p.kind == valuePiece && p.dim == sample.Dimension {
			return strings.Replace(other.Write, other.Sample, p.text, 1)
		}
	}
	return other.Write
}

// unknown reports a statement whose word the block does not know.
func (r *statementReader) unknown(s *syntax.Statement) {
	word, place := s.Verb.Text, r.at(s.Verb.Span)
	homes := vocabulary.Homes(word)
	f := unknownWord.At(place, fmt.Sprintf("%q is not a word of %s", word, blockName(r.in)))
	if len(homes) > 0 {
		f = wordOutOfPlace.At(place, fmt.Sprintf("%s does not stand in %s", word, blockName(r.in)))
		f.Hint = "it belongs in " + joinOr(homes)
	}
	near, ok := "", false
	if !r.spent() {
		near, ok = r.verbMeant(s)
	}
	switch {
	case !r.spent() && (r.otherVerb(&f, s, 1) || r.ofChoice(&f, s)):
	case ok:
		f.AskOnly(place, near, true)
	case len(homes) > 0:
	default:
		if meant, ok := vocabulary.Meant(r.in, word); ok {
			f.AskOnly(place, meant, certain(word, vocabulary.Words(r.in)))
		} else {
			f.Hint = "known here: " + strings.Join(vocabulary.Words(r.in), ", ")
		}
	}
	if f.Fixes == nil && f.Offers == nil && r.tried != nil && !r.spent() && s.Head().End-s.Head().Start <= longestTried {
		if texts := r.verbBehind(piecesOf(r.at, s)); texts != nil {
			f.Write(r.at(s.Head()), texts...)
		}
	}
	r.note(f)
}
