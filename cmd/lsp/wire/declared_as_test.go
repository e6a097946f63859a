package wire

import (
	"encoding/json"
	"reflect"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/lang/source/declaration"
)

// structures are all that hold what goes over the wire.
var structures = []any{
	Position{}, Range{}, Location{}, LocationLink{}, TextDocumentIdentifier{}, VersionedTextDocumentIdentifier{}, OptionalVersionedTextDocumentIdentifier{},
	TextDocumentPositionParams{}, TextEdit{}, TextDocumentEdit{}, WorkspaceEdit{}, Command{}, MarkupContent{},
	TextDocumentItem{}, DidOpenTextDocumentParams{}, DidChangeTextDocumentParams{}, DidCloseTextDocumentParams{}, DidSaveTextDocumentParams{}, WillSaveTextDocumentParams{},
	WorkspaceFoldersChangeEvent{}, DidChangeWorkspaceFoldersParams{}, FileEvent{}, DidChangeWatchedFilesParams{}, FileSystemWatcher{},
	DidChangeWatchedFilesRegistrationOptions{}, Registration{}, RegistrationParams{},
	Diagnostic{}, PublishDiagnosticsParams{}, DocumentDiagnosticParams{}, FullDocumentDiagnosticReport{}, UnchangedDocumentDiagnosticReport{},
	InitializeParams{}, InitializeResult{}, LogMessageParams{}, ShowMessageParams{}, ShowDocumentParams{}, ApplyWorkspaceEditParams{}, ExecuteCommandParams{},
	DidChangeConfigurationParams{}, ConfigurationItem{}, ConfigurationParams{},
	DocumentSymbolParams{}, DocumentSymbol{}, SymbolInformation{}, WorkspaceSymbolParams{}, WorkspaceSymbol{}, DefinitionParams{}, ReferenceParams{}, DocumentHighlightParams{}, DocumentHighlight{},
	PrepareRenameParams{}, RenameParams{}, FoldingRangeParams{}, FoldingRange{}, SelectionRangeParams{}, SelectionRange{}, DocumentLinkParams{}, DocumentLink{},
	SemanticTokensParams{}, SemanticTokensRangeParams{}, SemanticTokens{}, DocumentFormattingParams{}, DocumentRangeFormattingParams{}, DocumentOnTypeFormattingParams{},
	CompletionParams{}, CompletionList{}, HoverParams{}, Hover{}, InlayHintParams{}, InlayHint{}, CodeLensParams{}, CodeLens{}, CodeActionParams{}, CodeAction{},
}

// unread are fields that the protocol wants and that are not read here.
var unread = map[string]bool{}

// comparison compares structures with what is published.
type comparison struct {
	t    *testing.T
	d    declared
	seen map[string]bool
}

func TestStructuresAreAsTheProtocolPublishesThem(t *testing.T) {
	c := comparison{t, published(t), map[string]bool{}}
	for _, s := range structures {
		is := reflect.TypeOf(s)
		require.NotEmpty(t, c.d[is.Name()], "%s is not declared", is.Name())
		c.structure(is, c.d[is.Name()])
	}
	for _, name := range declaration.Structs(t, "maltwright/cmd/lsp/wire") {
		switch name {
		case "Message", "Error", "CancelParams", "Fault", "Reader", "Writer", "PrepareRenamePlaceholder", "Due", "DueParams", "DrawOptions":
			continue // of JSON-RPC, of ours, or one of several answers without a name
		}
		assert.True(t, c.seen[name], "%s is not compared: list it", name)
	}
}

func (c comparison) structure(is reflect.Type, of string) {
	if c.seen[is.Name()] {
		return
	}
	c.seen[is.Name()] = true
	members := c.d.members(of)
	if !assert.NotEmpty(c.t, members, "%s: %s", is.Name(), of) {
		return
	}
	ours := map[string]bool{}
	for i := range is.NumField() {
		f := is.Field(i)
		name, options, _ := strings.Cut(f.Tag.Get("json"), ",")
		ours[name] = true
		m, there := members[name]
		where := is.Name() + "." + name
		if !assert.True(c.t, there, "%s is not in the protocol", where) {
			continue
		}
		if !m.optional {
			assert.Empty(c.t, options, "%s may not be missing", where)
		}
		assert.True(c.t, c.fits(f.Type, m), "%s is a %s here, and there %s", where, f.Type, m.of)
	}
	for name, m := range members {
		assert.True(c.t, m.optional || ours[name] || unread[is.Name()+"."+name], "%s.%s may not be missing", is.Name(), name)
	}
}

var raw = reflect.TypeFor[json.RawMessage]()

// fits tells whether a type of ours is one of those that are published.
func (c comparison) fits(is reflect.Type, m member) bool {
	arms := c.d.arms(m.of)
	if is.Kind() == reflect.Pointer {
		null := false
		for _, arm := range arms {
			null = null || arm == "null"
		}
		return (m.optional || null) && c.fits(is.Elem(), member{m.of, false})
	}
	for _, arm := range arms {
		if c.fitsArm(is, arm) {
			return true
		}
	}
	return false
}

var numbers = map[string]bool{"number": true, "integer": true, "uinteger": true, "decimal": true}

func (c comparison) fitsArm(is reflect.Type, arm string) bool {
	literal := arm != "" && (arm[0] == '\'' || arm[0] == '"')
	switch {
	case is == raw || is.Kind() == reflect.Interface:
		return true
	case is == reflect.TypeFor[ID]():
		return arm == "string" || numbers[arm]
	case is.Kind() == reflect.String:
		return arm == "string" || literal || strings.HasPrefix(arm, "typeof ")
	case is.Kind() == reflect.Bool:
		return arm == "boolean"
	case is.Kind() == reflect.Uint32 || is.Kind() == reflect.Int32:
		return numbers[arm] || arm != "" && arm[0] >= '0' && arm[0] <= '9'
	case is.Kind() == reflect.Slice:
		of, ok := strings.CutSuffix(arm, "[]")
		if within, generic := strings.CutPrefix(arm, "Array<"); generic {
			of, ok = strings.TrimSuffix(within, ">"), true
		}
		return ok && c.fits(is.Elem(), member{of, false})
	case is.Kind() == reflect.Map:
		if !strings.HasPrefix(arm, "{") {
			return false
		}
		_, of, ok := strings.Cut(arm, "]:")
		return ok && c.fits(is.Elem(), member{strings.Trim(of, "; \n}"), false})
	case is.Kind() == reflect.Struct && strings.HasPrefix(arm, "{"):
		if !c.covers(is, arm) {
			return false
		}
		c.structure(is, arm)
		return true
	case is.Kind() == reflect.Struct && plain(arm) == is.Name():
		c.structure(is, c.d[is.Name()])
		return true
	case is.Kind() == reflect.Struct && c.d[is.Name()] == "" && c.d[plain(arm)] != "":
		return c.fits(is, member{c.d[plain(arm)], false})
	}
	return false
}

// covers tells whether a type without a name has every field of a structure of ours.
func (c comparison) covers(is reflect.Type, of string) bool {
	members := c.d.members(of)
	for i := range is.NumField() {
		name, _, _ := strings.Cut(is.Field(i).Tag.Get("json"), ",")
		if _, ok := members[name]; !ok {
			return false
		}
	}
	return len(members) > 0
}
