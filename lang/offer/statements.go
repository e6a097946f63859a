package offer

import (
	"slices"
	"strings"

	"maltwright/lang/source"
	"maltwright/lang/syntax"
	"maltwright/lang/vocabulary"
)

// The classes of statements, in the order in which they are shown.
const (
	neededFirst = iota
	inFront
	stageNext
	onceYet
	again
	onceInRecord
	asides

	wholesBehind = 5 // of ten
)

// statements lists the words of a block.
func (l *list) statements() {
	if l.in == vocabulary.None {
		return
	}
	there := l.there()
	if l.in == vocabulary.Limits {
		l.limits(there)
		return
	}
	rank := l.rankAbove()
	for _, row := range rowsOf(l.in) {
		if row.Once && there[row.Word] {
			continue
		}
		l.class = 10 * classOf(&row, l.in, there[row.Word], rank)
		l.add(Item{Label: row.Word, Kind: Statement, Detail: short(row.Doc), Doc: row.Doc, Form: vocabulary.Form(row), Filter: filter(row.Word, vocabulary.WrittenFor(l.in, row.Word)), Needed: row.Needed && !there[row.Word]})
	}
	l.wholes()
}

// rowsOf lists the statements that may stand in a block.
func rowsOf(in vocabulary.Block) []vocabulary.Row { return byBlock[in] }

var byBlock = func() map[vocabulary.Block][]vocabulary.Row {
	m := map[vocabulary.Block][]vocabulary.Row{}
	for _, r := range vocabulary.Rows() {
		for _, b := range r.In {
			m[b] = append(m[b], r)
		}
	}
	return m
}()

func classOf(row *vocabulary.Row, in vocabulary.Block, there bool, rank int) int {
	switch {
	case row.Needed && !there:
		return neededFirst
	case row.Aside:
		return asides
	case isFront(row, in):
		return inFront
	case in == vocabulary.Process && row.Ordered:
		if !there && vocabulary.StageRank(row.Word) >= rank {
			return stageNext
		}
		return again
	case row.Ordered && row.Phase != vocabulary.Anywhere:
		return stageNext
	case row.Once && in != vocabulary.Batch: // a record is what is written down again and again
		return onceYet
	case row.Once:
		return onceInRecord
	}
	return again
}

// isFront tells whether a statement stands in front of the steps of a block, as the table has it.
func isFront(row *vocabulary.Row, in vocabulary.Block) bool {
	if !row.Once || row.Ordered {
		return false
	}
	rows := rowsOf(in)
	step := slices.IndexFunc(rows, func(r vocabulary.Row) bool { return r.Ordered })
	return slices.IndexFunc(rows, func(r vocabulary.Row) bool { return r.Word == row.Word }) < step
}

// there are the words of the statements that stand in the block beside the one at the place.
func (l *list) there() map[string]bool {
	set := map[string]bool{}
	for _, s := range l.block.Statements {
		if s.Start != l.start {
			set[s.Verb.Text] = true
		}
	}
	return set
}

// rankAbove is that of the stage behind the last one above the place.
func (l *list) rankAbove() (rank int) {
	for _, s := range l.block.Statements {
		if s.Start < l.start && vocabulary.IsStep(s.Verb.Text) {
			rank = vocabulary.StageRank(s.Verb.Text) + 1
		}
	}
	return rank
}

// limits lists the thresholds of the house.
func (l *list) limits(there map[string]bool) {
	l.class = onceYet
	for _, limit := range vocabulary.LimitNames() {
		if !there[limit.Word] {
			l.add(Item{Label: limit.Word, Kind: Statement, Detail: short(limit.Doc), Doc: limit.Doc, Form: limitForm(limit)})
		}
	}
}

// short is the beginning of what something means, as far as it stands by itself.
func short(doc string) string {
	if i := strings.IndexAny(doc, ".;:("); i > 0 {
		doc = doc[:i]
	}
	return strings.TrimSpace(doc)
}

func limitForm(l vocabulary.Limit) string {
	return l.Word + " " + l.Op.String() + " <" + l.Dim.String() + ">"
}

// formOf is the form of a statement of a block.
func formOf(in vocabulary.Block, row vocabulary.Row) string {
	for _, l := range vocabulary.LimitNames() {
		if in == vocabulary.Limits && l.Word == row.Word {
			return limitForm(l)
		}
	}
	return vocabulary.Form(row)
}

// NamesIn lists what a file defines: its lots, vessels, kilns and the like, each with the first
// of what is said of it.
func NamesIn(tree *syntax.Tree) (list []Named) {
	for _, s := range tree.Top.Statements {
		row, ok := rowOf(vocabulary.File, s.Verb.Text)
		if !ok || row.Opens == vocabulary.None || len(s.Terms) == 0 {
			continue
		}
		name, ok := s.Terms[0].(syntax.Text)
		if !ok || name.Value == "" {
			continue
		}
		list = append(list, Named{Block: row.Opens, Text: name.Value, Detail: brief(tree, row, s), Place: source.Place{File: tree.File, Span: s.Head()}, end: s.End})
	}
	return list
}

// brief says what a definition is, and the first two things that are said of it.
func brief(tree *syntax.Tree, row *vocabulary.Row, s *syntax.Statement) string {
	said := []string{row.Word}
	if s.Body != nil {
		for _, fact := range inOrder(row.Opens, s.Body.Statements) {
			said = append(said, strings.Join(strings.Fields(tree.File.Text(fact.Head())), " "))
			if len(said) == 3 {
				break
			}
		}
	}
	return strings.Join(said, ", ")
}

// inOrder lists the facts of a block, each once, in the order of the vocabulary and those that it
// needs first.
func inOrder(in vocabulary.Block, body []*syntax.Statement) (list []*syntax.Statement) {
	for _, needed := range []bool{true, false} {
		for _, row := range rowsOf(in) {
			i := slices.IndexFunc(body, func(s *syntax.Statement) bool { return !s.Broken && s.Body == nil && s.Verb.Text == row.Word })
			if i >= 0 && row.Needed == needed && !row.Aside {
				list = append(list, body[i])
			}
		}
	}
	return list
}
