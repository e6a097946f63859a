package read

import (
	"slices"
	"strings"

	"maltwright/lang/finding"
	"maltwright/lang/quantity"
	"maltwright/lang/source"
	"maltwright/lang/syntax"
	"maltwright/lang/vocabulary"
)

// How it works
//
// A statement that does not read is cut into its pieces: words, clause words and values. What
// somebody may have meant by it is written by a few changes that people's slips are undone
// by: another word for one of the language, a clause word that is missing or another one, a
// value and its word the other way round, a word too many. None of them touches a value. The
// first that reads as a whole is told, as what to write.

// piece is a part of the header of a statement.
type piece struct {
	text string
	kind pieceKind
	dim  quantity.Dimension // of a value
}

type pieceKind int

const (
	verbPiece pieceKind = iota
	wordPiece
	clausePiece
	valuePiece
	textPiece
)

// A header that is longer is told without, and so is one for which, or in a house in which, so
// many texts were tried.
const (
	longestTried = 200 // bytes
	mostTries    = 120
	triesOfHouse = 1500
)

// meant puts what was noted of a statement right by what to write instead, where that can be
// told. Before is how many findings there were in front of it.
func (r *statementReader) meant(s *syntax.Statement, row *vocabulary.Row, before int) {
	found := *r.found
	if r.tried == nil || len(found) == before || s.Head().End-s.Head().Start > longestTried || !undecided(&found[before]) {
		return
	}
	changes := likely
	if found[before].Rule == twoOfAClause.Name { // of two times or two lots nobody knows which is meant
		changes = []change{joinedOn}
	}
	text, ok := r.reading(row, piecesOf(r.at, s), changes)
	if !ok {
		return
	}
	found[before].Write(r.at(s.Head()), text)
	*r.found = found[:before+1]
}

// undecided tells whether a finding says what to do in general alone.
func undecided(f *finding.Finding) bool {
	if len(f.Fixes) > 0 || !slices.Contains([]string{unknownWord.Name, unknownClause.Name, twoOfAClause.Name, valueNeeded.Name, wordsTooMany.Name, wrongDimension.Name, badNumber.Name}, f.Rule) {
		return false
	}
	general := []string{wordsTooMany.Do, wrongDimension.Do, twoOfAClause.Do, valueNeeded.Do}
	return slices.Contains(general, f.Hint) || strings.HasPrefix(f.Hint, "known here: ") || strings.HasPrefix(f.Hint, "write in words ") ||
		strings.HasPrefix(f.Hint, "such as: ") || strings.Contains(f.Hint, " takes: ") || strings.HasPrefix(f.Hint, "the parts of one quantity ")
}

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
	case syntax.Amount:
		if t.High == nil && len(t.Low.Parts) > 1 {
			return apart(t.Low.Written(), text)
		}
		last := t.Low
		if t.High != nil { // of 14 to 18 °C the first has no unit
			last = *t.High
		}
		if q, err := quantity.Make(last.Written()...); err == nil {
			return []piece{{text, valuePiece, q.Dimension}}
		}
	}
	return []piece{{text: text, kind: textPiece}}
}

// apart cuts the parts of a quantity apart that are of different kinds.
func apart(parts []quantity.Part, text string) (list []piece) {
	if q, err := quantity.Make(parts...); err == nil {
		return []piece{{text, valuePiece, q.Dimension}}
	}
	for _, p := range parts {
		q, err := quantity.Make(p)
		if err != nil {
			return []piece{{text: text, kind: textPiece}}
		}
		list = append(list, piece{p.Number + " " + p.Unit, valuePiece, q.Dimension})
	}
	return list
}

// reading is the first text that reads, by one change of the pieces or by two.
func (r *statementReader) reading(row *vocabulary.Row, pieces []piece, changes []change) (string, bool) {
	until := min(*r.tried+mostTries, triesOfHouse)
	once, less := changesOf(row, pieces, changes...), [][]piece{}
	if len(changes) > 1 {
		less = changesOf(row, pieces, leftOut)
	}
	for _, lists := range [][][]piece{once, less, twice(row, once, changes), twice(row, less, changes)} {
		for _, list := range lists {
			if *r.tried++; *r.tried > until {
				return "", false
			}
			if r.reads(row, list) {
				return joined(list), true
			}
		}
	}
	return "", false
}

// twice changes each of the lists once more.
func twice(row *vocabulary.Row, lists [][]piece, changes []change) (all [][]piece) {
	for _, list := range lists {
		if len(all) > mostTries {
			break
		}
		all = append(all, changesOf(row, list, changes...)...)
	}
	return all
}

func joined(pieces []piece) string {
	words := make([]string, len(pieces))
	for i, p := range pieces {
		words[i] = p.text
	}
	return strings.Join(words, " ")
}

// reads tells whether the pieces are a whole statement of the row.
func (r *statementReader) reads(row *vocabulary.Row, pieces []piece) bool {
	text := joined(pieces)
	if row.Opens != vocabulary.None {
		text += " { }"
	}
	tree, found := syntax.Parse(source.New(r.file.Name(), []byte(text)))
	if len(found) > 0 || len(tree.Top.Statements) != 1 {
		return false
	}
	trial := &statementReader{file: tree.File, found: &found, in: r.in}
	_, ok := trial.read(tree.Top.Statements[0])
	return ok && len(found) == 0
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

// otherVerb says what to write for a statement that is called otherwise, with its values.
func (r *statementReader) otherVerb(f *finding.Finding, s *syntax.Statement, other vocabulary.Other) {
	row, ok := vocabulary.Lookup(r.in, other.Means)
	pieces := piecesOf(r.at, s)
	if !ok {
		f.Hint = withValues(other, pieces)
		return
	}
	pieces[0].text = row.Word
	if r.reads(row, pieces) {
		f.Repair(f.Place, row.Word)
		f.Hint = "write " + joined(pieces)
		return
	}
	f.Hint = "write it so: " + row.Example
	if r.tried == nil {
		return
	}
	if text, ok := r.reading(row, pieces, likely); ok {
		f.Write(r.at(s.Head()), text)
	}
}
