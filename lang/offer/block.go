package offer

import (
	"slices"
	"strings"

	"maltwright/lang/source"
	"maltwright/lang/syntax"
	"maltwright/lang/vocabulary"
)

// blockAt finds the block in which an offset lies. It is None where nobody can tell what the
// block is.
func blockAt(f *source.File, tree *syntax.Tree, offset int, line source.Span) (vocabulary.Block, *syntax.Block) {
	in, block := vocabulary.File, &tree.Top
	for {
		i := slices.IndexFunc(block.Statements, func(s *syntax.Statement) bool { return s.Body != nil && holds(f, s, offset, line) })
		if i < 0 {
			return in, block
		}
		s := block.Statements[i]
		in, block = opened(in, s.Verb.Text), s.Body
	}
}

// holds tells whether an offset lies in the block of a statement. One that is not closed goes on
// below its last statement for as long as lines stand further in than its head.
func holds(f *source.File, s *syntax.Statement, offset int, line source.Span) bool {
	b := s.Body
	if offset <= b.Start {
		return false
	}
	if f.Bytes()[b.End-1] == '}' && b.End > b.Start+1 {
		return offset < b.End
	}
	return offset <= b.End || indent(f, line) > indent(f, lineAt(f, s.Start))
}

func indent(f *source.File, line source.Span) int {
	text := f.Text(line)
	return len(text) - len(strings.TrimLeft(text, " \t"))
}

// opened is the block that a statement opens, of a word that is written otherwise too.
func opened(in vocabulary.Block, verb string) vocabulary.Block {
	if row, ok := rowOf(in, verb); ok {
		return row.Opens
	}
	return vocabulary.None
}

// rowOf is the row of a word, or of the one that is meant by it.
func rowOf(in vocabulary.Block, verb string) (*vocabulary.Row, bool) {
	if row, ok := vocabulary.Lookup(in, verb); ok {
		return row, true
	}
	if in == vocabulary.Limits {
		return limitRow(verb)
	}
	if other, ok := vocabulary.OtherWord(in, verb); ok {
		return vocabulary.Lookup(in, strings.SplitN(other.Means, " ", 2)[0])
	}
	if meant, ok := vocabulary.Meant(in, verb); ok {
		return vocabulary.Lookup(in, meant)
	}
	return nil, false
}

// limitRow is a threshold as a statement of its block.
func limitRow(word string) (*vocabulary.Row, bool) {
	for _, l := range vocabulary.LimitNames() {
		if l.Word == word {
			return &vocabulary.Row{Word: l.Word, In: []vocabulary.Block{vocabulary.Limits}, Once: true, Doc: l.Doc, Slots: []vocabulary.Slot{limitSlot(l)}}, true
		}
	}
	return nil, false
}
