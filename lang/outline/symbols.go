package outline

import (
	"strings"
	"unicode/utf8"

	"maltwright/lang/source"
	"maltwright/lang/syntax"
	"maltwright/lang/vocabulary"
)

// SymbolKind is what a symbol is of.
type SymbolKind int

// The kinds of symbol.
const (
	Definition SymbolKind = iota // a lot, a vessel, a kiln, what was learnt of a house ...
	Settings                     // limits, which have no name
	Process
	Stage
	Step
	Batch
	Day     // of a batch
	Reading // what was seen, done or noted of a batch
)

// Symbol is something a reader may look for in a file.
type Symbol struct {
	Kind   SymbolKind
	Name   string           // never empty
	Of     vocabulary.Block // of a definition: what it defines
	Detail string           // a few words more, as they are written; may be ""
	Whole  source.Span      // all of it
	Word   source.Span      // what is shown when it is gone to; within the whole
	Inside []Symbol
}

// mostDetail is how many letters a detail has at the most.
const mostDetail = 60

// Symbols lists what a file defines, with what that holds, in the order in which it stands.
func Symbols(t *syntax.Tree) []Symbol {
	var list []Symbol
	for _, s := range t.Top.Statements {
		row, ok := vocabulary.Lookup(vocabulary.File, s.Verb.Text)
		if !ok || row.Opens == vocabulary.None {
			continue
		}
		list = append(list, symbolOf(t.File, s, row))
	}
	return list
}

func symbolOf(f *source.File, s *syntax.Statement, row *vocabulary.Row) Symbol {
	sym := Symbol{Of: row.Opens, Name: s.Verb.Text, Whole: s.Span, Word: s.Verb.Span}
	if _, named := Definer(s.Verb.Text); !named {
		sym.Kind = Settings
	} else if len(s.Terms) > 0 {
		if text, ok := s.Terms[0].(syntax.Text); ok && strings.TrimSpace(text.Value) != "" {
			sym.Name, sym.Word = strings.TrimSpace(text.Value), text.Span
		}
	}
	switch row.Opens {
	case vocabulary.Process:
		sym.Kind, sym.Detail = Process, facts(f, s, row.Opens)
		sym.Inside = steps(f, s.Body, row.Opens)
	case vocabulary.Batch:
		sym.Kind, sym.Detail = Batch, begun(f, s)
		sym.Inside = days(f, s.Body)
	default:
		sym.Detail = facts(f, s, row.Opens)
	}
	return sym
}

// facts are the statements of a block that are no steps, in short.
func facts(f *source.File, s *syntax.Statement, in vocabulary.Block) string {
	if s.Body == nil {
		return ""
	}
	var list []string
	for _, fact := range s.Body.Statements {
		if row, ok := vocabulary.Lookup(in, fact.Verb.Text); (ok && row.Ordered) || fact.Broken || len(list) == 4 {
			break
		}
		list = append(list, headOf(f, fact))
	}
	return short(strings.Join(list, "; "))
}

// begun says of which process a batch is, and since when.
func begun(f *source.File, s *syntax.Statement) string {
	var list []string
	for _, c := range s.Clauses {
		list = append(list, words(f, c.Span))
	}
	if s.Body != nil {
		for _, line := range s.Body.Statements {
			if row, ok := vocabulary.Lookup(vocabulary.Batch, line.Verb.Text); ok && row.Needed && !line.Broken {
				list = append(list, headOf(f, line))
			}
		}
	}
	return short(strings.Join(list, ", "))
}

// steps are the stages of a process, the steps of a stage or those that are repeated.
func steps(f *source.File, b *syntax.Block, in vocabulary.Block) []Symbol {
	if b == nil {
		return nil
	}
	var list []Symbol
	for _, s := range b.Statements {
		row, ok := vocabulary.Lookup(in, s.Verb.Text)
		if !ok || !row.Ordered {
			continue
		}
		sym := Symbol{Kind: Step, Of: row.Opens, Name: s.Verb.Text, Detail: behindVerb(f, s), Whole: s.Span, Word: s.Verb.Span}
		if in == vocabulary.Process {
			sym.Kind = Stage
		}
		sym.Inside = steps(f, s.Body, row.Opens)
		list = append(list, sym)
	}
	return list
}

func headOf(f *source.File, s *syntax.Statement) string { return words(f, s.Head()) }

// behindVerb is the head of a statement without its first word.
func behindVerb(f *source.File, s *syntax.Statement) string {
	if s.Broken {
		return ""
	}
	return short(words(f, source.Span{Start: s.Verb.End, End: s.Head().End}))
}

// words is the text of a place with one blank between its words.
func words(f *source.File, s source.Span) string { return strings.Join(strings.Fields(f.Text(s)), " ") }

// short cuts a detail that is too long, at a blank where there is one.
func short(text string) string {
	if utf8.RuneCountInString(text) <= mostDetail {
		return text
	}
	cut := string([]rune(text)[:mostDetail-1])
	if at := strings.LastIndex(cut, " "); at > mostDetail/2 {
		cut = cut[:at]
	}
	return strings.TrimRight(cut, " ;,") + " …"
}
