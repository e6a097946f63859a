package lsp

import (
	"fmt"
	"maps"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/check"
	"maltwright/cmd/lsp/desk"
	"maltwright/cmd/lsp/typist"
	"maltwright/cmd/lsp/wire"
	"maltwright/lang/outline"
	"maltwright/lang/read"
	"maltwright/lang/source"
	"maltwright/lang/source/golden"
	"maltwright/lang/source/spoil"
)

// files reads the process files of a folder of the examples: names and texts in turn.
func files(t testing.TB, folder string) (list []string) {
	t.Helper()
	paths, err := filepath.Glob(filepath.Join("../../examples", folder, "*.malt"))
	require.NoError(t, err)
	for _, p := range paths {
		list = append(list, filepath.Base(p), example(t, filepath.Join(folder, filepath.Base(p))))
	}
	return list
}

// renamed gives what stands at words of a file another name, on disk, and the files that were changed.
func renamed(c *typist.Typist, name string, at wire.TextDocumentPositionParams, to string) []string {
	c.T.Helper()
	var e wire.WorkspaceEdit
	c.Ask("textDocument/rename", wire.RenameParams{TextDocument: at.TextDocument, Position: at.Position, NewName: to}, &e)
	var changed []string
	for _, d := range e.DocumentChanges {
		path := desk.Path(d.TextDocument.URI)
		text, err := os.ReadFile(path)
		require.NoError(c.T, err)
		f := source.New(path, text)
		for _, edit := range slices.Backward(d.Edits) {
			from, end := desk.Offset(f, edit.Range.Start, source.UTF16), desk.Offset(f, edit.Range.End, source.UTF16)
			text = slices.Concat(text[:from], []byte(edit.NewText), text[end:])
		}
		require.NoError(c.T, os.WriteFile(path, text, 0o644))
		changed = append(changed, filepath.Base(path))
	}
	return changed
}

// checkedAll is what check finds in the files of a folder: rules, lines and how bad it is, by file.
func checkedAll(t testing.TB, dir string) map[string][]string {
	t.Helper()
	root, err := read.OpenRoot(dir)
	require.NoError(t, err)
	defer root.Close()
	paths, _ := filepath.Glob(filepath.Join(dir, "*.malt"))
	all := map[string][]string{}
	for _, p := range paths {
		text, err := os.ReadFile(p)
		require.NoError(t, err)
		for _, f := range check.File(p, text, ".", root, check.Options{}).Findings {
			line := 0
			if f.Place.Known() {
				line = f.Place.File.Position(f.Place.Start, source.Bytes).Line
			}
			all[filepath.Base(p)] = append(all[filepath.Base(p)], fmt.Sprintf("%d %s %s", line, f.Severity, f.Rule))
		}
	}
	return all
}

// After a rename everything that is found is found as before, by forecasts too; and after another one back all
// files are as they were.
func TestARenameChangesNothingThatIsFound(t *testing.T) {
	for _, folder := range []string{"batches", "home", "mill"} {
		list := files(t, folder)
		c := typing(t, list...)
		before, texts, n := checkedAll(t, c.Folder), textsOf(t, c.Folder), 0
		for i := 0; i < len(list); i += 2 {
			tree := (&desk.Doc{File: source.New(list[i], []byte(list[i+1]))}).Tree()
			for k, name := range outline.Names(tree) {
				if n++; n%17 != 1 && !golden.Long() {
					continue
				}
				to := fmt.Sprintf("№ %d °🌾", n)
				changed := renamed(c, list[i], position(c, list[i], name.Place.Start), to)
				require.NotEmpty(t, changed)
				assert.Equal(t, before, checkedAll(t, c.Folder), "%s, %s, %q", folder, list[i], name.Text)
				text, err := os.ReadFile(c.Path(list[i]))
				require.NoError(t, err)
				after := outline.Names((&desk.Doc{File: source.New(list[i], text)}).Tree())[k]
				assert.Equal(t, to, after.Text)
				renamed(c, list[i], position(c, list[i], after.Place.Start), name.Text)
				require.Equal(t, texts, textsOf(t, c.Folder), "%s, %s, %q", folder, list[i], name.Text)
			}
		}
		assert.Greater(t, n, 20, folder)
	}
}

func textsOf(t testing.TB, dir string) map[string]string {
	t.Helper()
	texts := map[string]string{}
	paths, _ := filepath.Glob(filepath.Join(dir, "*.malt"))
	for _, p := range paths {
		text, err := os.ReadFile(p)
		require.NoError(t, err)
		texts[filepath.Base(p)] = string(text)
	}
	return texts
}

// position is a place of a file on disk.
func position(c *typist.Typist, name string, offset int) wire.TextDocumentPositionParams {
	text, err := os.ReadFile(c.Path(name))
	require.NoError(c.T, err)
	return wire.TextDocumentPositionParams{TextDocument: c.Document(name), Position: desk.Position(source.New(name, text), offset, source.UTF16)}
}

// A record whose text git has keeps its signs, and one whose text it has not keeps its process.
func TestAPinThatGitHoldsStaysAsItIs(t *testing.T) {
	if _, err := exec.LookPath("git"); err != nil {
		t.Skip("git is not installed")
	}
	t.Setenv("GIT_CONFIG_NOSYSTEM", "1")
	t.Setenv("GIT_CONFIG_GLOBAL", os.DevNull)
	c := typing(t, files(t, "home")...)
	git := func(args ...string) string {
		cmd := exec.Command("git", append([]string{"-c", "user.name=Maltster", "-c", "user.email=maltster@example.org"}, args...)...)
		cmd.Dir = c.Folder
		out, err := cmd.CombinedOutput()
		require.NoError(t, err, "%s", out)
		return strings.TrimSpace(string(out))
	}
	git("init", "-q")
	git("add", "-A")
	git("commit", "-q", "-m", "x")
	const signs = `pinned "0c917a33e529"`
	record := example(t, "home/26-01.malt")
	require.Contains(t, record, signs)

	c.Write("26-01.malt", strings.Replace(record, signs, signs+` from "`+git("rev-parse", "HEAD")+`"`, 1))
	renamed(c, "porch.malt", position(c, "porch.malt", strings.Index(example(t, "home/porch.malt"), `"Porch pale"`)), "Porch")
	text, _ := os.ReadFile(c.Path("26-01.malt"))
	assert.Contains(t, string(text), signs)
	assert.Contains(t, string(text), `of "Porch" {`)

	git("checkout", "-q", ".")
	c.Write("26-01.malt", strings.Replace(record, signs, signs+` from "abcdef0"`, 1))
	renamed(c, "porch.malt", position(c, "porch.malt", strings.Index(example(t, "home/porch.malt"), `"Porch pale"`)), "Porch")
	text, _ = os.ReadFile(c.Path("26-01.malt"))
	assert.NotContains(t, string(text), signs)
	assert.Contains(t, string(text), ` from "abcdef0"`)
	assert.Empty(t, checkedAll(t, c.Folder)["26-01.malt"])
}

// An editor that takes no versions is given edits by address, and one that takes no links plain places.
func TestAPlainEditorIsAnsweredPlainly(t *testing.T) {
	c := typingAs(t, func(p *wire.InitializeParams) { p.Capabilities = wire.ClientCapabilities{} }, "pale.malt", example(t, "pale.malt"), "loft.malt", example(t, "loft.malt"))
	c.Open("pale.malt")
	at := c.At("pale.malt", "blue tub")
	var e wire.WorkspaceEdit
	c.Ask("textDocument/rename", wire.RenameParams{TextDocument: at.TextDocument, Position: at.Position, NewName: "vat"}, &e)
	assert.Empty(t, e.DocumentChanges)
	assert.ElementsMatch(t, []string{c.URI("pale.malt"), c.URI("loft.malt")}, slices.Collect(maps.Keys(e.Changes)))
	var places []wire.Location
	c.Ask("textDocument/definition", at, &places)
	require.Len(t, places, 1)
	assert.Equal(t, c.URI("loft.malt"), places[0].URI)
	var symbols []wire.SymbolInformation
	c.Ask("textDocument/documentSymbol", wire.DocumentSymbolParams{TextDocument: at.TextDocument}, &symbols)
	assert.Equal(t, "Loft pale", symbols[0].Name)
	assert.Equal(t, "Loft pale", symbols[1].ContainerName)
}

// A buffer that never was a file has what it uses in the first folder.
func TestABufferWithoutAFileHasNamesToo(t *testing.T) {
	c := typing(t, "loft.malt", example(t, "loft.malt"))
	c.OpenWith("untitled:Untitled-1", example(t, "pale.malt"))
	at := c.At("untitled:Untitled-1", "blue tub")
	var links []wire.LocationLink
	c.Ask("textDocument/definition", at, &links)
	require.Len(t, links, 1)
	assert.Equal(t, c.URI("loft.malt"), links[0].TargetURI)
	var e wire.WorkspaceEdit
	c.Ask("textDocument/rename", wire.RenameParams{TextDocument: at.TextDocument, Position: at.Position, NewName: "vat"}, &e)
	require.Len(t, e.DocumentChanges, 2)
	uris := []string{e.DocumentChanges[0].TextDocument.URI, e.DocumentChanges[1].TextDocument.URI}
	assert.ElementsMatch(t, []string{c.URI("loft.malt"), "untitled:Untitled-1"}, uris)
}

// Columns are counted as was agreed, in words with signs that take two bytes or two units, of whole texts and spoilt
// ones; and nothing breaks.
func TestWordsHaveTheirPlacesInEachEncoding(t *testing.T) {
	for name, enc := range map[string]source.Encoding{"utf-8": source.Bytes, "utf-16": source.UTF16, "utf-32": source.Characters} {
		c := typingAs(t, func(p *wire.InitializeParams) {
			plainly(p)
			p.Capabilities.General.PositionEncodings = []string{name}
		})
		pale := example(t, "pale.malt")
		extra := append(spoil.Words(pale), "°", "🌾", "\"🌾 °\"", "# 🌾 °", "{", "}", "\r\n")
		for seed := range spoil.Seeds(12, 1000) {
			text := strings.ToValidUTF8(spoil.Text(spoil.Random(seed), strings.ReplaceAll(pale, "°C", "°C # 🌾°"), extra), "?")
			file := fmt.Sprintf("%d.malt", seed)
			c.OpenWith(file, text)
			var tokens wire.SemanticTokens
			c.Ask("textDocument/semanticTokens/full", wire.SemanticTokensParams{TextDocument: c.Document(file)}, &tokens)
			f := source.New(file, []byte(text))
			var got, want []string
			var at wire.Position
			for d := tokens.Data; len(d) >= 5; d = d[5:] {
				if d[0] > 0 {
					at = wire.Position{Line: at.Line + d[0]}
				}
				at.Character += d[1]
				end := wire.Position{Line: at.Line, Character: at.Character + d[2]}
				got = append(got, text[desk.Offset(f, at, enc):desk.Offset(f, end, enc)])
			}
			for _, w := range outline.Kinds((&desk.Doc{File: f}).Tree()) {
				want = append(want, f.Text(w.Span))
			}
			require.Equal(t, want, got, text)
			askAll(c, file, text)
			c.Close(file)
		}
	}
}

// askAll asks whatever can be asked of a document, and fails where something breaks.
func askAll(c *typist.Typist, file, text string) {
	id := c.Document(file)
	whole := []string{"documentSymbol", "foldingRange", "documentLink", "formatting"}
	for _, m := range whole {
		c.Ask("textDocument/"+m, wire.DocumentSymbolParams{TextDocument: id}, nil)
	}
	for at := 0; at < len(text); at += 301 {
		p := c.AtOffset(file, at)
		for _, m := range []string{"definition", "documentHighlight", "references"} {
			c.Ask("textDocument/"+m, p, nil)
		}
		c.Ask("textDocument/selectionRange", wire.SelectionRangeParams{TextDocument: id, Positions: []wire.Position{p.Position}}, nil)
		c.Ask("textDocument/onTypeFormatting", wire.DocumentOnTypeFormattingParams{TextDocument: id, Position: p.Position, Ch: "\n"}, nil)
		if err := c.Try("textDocument/rename", wire.RenameParams{TextDocument: id, Position: p.Position, NewName: "vat"}, nil); err != nil {
			assert.NotContains(c.T, err.Error(), "broke")
		}
	}
}
