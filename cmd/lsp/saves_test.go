package lsp

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/cmd/lsp/typist"
	"maltwright/cmd/lsp/wire"
)

const came = "  turned at 2026-03-14 21:05\n"

// inRecord is typing in the record of a batch, with its house beside it.
func inRecord(t *testing.T) (c *typist.Typist, book string) {
	t.Helper()
	book = example(t, "batches/26-03.malt")
	c = typing(t, "26-03.malt", book, "pale.malt", example(t, "pale.malt"), "loft.malt", example(t, "loft.malt"))
	c.Open("26-03.malt")
	c.Found("26-03.malt")
	return c, book
}

// noted is the record with a line more at its end, as note writes it.
func noted(book, line string) string { return strings.TrimSuffix(book, "}\n") + line + "}\n" }

// warned waits for the finding that the file has changed on disk.
func warned(c *typist.Typist) wire.Diagnostic {
	c.T.Helper()
	return c.Until("26-03.malt", "a warning", func(list []wire.Diagnostic) bool {
		return len(list) > 0 && strings.Contains(list[0].Message, "on disk")
	})[0]
}

func unwarned(c *typist.Typist) {
	c.T.Helper()
	c.Until("26-03.malt", "no warning", func(list []wire.Diagnostic) bool {
		return len(list) == 0 || !strings.Contains(list[0].Message, "on disk")
	})
}

func TestOneIsWarnedBeforeASaveOverReadings(t *testing.T) {
	c, book := inRecord(t)
	c.TypeAt("26-03.malt", 0, 0, "# spring\n")
	c.Found("26-03.malt")
	c.Write("26-03.malt", noted(book, came))
	d := warned(c)
	assert.Equal(t, uint32(0), d.Range.Start.Line)
	assert.Equal(t, "the file has changed on disk since it was opened here; saving writes over that\ncame: turned at 2026-03-14 21:05\ndo: put in the line that came on disk, by the action here", d.Message)
	assert.Contains(t, string(c.Heard("window/showMessage", 0).Params), `"changed on disk: 1 line came; 26-03.malt"`)
	assert.Contains(t, string(d.Data), `"certain":true`)

	var actions []wire.CodeAction
	c.Ask("textDocument/codeAction", wire.CodeActionParams{TextDocument: c.Document("26-03.malt"), Range: d.Range, Context: wire.CodeActionContext{Diagnostics: []wire.Diagnostic{d}}}, &actions)
	require.NotEmpty(t, actions)
	assert.Equal(t, "put in the line that came on disk", actions[0].Title)
	require.NotNil(t, actions[0].Edit)
	require.Len(t, actions[0].Edit.DocumentChanges, 1, "of one version")
	of := actions[0].Edit.DocumentChanges[0]
	assert.Equal(t, c.URI("26-03.malt"), of.TextDocument.URI)
	assert.Equal(t, int32(2), *of.TextDocument.Version)
	assert.Equal(t, "  turned at 2026-03-14 21:05\n", of.Edits[0].NewText)

	var edits []wire.TextEdit
	c.Ask("textDocument/willSaveWaitUntil", wire.WillSaveTextDocumentParams{TextDocument: c.Document("26-03.malt"), Reason: 1}, &edits)
	c.Make("26-03.malt", edits)
	assert.Equal(t, noted("# spring\n"+book, came), c.Text("26-03.malt"))
	c.Save("26-03.malt")
	unwarned(c)
	c.Ask("textDocument/willSaveWaitUntil", wire.WillSaveTextDocumentParams{TextDocument: c.Document("26-03.malt"), Reason: 1}, &edits)
	assert.Empty(t, edits)
}

func TestWhatASaveHasWrittenOverIsKept(t *testing.T) {
	for _, tells := range []bool{true, false} { // of the save at once, or after it was seen on disk
		c, book := inRecord(t)
		c.TypeAt("26-03.malt", 0, 0, "# spring\n")
		c.Found("26-03.malt")
		c.Write("26-03.malt", noted(book, came))
		warned(c)
		c.Tell("textDocument/willSave", wire.WillSaveTextDocumentParams{TextDocument: c.Document("26-03.malt"), Reason: 1})
		if tells {
			c.Save("26-03.malt")
		} else {
			c.Write("26-03.malt", c.Text("26-03.malt"))
		}
		d := c.Until("26-03.malt", "what was written over", func(list []wire.Diagnostic) bool {
			return len(list) > 0 && strings.Contains(list[0].Message, "this was saved over")
		})[0]
		assert.Contains(t, d.Message, "came: turned at 2026-03-14 21:05")
		var edits []wire.TextEdit
		c.Ask("textDocument/willSaveWaitUntil", wire.WillSaveTextDocumentParams{TextDocument: c.Document("26-03.malt"), Reason: 1}, &edits)
		assert.Empty(t, edits, "it is put in when somebody says so")
		c.TypeAt("26-03.malt", 0, 0, "# more\n")
		warned(c)
		c.TypeAt("26-03.malt", len(c.Text("26-03.malt"))-2, 0, came)
		unwarned(c)
	}
}

func TestABufferThatIsAsItsFileWasIsNotWarnedOf(t *testing.T) {
	c, book := inRecord(t)
	c.Write("26-03.malt", noted(book, came))
	c.Change("26-03.malt", noted(book, came), wire.TextDocumentContentChangeEvent{Text: noted(book, came)}) // read anew
	for _, d := range c.Found("26-03.malt") {
		assert.NotContains(t, d.Message, "on disk")
	}
	c.TypeAt("26-03.malt", 0, 0, "# spring\n")
	for _, d := range c.Found("26-03.malt") {
		assert.NotContains(t, d.Message, "on disk")
	}
	c.Save("26-03.malt")
	c.TypeAt("26-03.malt", 0, 0, "# more\n")
	for _, d := range c.Found("26-03.malt") {
		assert.NotContains(t, d.Message, "on disk")
	}
}

func TestWhatBothHaveChangedIsLeftToThePerson(t *testing.T) {
	c, book := inRecord(t)
	line := book[strings.Index(book, "  weighed"):]
	line = line[:strings.Index(line, "\n")]
	c.Type("26-03.malt", line, "  weighed 2 kg")
	c.Found("26-03.malt")
	c.Write("26-03.malt", strings.Replace(book, line, "  weighed 1 kg", 1))
	d := warned(c)
	assert.Contains(t, d.Message, "do: compare the two before you save")
	assert.Empty(t, d.Data)
	var edits []wire.TextEdit
	c.Ask("textDocument/willSaveWaitUntil", wire.WillSaveTextDocumentParams{TextDocument: c.Document("26-03.malt"), Reason: 1}, &edits)
	assert.Empty(t, edits)
	c.Tell("textDocument/willSave", wire.WillSaveTextDocumentParams{TextDocument: c.Document("26-03.malt"), Reason: 1})
	require.Contains(t, string(c.Heard("window/showMessage", 1).Params), "changed on disk: ", "it is said again before the save")
}

func TestWhatCameBeforeTheBufferWasOpenedIsTold(t *testing.T) {
	book := example(t, "batches/26-03.malt")
	c := typing(t, "26-03.malt", noted(book, came), "pale.malt", example(t, "pale.malt"), "loft.malt", example(t, "loft.malt"))
	c.OpenWith("26-03.malt", book) // as the editor had read it, or kept it
	d := warned(c)
	assert.Contains(t, d.Message, "came: turned at 2026-03-14 21:05")
	assert.Contains(t, string(d.Data), `"certain":false`)
	c.TypeAt("26-03.malt", len(book)-2, 0, came)
	unwarned(c)
}
