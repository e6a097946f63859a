package outline

import (
	"slices"

	"maltwright/lang/source"
	"maltwright/lang/syntax"
	"maltwright/lang/vocabulary"
)

// WordKind is what a word of a file is.
type WordKind int

// The kinds of word.
const (
	NoWord        WordKind = iota
	StatementWord          // it begins a statement
	BlockWord              // it begins one that has a block
	ClauseWord             // it opens a clause
	BoundWord              // at least, at most, is; to between two values; and
	NumberWord
	UnitWord
	TimeWord    // a date or a time of day
	MeasureWord // what is measured, or where: moisture, air-on
	ChoiceWord  // one of a few words: barley, chalky; or one that only makes the line read well
	NameWord    // the name of something
	TextWord    // another text in quotes
	CommentWord
)

// Word is one word of a file and what it is.
type Word struct {
	source.Span
	Kind    WordKind
	Of      vocabulary.Block // of a name: what is called so
	Defines bool             // of a name: this is where it is given
}

// Kinds tells of each word of a file what it is, in the order in which they stand; none overlaps
// another, and none goes over a line end. In a statement that does not read, words are known by
// their letters alone.
func Kinds(t *syntax.Tree) []Word {
	m := meanings{at: map[int]Word{}}
	m.block(&t.Top, vocabulary.File)
	for _, n := range Names(t) {
		m.at[n.Place.Start] = Word{Kind: NameWord, Of: n.Kind, Defines: n.Defines}
	}
	var list []Word
	for _, l := range syntax.Lexemes(t.File) {
		w, ok := m.at[l.Start]
		if !ok {
			w.Kind = byLetters(t.File.Text(l.Span), l.Kind)
		}
		if w.Kind != NoWord {
			w.Span = l.Span
			list = append(list, w)
		}
	}
	return list
}

var lexemeWords = map[syntax.LexemeKind]WordKind{
	syntax.ClauseLexeme: ClauseWord, syntax.BoundLexeme: BoundWord, syntax.ToLexeme: BoundWord,
	syntax.NumberLexeme: NumberWord, syntax.UnitLexeme: UnitWord, syntax.DateLexeme: TimeWord, syntax.ClockLexeme: TimeWord,
	syntax.TextLexeme: TextWord, syntax.CommentLexeme: CommentWord,
}

// byLetters is what a word is of which the tree knows nothing.
func byLetters(text string, kind syntax.LexemeKind) WordKind {
	if kind == syntax.WordLexeme {
		return ofValue(text)
	}
	return lexemeWords[kind]
}

// ofValue is what a bare word among the values of a statement is.
func ofValue(word string) WordKind {
	switch _, place := vocabulary.FindPlace(word); {
	case word == vocabulary.And:
		return BoundWord
	case place || vocabulary.IsMeasure(word):
		return MeasureWord
	}
	return ChoiceWord
}

// meanings are what words are by the statements they stand in, by their offsets.
type meanings struct{ at map[int]Word }

func (m *meanings) block(b *syntax.Block, in vocabulary.Block) {
	for _, s := range b.Statements {
		kind := StatementWord
		opens := vocabulary.Opens(in, s.Verb.Text)
		if s.Body != nil || opens != vocabulary.None {
			kind = BlockWord
		}
		m.at[s.Start] = Word{Kind: kind}
		row, known := vocabulary.Lookup(in, s.Verb.Text)
		if !known {
			row = &vocabulary.Row{}
		}
		m.values(s.Terms, row.Slots)
		for _, c := range s.Clauses {
			if !c.Word.Empty() {
				m.at[c.Word.Start] = Word{Kind: ClauseWord}
			}
			def, ok := row.Clause(c.Word.Text)
			if !ok {
				def = &vocabulary.Clause{}
			}
			m.values(c.Terms, def.Slots)
		}
		if s.Body != nil {
			m.block(s.Body, opens)
		}
	}
}

// values notes the bare words among some values, which a clause or a bound may be called like. One that only
// makes the line read well is no measure: make pale malt.
func (m *meanings) values(terms []syntax.Term, slots []vocabulary.Slot) {
	fills := func(word string) bool {
		return slices.ContainsFunc(slots, func(s vocabulary.Slot) bool {
			return s.Kind == vocabulary.Literal && slices.Contains(s.Words, word)
		})
	}
	for _, t := range terms {
		if b, ok := t.(syntax.Bounded); ok {
			t = b.Value
		}
		switch w, ok := t.(syntax.Word); {
		case ok && fills(w.Text):
			m.at[w.Start] = Word{Kind: ChoiceWord}
		case ok:
			m.at[w.Start] = Word{Kind: ofValue(w.Text)}
		}
	}
}
