package typist

import (
	"os"
	"slices"
	"strings"
	"time"

	"github.com/stretchr/testify/require"

	"maltwright/cmd/lsp/desk"
	"maltwright/cmd/lsp/wire"
	"maltwright/lang/source"
)

// Open opens a file of the folder with the text that it has on disk.
func (c *Typist) Open(name string) {
	c.T.Helper()
	file, err := os.ReadFile(c.Path(name))
	require.NoError(c.T, err)
	c.OpenWith(name, string(file))
}

// OpenWith opens a document with a text.
func (c *Typist) OpenWith(name, content string) {
	c.T.Helper()
	c.texts[name] = &text{version: 1, text: content, changed: time.Now()}
	c.Tell("textDocument/didOpen", wire.DidOpenTextDocumentParams{TextDocument: wire.TextDocumentItem{URI: c.URI(name), LanguageID: "maltwright", Version: 1, Text: content}})
}

// Close closes it.
func (c *Typist) Close(name string) {
	c.T.Helper()
	delete(c.texts, name)
	c.Tell("textDocument/didClose", wire.DidCloseTextDocumentParams{TextDocument: c.Document(name)})
}

// Save writes what is in the buffer to disk, and says so.
func (c *Typist) Save(name string) {
	c.T.Helper()
	c.Write(name, c.texts[name].text)
	c.Tell("textDocument/didSave", wire.DidSaveTextDocumentParams{TextDocument: c.Document(name)})
}

// Text is what is in the buffer.
func (c *Typist) Text(name string) string { return c.texts[name].text }

// Type replaces the first such words by others: one change, by its range.
func (c *Typist) Type(name, old, new string) {
	c.T.Helper()
	c.TypeAt(name, c.find(name, old), len(old), new)
}

// TypeAt replaces so many bytes at an offset.
func (c *Typist) TypeAt(name string, at, bytes int, new string) {
	c.T.Helper()
	is := c.texts[name]
	f := source.New(name, []byte(is.text))
	r := desk.RangeOf(f, source.Span{Start: at, End: at + bytes}, c.enc)
	c.Change(name, is.text[:at]+new+is.text[at+bytes:], wire.TextDocumentContentChangeEvent{Range: &r, Text: new})
}

// Change sends changes after which the buffer holds a text.
func (c *Typist) Change(name, after string, changes ...wire.TextDocumentContentChangeEvent) {
	c.T.Helper()
	is := c.texts[name]
	is.version++
	is.text, is.changed = after, time.Now()
	c.Tell("textDocument/didChange", wire.DidChangeTextDocumentParams{TextDocument: wire.VersionedTextDocumentIdentifier{URI: c.URI(name), Version: is.version}, ContentChanges: changes})
}

func (c *Typist) find(name, words string) int {
	c.T.Helper()
	at := strings.Index(c.texts[name].text, words)
	require.GreaterOrEqual(c.T, at, 0, "%q does not stand in %s", words, name)
	return at
}

// At is the start of the first such words of a buffer, as parameters.
func (c *Typist) At(name, words string) wire.TextDocumentPositionParams {
	c.T.Helper()
	return c.AtOffset(name, c.find(name, words))
}

// Behind is their end.
func (c *Typist) Behind(name, words string) wire.TextDocumentPositionParams {
	c.T.Helper()
	return c.AtOffset(name, c.find(name, words)+len(words))
}

// AtOffset is a place in bytes, as parameters.
func (c *Typist) AtOffset(name string, offset int) wire.TextDocumentPositionParams {
	return wire.TextDocumentPositionParams{TextDocument: c.Document(name), Position: desk.Position(source.New(name, []byte(c.texts[name].text)), offset, c.enc)}
}

// Words is the text of a range of a buffer.
func (c *Typist) Words(name string, r wire.Range) string {
	text := c.texts[name].text
	f := source.New(name, []byte(text))
	return text[desk.Offset(f, r.Start, c.enc):desk.Offset(f, r.End, c.enc)]
}

// Found waits for the findings of a document as it is now: of its version, those of the words at least.
func (c *Typist) Found(name string) []wire.Diagnostic {
	c.T.Helper()
	is, uri := c.texts[name], c.URI(name)
	var got told
	c.until("findings of "+name, func() bool {
		got = c.told[uri]
		return got.Version != nil && *got.Version == is.version
	})
	c.Took = append(c.Took, got.when.Sub(is.changed))
	return got.Diagnostics
}

// Rules are the rules of which findings are told, of a document as it is now.
func (c *Typist) Rules(name string) []string {
	c.T.Helper()
	rules := []string{}
	for _, d := range c.Found(name) {
		rules = append(rules, d.Code)
	}
	return rules
}

// Until waits until the findings of a document are as they should be, as they are once a forecast has been made.
func (c *Typist) Until(name, what string, is func([]wire.Diagnostic) bool) []wire.Diagnostic {
	c.T.Helper()
	uri := c.URI(name)
	var got told
	c.until(name+": "+what, func() bool {
		got = c.told[uri]
		return got.times > 0 && is(got.Diagnostics)
	})
	return got.Diagnostics
}

// Has waits until a finding of a rule is told of a document, and gives it.
func (c *Typist) Has(name, rule string) wire.Diagnostic {
	c.T.Helper()
	var has wire.Diagnostic
	c.Until(name, "a finding of "+rule, func(list []wire.Diagnostic) bool {
		for _, d := range list {
			if d.Code == rule {
				has = d
				return true
			}
		}
		return false
	})
	return has
}

// Count is how often findings of a document were told. The caller has the lock, as in Within.
func (c *Typist) Count(name string) int { return c.told[c.URI(name)].times }

// Pushed are the addresses of the documents of which findings were told.
func (c *Typist) Pushed() []string {
	c.mu.Lock()
	defer c.mu.Unlock()
	list := []string{}
	for uri := range c.told {
		list = append(list, uri)
	}
	return list
}

// Make makes edits in a buffer, as an editor makes those that it was given: all of one text.
func (c *Typist) Make(name string, edits []wire.TextEdit) {
	c.T.Helper()
	is := c.texts[name]
	f := source.New(name, []byte(is.text))
	after := is.text
	for _, e := range slices.Backward(edits) {
		after = after[:desk.Offset(f, e.Range.Start, c.enc)] + e.NewText + after[desk.Offset(f, e.Range.End, c.enc):]
	}
	c.Change(name, after, wire.TextDocumentContentChangeEvent{Text: after})
}

// Shown is what was told last of a document, and whether it is of its version as it is now. The caller has the lock,
// as in Within.
func (c *Typist) Shown(name string) (list []wire.Diagnostic, now bool) {
	got, is := c.told[c.URI(name)], c.texts[name]
	return got.Diagnostics, is != nil && got.Version != nil && *got.Version == is.version
}

// Version is that of a buffer as it is now.
func (c *Typist) Version(name string) int32 {
	if is := c.texts[name]; is != nil {
		return is.version
	}
	return 0
}
