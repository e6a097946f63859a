package read

import (
	"fmt"
	"slices"
	"strings"

	"maltwright/lang/finding"
	"maltwright/lang/quantity"
	"maltwright/lang/syntax"
	"maltwright/lang/vocabulary"
)

// otherVerb puts right what was noted of a statement whose first word, or first two, people
// write for another statement of the block. It is false where none of them is.
func (r *statementReader) otherVerb(f *finding.Finding, s *syntax.Statement) bool {
	taken, written := 1, s.Verb.Text
	other, ok := vocabulary.Other{}, false
	if second, is := firstWord(s); is {
		if other, ok = vocabulary.OtherWord(r.in, written+" "+second.Text); ok {
			taken, f.Place = 2, r.at(s.Verb.Join(second.Span))
		}
	}
	if !ok {
		if other, ok = vocabulary.OtherWord(r.in, written); !ok {
			return false
		}
	}
	pieces := piecesOf(r.at, s)
	words := strings.Fields(other.Means)
	if len(words) == 0 {
		f.Hint = withValues(other, pieces)
		return true
	}
	row, ok := vocabulary.Lookup(r.in, words[0])
	if !ok {
		return false
	}
	measured := unitOfVerb(written, pieces)
	return r.asStatement(f, s, row, with(measured, 0, taken, verbOf(words)...), other, joined(measured) != joined(pieces))
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
		if vocabulary.Homes(s.Verb.Text) != nil {
			return false // it may be a statement of that block all the same
		}
		f.Ask(f.Place, other.Means)
		f.Hint += " " + fmt.Sprintf("Its form: %s", vocabulary.Form(*row))
	}
	return true
}

func verbOf(words []string) []piece {
	list := []piece{{text: words[0], kind: verbPiece}}
	for _, w := range words[1:] {
		list = append(list, piece{text: w, kind: wordPiece})
	}
	return list
}

func firstWord(s *syntax.Statement) (w syntax.Word, ok bool) {
	if len(s.Terms) == 0 {
		return w, false
	}
	w, ok = s.Terms[0].(syntax.Word)
	return w, ok
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
	switch near, ok := r.verbMeant(s); {
	case r.otherVerb(&f, s):
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
	r.note(f)
}
