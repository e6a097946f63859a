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
		"initialize":              {run: on(initialize), inTurn: true},
		"shutdown":                {run: on(shutdown), inTurn: true},
		"textDocument/diagnostic": {run: on(diagnostic)}, // offered by initialize, where it is not pushed

		// what stands in files: symbols, names, folds, links, kinds of words, layout

		// what may stand, and what a word means

		// what a forecast says in the margin, what can be done, and requests of our own
		"textDocument/inlayHint":  {run: on(inlayHint), offers: func(c *wire.ServerCapabilities) { c.InlayHintProvider = &wire.InlayHintOptions{} }},
		"textDocument/codeLens":   {run: on(codeLens), offers: func(c *wire.ServerCapabilities) { c.CodeLensProvider = &wire.CodeLensOptions{} }},
		"textDocument/codeAction": {run: on(codeAction), offers: func(c *wire.ServerCapabilities) { c.CodeActionProvider = codeActionOptions }},
		"codeAction/resolve":      {run: on(resolveAction)},
		"workspace/executeCommand": {run: on(executeCommand), offers: func(c *wire.ServerCapabilities) {
			c.ExecuteCommandProvider = &wire.ExecuteCommandOptions{Commands: commandNames()}
		}},
		"maltwright/due": {run: on(due)},
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
	"workspace/didChangeWorkspaceFolders": when(didChangeFolders),
	"workspace/didChangeWatchedFiles":     when(didChangeWatched),
	"workspace/didChangeConfiguration":    when(didChangeConfiguration),
}
