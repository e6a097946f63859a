package lsp

import (
	"context"
	"path/filepath"
	"strings"

	"maltwright/cmd/lsp/desk"
	"maltwright/cmd/lsp/wire"
	"maltwright/cmd/words"
	"maltwright/lang/outline"
	"maltwright/lang/source"
	"maltwright/lang/vocabulary"
)

// Kinds of symbol of the protocol.
const (
	kindNamespace = 3
	kindClass     = 5
	kindMethod    = 6
	kindField     = 8
	kindFunction  = 12
	kindArray     = 18
	kindObject    = 19
	kindKey       = 20
	kindEvent     = 24
)

var symbolKinds = map[outline.SymbolKind]uint32{
	outline.Definition: kindObject, outline.Settings: kindKey, outline.Process: kindClass, outline.Stage: kindMethod,
	outline.Step: kindFunction, outline.Batch: kindEvent, outline.Day: kindArray, outline.Reading: kindField,
}

func symbolKind(s outline.Symbol) uint32 {
	if s.Of == vocabulary.House {
		return kindNamespace
	}
	return symbolKinds[s.Kind]
}

// documentSymbol lists what a document holds, as a tree where the editor takes one.
func documentSymbol(_ context.Context, s *session, v *desk.View, p wire.DocumentSymbolParams) (any, error) {
	doc, err := document(v, p.TextDocument)
	if err != nil {
		return nil, err
	}
	list := outline.Symbols(doc.Tree())
	if s.can().TextDocument.DocumentSymbol.HierarchicalDocumentSymbolSupport {
		return treeOf(v, doc.File, list), nil
	}
	flat := []wire.SymbolInformation{}
	var add func([]outline.Symbol, string)
	add = func(list []outline.Symbol, in string) {
		for _, sym := range list {
			at := wire.Location{URI: p.TextDocument.URI, Range: v.Range(doc.File, sym.Whole)}
			flat = append(flat, wire.SymbolInformation{Name: words.Safe(sym.Name), Kind: symbolKind(sym), ContainerName: in, Location: at})
			add(sym.Inside, words.Safe(sym.Name))
		}
	}
	add(list, "")
	return flat, nil
}

func treeOf(v *desk.View, f *source.File, list []outline.Symbol) []wire.DocumentSymbol {
	out := make([]wire.DocumentSymbol, 0, len(list))
	for _, s := range list {
		out = append(out, wire.DocumentSymbol{
			Name: words.Safe(s.Name), Detail: words.Safe(s.Detail), Kind: symbolKind(s), Range: v.Range(f, s.Whole), SelectionRange: v.Range(f, s.Word), Children: treeOf(v, f, s.Inside),
		})
	}
	return out
}

// mostSymbols of all files are listed.
const mostSymbols = 1000

// workspaceSymbol lists what all files define whose names hold the letters that were typed, in their order.
func workspaceSymbol(ctx context.Context, _ *session, v *desk.View, p wire.WorkspaceSymbolParams) ([]wire.SymbolInformation, error) {
	list := []wire.SymbolInformation{}
	for _, at := range v.Workspace() {
		if ctx.Err() != nil {
			return nil, ctx.Err()
		}
		doc, err := v.Doc(at)
		if err != nil {
			continue // deleted meanwhile
		}
		for _, s := range outline.Symbols(doc.Tree()) {
			if s.Kind == outline.Settings || !holds(s.Name, p.Query) {
				continue
			}
			place := wire.Location{URI: v.URI(at), Range: v.Range(doc.File, s.Word)}
			list = append(list, wire.SymbolInformation{Name: words.Safe(s.Name), Kind: symbolKind(s), ContainerName: words.Safe(filepath.Base(at)), Location: place})
			if len(list) == mostSymbols {
				return list, nil
			}
		}
	}
	return list, nil
}

// holds tells whether a name has the letters of a query, in their order, whatever their case and what stands
// between.
func holds(name, query string) bool {
	rest := []rune(strings.ToLower(name))
	for _, r := range strings.ToLower(query) {
		at := 0
		for at < len(rest) && rest[at] != r {
			at++
		}
		if at == len(rest) {
			return false
		}
		rest = rest[at+1:]
	}
	return true
}
