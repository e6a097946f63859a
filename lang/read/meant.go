package read

import (
	"slices"
	"strings"

	"maltwright/lang/finding"
	"maltwright/lang/sorted"
	"maltwright/lang/source"
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
	if len(found) > before && r.doubted(s, row, before) {
		return
	}
	if r.tried == nil || r.spent() || len(found) == before || s.Head().End-s.Head().Start > longestTried || !undecided(&found[before]) {
		return
	}
	changes := likely
	if found[before].Rule == twoOfAClause.Name { // of two times or two lots nobody knows which is meant
		changes = []change{joinedOn}
	}
	mended, done := r.mended(s, row, found[before:])
	if done {
		return
	}
	if _, _, two := firstWords(s, 2); two && r.twoWords(s, row, before) {
		return
	}
	texts := r.readings(row, piecesOf(r.at, s), changes, r.endsLine(s))
	if texts == nil && mended != nil {
		texts = r.readings(row, mended, changes, r.endsLine(s))
	}
	if len(texts) == 0 {
		return
	}
	found[before].Write(r.at(s.Head()), texts...)
	*r.found = found[:before+1]
}

// doubted puts right what is said of a poison of the lot by words that doubt, deny otherwise than
// plainly, or say what it was treated with: that is never read as a lot that is without it.
func (r *statementReader) doubted(s *syntax.Statement, row *vocabulary.Row, before int) bool {
	poison, ok := vocabulary.PoisonOf(row.Word)
	said := strings.TrimSpace(strings.TrimPrefix(r.at(s.Head()).Text(), s.Verb.Text))
	if !ok || s.Body != nil || said == "" {
		return false
	}
	first, more, _ := strings.Cut(said, " ")
	aside := ""
	if r.endsLine(s) {
		aside = " # " + said
	}
	var texts []string
	switch is := poison.Said(said); {
	case is == vocabulary.SaidUnknown:
		texts = []string{row.Word + " " + vocabulary.SaidUnknown}
	case is == poison.Is && !slices.Contains([]string{poison.Is, vocabulary.FactTreated}, first):
		texts = []string{row.Word + " " + poison.Is + aside}
	case is == "" && more != "" && first != poison.Is:
		texts = []string{row.Word + " " + poison.Is + aside, row.Word + " " + vocabulary.SaidUnknown + aside}
	default:
		return false
	}
	*r.found = (*r.found)[:before+1]
	(*r.found)[before].Write(r.at(s.Head()), texts...)
	return true
}

// twoWords puts right a statement whose first two words people write for another: air flow.
func (r *statementReader) twoWords(s *syntax.Statement, row *vocabulary.Row, before int) bool {
	written, _, _ := firstWords(s, 2)
	if !slices.ContainsFunc(vocabulary.OtherWords(r.in, written), func(o vocabulary.Other) bool { return o.Means != row.Word }) {
		return false
	}
	f := (*r.found)[before]
	if !r.otherVerb(&f, s, 2) || f.Fixes == nil && f.Offers == nil {
		return false
	}
	*r.found = append((*r.found)[:before], f)
	return true
}

// mended gives the pieces of a statement with the first repair of each of its findings made,
// nil where there is none, and whether it then reads.
func (r *statementReader) mended(s *syntax.Statement, row *vocabulary.Row, found []finding.Finding) (pieces []piece, done bool) {
	head := s.Head()
	text, end := r.at(head).Text(), head.End
	var edits []finding.Edit
	for i := range found {
		switch f := &found[i]; {
		case len(f.Fixes) > 0:
			edits = append(edits, f.Fixes...)
		case len(f.Offers) > 0:
			edits = append(edits, f.Offers[0].Edits...)
		}
	}
	sorted.Stable(edits, func(a, b finding.Edit) int { return b.Place.Start - a.Place.Start })
	for _, e := range edits {
		if e.Place.Start < head.Start || e.Place.End > end {
			continue
		}
		text = text[:e.Place.Start-head.Start] + e.New + text[e.Place.End-head.Start:]
		end = e.Place.Start
	}
	if text == r.at(head).Text() {
		return nil, false
	}
	tree, bad := syntax.Parse(source.New(r.file.Name(), []byte(text)))
	if len(bad) > 0 || len(tree.Top.Statements) != 1 {
		return nil, false
	}
	at := func(sp source.Span) source.Place { return source.Place{File: tree.File, Span: sp} }
	pieces = piecesOf(at, tree.Top.Statements[0])
	return pieces, r.reads(row, pieces)
}

// spent tells whether so much of the house was tried that no more is.
func (r *statementReader) spent() bool { return r.tried != nil && *r.tried >= triesOfHouse }

// endsLine tells whether nothing stands behind a statement on its line, so that a comment may.
func (r *statementReader) endsLine(s *syntax.Statement) bool {
	if s.Body != nil || s.Trail != nil {
		return false
	}
	rest := strings.TrimLeft(string(r.file.Bytes()[s.Head().End:]), " \t\u00a0")
	return rest == "" || rest[0] == '\n' || rest[0] == '\r'
}

// undecided tells whether a finding may be put right by writing the statement otherwise.
func undecided(f *finding.Finding) bool {
	return slices.Contains([]string{unknownWord.Name, unknownClause.Name, twoOfAClause.Name, valueNeeded.Name, wordsTooMany.Name, wrongDimension.Name,
		badNumber.Name, boundMissing.Name, boundUnexpected.Name, missingUnit.Name, placeMissing.Name, unknownUnit.Name, rangeUnexpected.Name}, f.Rule)
}

// readings are the texts that may be meant by pieces that do not read, the likeliest first.
func (r *statementReader) readings(row *vocabulary.Row, pieces []piece, changes []change, aside bool) (texts []string) {
	s := &search{r: r, row: row, aside: aside, until: min(*r.tried+mostTries, triesOfHouse)}
	if len(changes) == 1 {
		return r.home.fitting(s.found(pieces, changes))
	}
	right := r.wordsRight(row, pieces)
	if aside {
		right = insteadOf(row, right)
	}
	for _, list := range r.unitsRight(row, right) {
		for _, text := range s.found(list, changes) {
			if !slices.Contains(texts, text) && len(texts) < mostOffered {
				texts = append(texts, text)
			}
		}
	}
	return r.home.fitting(texts)
}
