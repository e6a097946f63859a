package outline

import (
	"slices"

	"maltwright/lang/source"
	"maltwright/lang/syntax"
)

// Around lists what stands round a place, each within the next: its word, the value, the clause, the head
// of the statement, the statement, the inside of its block, and so on to the whole file.
func Around(t *syntax.Tree, at int) []source.Span {
	list := []source.Span{{End: t.File.Size()}}
	add := func(s source.Span) {
		if last := list[len(list)-1]; s != last && s.Start <= at && at <= s.End && last.Start <= s.Start && s.End <= last.End {
			list = append(list, s)
		}
	}
	statementsAt(&t.Top, at, add)
	lexemes := syntax.Lexemes(t.File)
	i, _ := slices.BinarySearchFunc(lexemes, at, func(l syntax.Lexeme, at int) int { return l.End - at })
	for ; i < len(lexemes) && lexemes[i].Start <= at; i++ {
		if lexemes[i].Kind == syntax.TextLexeme { // without its quotes
			add(lexemes[i].Span)
			add(syntax.Text{Span: lexemes[i].Span}.Inner(t.File))
		} else if lexemes[i].Kind != syntax.EndLexeme && (lexemes[i].End > at || i+1 == len(lexemes) || lexemes[i+1].Start > at) {
			add(lexemes[i].Span)
		}
	}
	slices.Reverse(list)
	return list
}

func statementsAt(b *syntax.Block, at int, add func(source.Span)) {
	i := slices.IndexFunc(b.Statements, func(s *syntax.Statement) bool { return s.Start <= at && at <= s.End })
	if i < 0 {
		return
	}
	s := b.Statements[i]
	add(s.Span)
	if s.Body != nil && s.Body.Start <= at {
		add(s.Body.Span)
		add(source.Span{Start: s.Body.Start + 1, End: s.Body.End - 1})
		statementsAt(s.Body, at, add)
		return
	}
	add(s.Head())
	for _, c := range s.Clauses {
		if c.Start <= at && at <= c.End {
			add(c.Span)
			valuesAt(c.Terms, at, add)
			return
		}
	}
	valuesAt(s.Terms, at, add)
}

func valuesAt(terms []syntax.Term, at int, add func(source.Span)) {
	for _, t := range terms {
		if r := t.Range(); r.Start <= at && at <= r.End {
			add(r)
			if b, ok := t.(syntax.Bounded); ok {
				valuesAt([]syntax.Term{b.Value}, at, add)
			}
			return
		}
	}
}
