package main

import (
	"bytes"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
)

// Somebody who types the command is told what it is for; it serves all the same.
func TestTheServerOfAnEditorTellsWhoTypesIt(t *testing.T) {
	var out, err bytes.Buffer
	w := World{In: strings.NewReader(""), Out: &out, Err: &err, Folder: t.TempDir(), InTerm: true, Env: func(string) string { return "" }}
	assert.Equal(t, 1, Main(w, []string{"lsp"}))
	assert.Equal(t, "maltwright: this serves an editor, which starts it by itself; to look at a file type: maltwright check pale.malt; to leave, press Ctrl-C\n", err.String())
	assert.Empty(t, out.String())
}
