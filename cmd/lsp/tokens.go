package lsp

import (
	"context"

	"maltwright/cmd/lsp/desk"
	"maltwright/cmd/lsp/wire"
	"maltwright/lang/outline"
	"maltwright/lang/source"
	"maltwright/lang/vocabulary"
)

// tokenTypes are the kinds of words, by names that editors know.
var tokenTypes = []string{"keyword", "operator", "number", "type", "property", "enumMember", "variable", "class", "event", "namespace", "string", "comment"}

// tokenModifiers are what may be true of a word besides; each is a bit.
var tokenModifiers = []string{"declaration"}

var wordTypes = map[outline.WordKind]string{
	outline.StatementWord: "keyword", outline.BlockWord: "keyword", outline.ClauseWord: "operator", outline.BoundWord: "operator",
	outline.NumberWord: "number", outline.TimeWord: "number", outline.UnitWord: "type", outline.MeasureWord: "property",
	outline.ChoiceWord: "enumMember", outline.NameWord: "variable", outline.TextWord: "string", outline.CommentWord: "comment",
}

// nameTypes are the names that are not of a thing of the house.
var nameTypes = map[vocabulary.Block]string{vocabulary.Process: "class", vocabulary.Batch: "event", vocabulary.House: "namespace"}

var typeNumbers = func() map[string]uint32 {
	m := map[string]uint32{}
	for i, t := range tokenTypes {
		m[t] = uint32(i)
	}
	return m
}()

func tokenType(w outline.Word) uint32 {
	if t, ok := nameTypes[w.Of]; ok && w.Kind == outline.NameWord {
		return typeNumbers[t]
	}
	return typeNumbers[wordTypes[w.Kind]]
}

func offerTokens(c *wire.ServerCapabilities) {
	c.SemanticTokensProvider = &wire.SemanticTokensOptions{Legend: wire.SemanticTokensLegend{TokenTypes: tokenTypes, TokenModifiers: tokenModifiers}, Full: true, Range: true}
}

// semanticTokens tells of each word of a document what it is.
func semanticTokens(_ context.Context, _ *session, v *desk.View, p wire.SemanticTokensParams) (*wire.SemanticTokens, error) {
	doc, err := document(v, p.TextDocument)
	if err != nil {
		return nil, err
	}
	return tokensOf(v, doc, source.Span{End: doc.File.Size()}), nil
}

// semanticTokensRange tells it of those of a range.
func semanticTokensRange(_ context.Context, _ *session, v *desk.View, p wire.SemanticTokensRangeParams) (*wire.SemanticTokens, error) {
	doc, err := document(v, p.TextDocument)
	if err != nil {
		return nil, err
	}
	return tokensOf(v, doc, v.Span(doc.File, p.Range)), nil
}

// tokensOf writes five numbers for each word: its line and its column from the one before, its length, kind
// and modifiers.
func tokensOf(v *desk.View, doc *desk.Doc, in source.Span) *wire.SemanticTokens {
	out := &wire.SemanticTokens{Data: []uint32{}}
	var last wire.Position
	for _, w := range outline.Kinds(doc.Tree()) {
		if w.End <= in.Start || in.End <= w.Start {
			continue
		}
		r := v.Range(doc.File, w.Span)
		line, column := r.Start.Line-last.Line, r.Start.Character
		if line == 0 {
			column -= last.Character
		}
		var defines uint32
		if w.Defines {
			defines = 1
		}
		out.Data = append(out.Data, line, column, r.End.Character-r.Start.Character, tokenType(w), defines)
		last = r.Start
	}
	return out
}
