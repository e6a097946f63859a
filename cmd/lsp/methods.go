package lsp

import "maltwright/cmd/lsp/wire"

// method is one request that is answered, and what the server says of itself for it.
type method struct {
	run    handler
	offers func(*wire.ServerCapabilities) // nil where it is no capability
	inTurn bool                           // answered before the next message is taken
}

// methods is the table of all requests that are answered. A feature is a line here and a file beside.
func methods() map[string]method {
	return map[string]method{
		"initialize":                     {run: on(initialize), inTurn: true},
		"shutdown":                       {run: on(shutdown), inTurn: true},
		"textDocument/diagnostic":        {run: on(diagnostic)}, // offered by initialize, where it is not pushed
		"textDocument/willSaveWaitUntil": {run: on(willSaveWaitUntil), offers: func(c *wire.ServerCapabilities) { c.TextDocumentSync.WillSaveWaitUntil = true }},

		// what stands in files: symbols, names, folds, links, kinds of words, layout
		"textDocument/documentSymbol":       {run: on(documentSymbol), offers: func(c *wire.ServerCapabilities) { c.DocumentSymbolProvider = true }},
		"workspace/symbol":                  {run: on(workspaceSymbol), offers: func(c *wire.ServerCapabilities) { c.WorkspaceSymbolProvider = true }},
		"textDocument/definition":           {run: on(definition), offers: func(c *wire.ServerCapabilities) { c.DefinitionProvider = true }},
		"textDocument/references":           {run: on(references), offers: func(c *wire.ServerCapabilities) { c.ReferencesProvider = true }},
		"textDocument/documentHighlight":    {run: on(documentHighlight), offers: func(c *wire.ServerCapabilities) { c.DocumentHighlightProvider = true }},
		"textDocument/prepareRename":        {run: on(prepareRename)}, // offered with rename
		"textDocument/rename":               {run: on(rename), offers: func(c *wire.ServerCapabilities) { c.RenameProvider = &wire.RenameOptions{PrepareProvider: true} }},
		"textDocument/foldingRange":         {run: on(foldingRange), offers: func(c *wire.ServerCapabilities) { c.FoldingRangeProvider = true }},
		"textDocument/selectionRange":       {run: on(selectionRange), offers: func(c *wire.ServerCapabilities) { c.SelectionRangeProvider = true }},
		"textDocument/documentLink":         {run: on(documentLink), offers: func(c *wire.ServerCapabilities) { c.DocumentLinkProvider = &wire.DocumentLinkOptions{} }},
		"textDocument/semanticTokens/full":  {run: on(semanticTokens), offers: offerTokens},
		"textDocument/semanticTokens/range": {run: on(semanticTokensRange)}, // offered with those of the whole
		"textDocument/formatting":           {run: on(formatting), offers: func(c *wire.ServerCapabilities) { c.DocumentFormattingProvider = true }},
		"textDocument/rangeFormatting":      {run: on(rangeFormatting), offers: func(c *wire.ServerCapabilities) { c.RangeFormattingProvider = true }},
		"textDocument/onTypeFormatting":     {run: on(onTypeFormatting), offers: offerTyping},

		// what may stand, and what a word means
		"textDocument/completion": {run: on(completion), offers: func(c *wire.ServerCapabilities) {
			c.CompletionProvider = &wire.CompletionOptions{TriggerCharacters: []string{" ", `"`}}
		}},
		"textDocument/hover": {run: on(hover), offers: func(c *wire.ServerCapabilities) { c.HoverProvider = true }},

		// what a forecast says in the margin, what can be done, and requests of our own
		"textDocument/inlayHint":   {run: on(inlayHint), offers: func(c *wire.ServerCapabilities) { c.InlayHintProvider = &wire.InlayHintOptions{} }},
		"textDocument/codeLens":    {run: on(codeLens), offers: func(c *wire.ServerCapabilities) { c.CodeLensProvider = &wire.CodeLensOptions{} }},
		"textDocument/codeAction":  {run: on(codeAction), offers: func(c *wire.ServerCapabilities) { c.CodeActionProvider = codeActionOptions }},
		"codeAction/resolve":       {run: on(resolveAction)},
		"workspace/executeCommand": {run: on(executeCommand), offers: offersCommands},
		"maltwright/due":           {run: on(due)},
	}
}

// notifications is the table of all notifications that are heard; they are taken in their turn.
var notifications = map[string]notice{
	"initialized":                         when(initialized),
	"exit":                                when(exit),
	"$/cancelRequest":                     when(cancelRequest),
	"textDocument/didOpen":                when(didOpen),
	"textDocument/didChange":              when(didChange),
	"textDocument/didClose":               when(didClose),
	"textDocument/didSave":                when(didSave),
	"textDocument/willSave":               when(willSave),
	"workspace/didChangeWorkspaceFolders": when(didChangeFolders),
	"workspace/didChangeWatchedFiles":     when(didChangeWatched),
	"workspace/didChangeConfiguration":    when(didChangeConfiguration),
}
