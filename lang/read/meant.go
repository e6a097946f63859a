package read

import (
	"slices"
	"strings"

	"maltwright/lang/finding"
	"maltwright/lang/syntax"
	"maltwright/lang/vocabulary"
)

// How it works
//
// A statement that does not read is cut into its pieces: words, clause words and values. Words
// that people write for those of the language are put right first, and a number without its
// unit is given those that can be meant. Then a few changes are tried by which people's slips
// are undone: a clause word that is missing or another one, a value and its word the other way
// round, a word too many. None of them touches the number of a value, and none leaves out a
// word that says something. The first that reads as a whole is told, as what to write.

// A header that is longer is told without, and so is one for which, or in a house in which, so
// many texts were tried.
const (
	longestTried = 200 // bytes
	mostTries    = 150
	triesOfHouse = 1500
)

// mostOffered is the most readings that a hint shows.
const mostOffered = 3

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
	texts := r.readings(row, piecesOf(r.at, s), changes, r.endsLine(s))
	if len(texts) == 0 {
		return
	}
	found[before].Write(r.at(s.Head()), texts...)
	*r.found = found[:before+1]
}

// endsLine tells whether nothing stands behind a statement on its line, so that a comment may.
func (r *statementReader) endsLine(s *syntax.Statement) bool {
	if s.Body != nil || s.Trail != nil {
		return false
	}
	rest := strings.TrimLeft(string(r.file.Bytes()[s.Head().End:]), " \t\u00a0")
	return rest == "" || rest[0] == '\n' || rest[0] == '\r'
}

// undecided tells whether a finding says what to do in general alone.
func undecided(f *finding.Finding) bool {
	return len(f.Fixes) == 0 && slices.Contains([]string{unknownWord.Name, unknownClause.Name, twoOfAClause.Name, valueNeeded.Name,
		wordsTooMany.Name, wrongDimension.Name, badNumber.Name, boundMissing.Name, boundUnexpected.Name, missingUnit.Name, placeMissing.Name, unknownUnit.Name}, f.Rule) && len(f.Offers) == 0
}

// readings are the texts that may be meant by pieces that do not read, the likeliest first.
func (r *statementReader) readings(row *vocabulary.Row, pieces []piece, changes []change, aside bool) (texts []string) {
	s := &search{r: r, row: row, aside: aside, until: min(*r.tried+mostTries, triesOfHouse)}
	if len(changes) == 1 {
		return s.found(pieces, changes)
	}
	right := r.wordsRight(row, pieces)
	for _, list := range r.unitsRight(row, right) {
		for _, text := range s.found(list, changes) {
			if !slices.Contains(texts, text) && len(texts) < mostOffered {
				texts = append(texts, text)
			}
		}
	}
	return texts
}
