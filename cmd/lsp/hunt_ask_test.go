package lsp

import (
	"encoding/json"
	"maps"
	"slices"
	"strings"

	"github.com/stretchr/testify/require"

	"maltwright/cmd/lsp/desk"
	"maltwright/cmd/lsp/wire"
	"maltwright/lang/source"
)

// requests are the requests that a hunt asks: all of the table but those that begin and end the talk.
var requests = func() []string {
	list := slices.Sorted(maps.Keys(methods()))
	return slices.DeleteFunc(list, func(m string) bool { return m == "initialize" || m == "shutdown" })
}()

// ask asks something of a place, and holds that an answer comes whose ranges lie within the texts.
func (h *hunt) ask() {
	h.T.Helper()
	name := h.anyOpen()
	method := requests[h.rnd.IntN(len(requests))]
	h.note(method + " of " + name)
	m := h.Wait(h.Send(method, h.paramsOf(name, method)))
	if m.Error != nil {
		require.NotEqual(h.T, wire.InternalError, m.Error.Code, "%s: %s\n%s", method, m.Error.Message, h.told())
		require.NotEmpty(h.T, m.Error.Message, "%s\n%s", method, h.told())
		return
	}
	var answer any
	require.NoError(h.T, json.Unmarshal(m.Result, &answer), "%s: %s", method, m.Result)
	h.within(name, answer)
	h.make(name, method, m.Result)
}

// paramsOf are parameters that serve for every method, at a place of a file or behind it.
func (h *hunt) paramsOf(name, method string) map[string]any {
	at, end := h.position(name), h.position(name)
	if end.Line < at.Line || end.Line == at.Line && end.Character < at.Character {
		at, end = end, at
	}
	p := map[string]any{
		"textDocument": h.Document(name), "position": at, "positions": []wire.Position{at, end}, "range": wire.Range{Start: at, End: end},
		"newName": []string{"vat", "Loft pale", "a\"b", "", "🌾"}[h.rnd.IntN(5)], "query": []string{"", "lo", "26", "🌾"}[h.rnd.IntN(4)], "ch": "\n",
		"options": map[string]any{"tabSize": 2, "insertSpaces": true}, "reason": 1,
	}
	switch method {
	case "textDocument/references":
		p["context"] = map[string]any{"includeDeclaration": h.rnd.IntN(2) == 0}
	case "textDocument/codeAction":
		p["context"] = map[string]any{"diagnostics": []any{}}
	case "textDocument/completion":
		p["context"] = map[string]any{"triggerKind": 1 + h.rnd.IntN(2)}
	case "codeAction/resolve":
		return map[string]any{"title": "make all certain repairs", "kind": fixAll, "data": h.Document(name)}
	case "workspace/executeCommand":
		commands := h.Server.Capabilities.ExecuteCommandProvider.Commands
		return map[string]any{"command": commands[h.rnd.IntN(len(commands))], "arguments": []any{h.URI(name), at}}
	}
	return p
}

// position is one in a text, mostly: some lie behind a line or behind all.
func (h *hunt) position(name string) wire.Position {
	text := h.open[name]
	p := placeIn(text, edge(text, h.rnd.IntN(len(text)+1)), h.enc)
	switch h.rnd.IntN(20) {
	case 0:
		p.Character += uint32(h.rnd.IntN(200))
	case 1:
		p.Line += uint32(h.rnd.IntN(2000))
	}
	return p
}

// within looks for ranges in an answer: each lies in the text of the address that stands beside or around it.
func (h *hunt) within(name string, answer any) {
	h.T.Helper()
	switch is := answer.(type) {
	case []any:
		for _, one := range is {
			h.within(name, one)
		}
	case map[string]any:
		for _, key := range []string{"uri", "targetUri"} {
			if uri, ok := is[key].(string); ok && strings.HasPrefix(uri, h.URI("")) {
				name = h.nameOf(uri)
			}
		}
		if of, ok := is["textDocument"].(map[string]any); ok {
			name = h.nameOf(of["uri"].(string))
		}
		if r, ok := rangeIn(is); ok {
			h.inside(name, r)
			return
		}
		for key, one := range is {
			switch {
			case key == "originSelectionRange": // of the document that was asked
			case strings.HasPrefix(key, "file://"):
				h.within(h.nameOf(key), one)
			default:
				h.within(name, one)
			}
		}
	}
}

func rangeIn(is map[string]any) (r wire.Range, ok bool) {
	if len(is) != 2 || is["start"] == nil || is["end"] == nil {
		return r, false
	}
	raw, _ := json.Marshal(is)
	return r, json.Unmarshal(raw, &r) == nil
}

// make makes the edits of an answer where they are of the kind that is made: now and then in the buffers too.
func (h *hunt) make(name, method string, raw json.RawMessage) {
	h.T.Helper()
	switch method {
	case "textDocument/codeAction":
		var list []wire.CodeAction
		require.NoError(h.T, json.Unmarshal(raw, &list))
		for _, a := range list {
			require.NotEmpty(h.T, a.Title)
			if a.Edit != nil {
				h.edits(*a.Edit, false)
			}
		}
		if len(list) > 0 && list[0].Edit != nil && h.rnd.IntN(3) == 0 {
			h.edits(*list[0].Edit, true)
		}
	case "textDocument/rename":
		var e wire.WorkspaceEdit
		require.NoError(h.T, json.Unmarshal(raw, &e))
		h.edits(e, h.rnd.IntN(3) == 0)
	case "textDocument/formatting", "textDocument/rangeFormatting", "textDocument/onTypeFormatting", "textDocument/willSaveWaitUntil":
		var list []wire.TextEdit
		require.NoError(h.T, json.Unmarshal(raw, &list))
		h.edit(name, list, h.rnd.IntN(3) == 0)
	case "textDocument/completion":
		var c wire.CompletionList
		require.NoError(h.T, json.Unmarshal(raw, &c))
		for _, it := range c.Items {
			h.edit(name, []wire.TextEdit{*it.TextEdit}, false)
		}
	}
}

func (h *hunt) edits(e wire.WorkspaceEdit, do bool) {
	h.T.Helper()
	for uri, list := range e.Changes {
		h.edit(h.nameOf(uri), list, do)
	}
	for _, d := range e.DocumentChanges {
		name := h.nameOf(d.TextDocument.URI)
		if v := d.TextDocument.Version; v != nil {
			require.Equal(h.T, h.Version(name), *v, "an edit of another version of %s\n%s", name, h.told())
		}
		h.edit(name, d.Edits, do)
	}
}

// edit holds that edits of a text can be made together, and makes them where the file is open.
func (h *hunt) edit(name string, list []wire.TextEdit, do bool) {
	h.T.Helper()
	text, is := h.open[name]
	if !is {
		text = h.disk[name]
	}
	type edit struct {
		from, to int
		text     string
	}
	f := source.New(name, []byte(text))
	made := make([]edit, len(list))
	for i, e := range list {
		h.inside(name, e.Range)
		made[i] = edit{desk.Offset(f, e.Range.Start, h.enc), desk.Offset(f, e.Range.End, h.enc), e.NewText}
	}
	slices.SortStableFunc(made, func(a, b edit) int { return a.from - b.from })
	for i := 1; i < len(made); i++ {
		require.LessOrEqual(h.T, made[i-1].to, made[i].from, "edits of %s overlap: %q and %q\n%s", name, made[i-1].text, made[i].text, h.told())
	}
	if !do || !is || len(list) == 0 {
		return
	}
	for _, e := range slices.Backward(made) {
		text = text[:e.from] + e.text + text[e.to:]
	}
	h.open[name] = text
	h.note("make the edits in " + name)
	h.Change(name, text, wire.TextDocumentContentChangeEvent{Text: text})
}
