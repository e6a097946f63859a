package lsp

import (
	"bytes"
	"encoding/json"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"github.com/rogpeppe/go-internal/txtar"
	"github.com/stretchr/testify/require"

	"maltwright/cmd/lsp/typist"
	"maltwright/cmd/lsp/wire"
	"maltwright/lang/source/golden"
)

// Each archive of testdata/talks is a talk with the server: files of a folder, and in the file "talk" what is said. A
// line that begins with -> is what the editor does; the lines behind it that begin with <- are the answer, an
// element of a list a line:
//
//	-> open pale.malt
//	-> type pale.malt "soak 7 h" "soak 9 h"
//	-> textDocument/rename pale.malt "blue tub" {"newName": "vat"}
//	<- {"documentChanges": ...}
//
// Behind the name of a file stand the first of such words, at whose start the position is, and parameters besides.
// MALTWRIGHT_UPDATE=1 writes the answers anew.
func TestTalks(t *testing.T) {
	paths, err := filepath.Glob("testdata/talks/*.txtar")
	require.NoError(t, err)
	require.NotEmpty(t, paths)
	for _, p := range paths {
		t.Run(strings.TrimSuffix(filepath.Base(p), ".txtar"), func(t *testing.T) {
			archive, err := txtar.ParseFile(p)
			require.NoError(t, err)
			var files []string
			at := -1
			for i, f := range archive.Files {
				if f.Name == "talk" {
					at = i
				} else {
					files = append(files, f.Name, string(f.Data))
				}
			}
			require.GreaterOrEqual(t, at, 0, "no talk")
			archive.Files[at].Data = []byte(talk(typing(t, files...), string(archive.Files[at].Data)))
			golden.File(t, p, string(txtar.Format(archive)))
		})
	}
}

// talk says what the editor says, and gives it with the answers.
func talk(c *typist.Typist, script string) string {
	var out strings.Builder
	for line := range strings.Lines(script) {
		if strings.HasPrefix(line, "<-") {
			continue
		}
		out.WriteString(line)
		if said, ok := strings.CutPrefix(line, "-> "); ok {
			for _, answer := range say(c, strings.TrimSpace(said)) {
				out.WriteString("<- " + strings.ReplaceAll(answer, c.URI("")+"/", "") + "\n")
			}
		}
	}
	return out.String()
}

// say does one line of a talk.
func say(c *typist.Typist, said string) (answers []string) {
	method, rest, _ := strings.Cut(said, " ")
	file, rest, _ := strings.Cut(rest, " ")
	switch words, rest := quoted(c, rest); method {
	case "open":
		c.Open(file)
		return nil
	case "type":
		other, _ := quoted(c, rest)
		c.Type(file, words, other)
		return nil
	case "workspace/symbol":
		return answersTo(c, method, wire.WorkspaceSymbolParams{Query: file}, "")
	default:
		var params any = map[string]any{"textDocument": c.Document(file)}
		if words != "" {
			params = c.At(file, words)
		}
		return answersTo(c, method, params, rest)
	}
}

// quoted takes a text in quotes from the front, "" where none stands there.
func quoted(c *typist.Typist, text string) (words, rest string) {
	text = strings.TrimSpace(text)
	if q, err := strconv.QuotedPrefix(text); err == nil {
		words, err = strconv.Unquote(q)
		require.NoError(c.T, err)
		return words, strings.TrimSpace(text[len(q):])
	}
	return "", text
}

// answersTo asks with more parameters, and gives the answer line by line.
func answersTo(c *typist.Typist, method string, params any, more string) []string {
	raw, err := json.Marshal(params)
	require.NoError(c.T, err)
	all := map[string]json.RawMessage{}
	require.NoError(c.T, json.Unmarshal(raw, &all))
	if more != "" {
		require.NoError(c.T, json.Unmarshal([]byte(more), &all), more)
	}
	m := c.Wait(c.Send(method, all))
	if m.Error != nil {
		return []string{"error: " + m.Error.Message}
	}
	var list []json.RawMessage
	if bytes.HasPrefix(m.Result, []byte("[")) {
		require.NoError(c.T, json.Unmarshal(m.Result, &list))
		lines := []string{}
		for _, one := range list {
			lines = append(lines, string(one))
		}
		if len(lines) == 0 {
			return []string{"nothing"}
		}
		return lines
	}
	return []string{string(m.Result)}
}
