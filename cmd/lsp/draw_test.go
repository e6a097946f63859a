package lsp

import (
	"bytes"
	"context"
	"encoding/json"
	"io"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/cmd/lsp/desk"
	"maltwright/cmd/lsp/typist"
	"maltwright/cmd/lsp/wire"
)

// under is a time at which the batch of the porch is under way, on its sixth day.
var under = time.Date(2026, 10, 8, 23, 30, 0, 0, time.Local)

// attending is a server at that time, with a folder for what is kept.
func attending(t *testing.T, names ...string) *typist.Typist {
	t.Helper()
	cache := t.TempDir()
	var files []string
	for _, name := range names {
		files = append(files, name, example(t, name))
	}
	serve := func(ctx context.Context, in io.Reader, out io.Writer) int {
		return Serve(ctx, in, out, Options{Quiet: 5 * time.Millisecond, Cache: cache, Clock: func() time.Time { return under }})
	}
	return typist.Sit(t, serve, nil, files...)
}

func drawnBy(t *testing.T, c *typist.Typist, command string, arguments ...any) ([]byte, error) {
	t.Helper()
	p := wire.ExecuteCommandParams{Command: command}
	for _, a := range arguments {
		raw, err := json.Marshal(a)
		require.NoError(t, err)
		p.Arguments = append(p.Arguments, raw)
	}
	var uri string
	if err := c.Try("workspace/executeCommand", p, &uri); err != nil {
		return nil, err
	}
	made, err := os.ReadFile(desk.Path(uri))
	require.NoError(t, err)
	return made, nil
}

func TestDueListsWhatIsLateAndWhatIsNext(t *testing.T) {
	c := attending(t, "home/26-01.malt", "home/porch.malt")
	var list []wire.Due
	c.Ask("maltwright/due", wire.DueParams{}, &list)
	require.NotEmpty(t, list)
	for i, d := range list {
		assert.Equal(t, "26-01", d.Batch)
		assert.Equal(t, c.URI("home/26-01.malt"), d.URI)
		assert.Equal(t, d.At.Before(under.Add(-time.Minute)), d.Late, d.Text)
		assert.NotEmpty(t, d.Text)
		assert.NotEmpty(t, d.Time)
		if i > 0 {
			assert.False(t, d.At.Before(list[i-1].At))
		}
	}
	assert.False(t, list[len(list)-1].Late, "what is next")

	c.Write("home/26-01.malt", "batch \"26-01\" of \"Nothing\" { began 2026-03-06 07:00 }\n")
	c.Ask("maltwright/due", wire.DueParams{}, &list)
	assert.Empty(t, list, "a record that cannot be used")
}

func TestChartIsTheOneOfTheCommand(t *testing.T) {
	c := attending(t, "pale.malt", "loft.malt")
	drawn, err := drawnBy(t, c, "maltwright.chart", c.URI("pale.malt"))
	require.NoError(t, err)
	assert.Contains(t, string(drawn), "<title id=")
	assert.Contains(t, string(drawn), "Moisture of Loft pale")
	again, err := drawnBy(t, c, "maltwright.chart", c.URI("pale.malt"))
	require.NoError(t, err)
	assert.True(t, bytes.Equal(drawn, again))

	narrow, err := drawnBy(t, c, "maltwright.chart", c.URI("pale.malt"), wire.DrawOptions{Wide: 360})
	require.NoError(t, err)
	assert.Contains(t, string(narrow), `width="360"`)

	c.Open("pale.malt")
	c.Type("pale.malt", "process \"Loft pale\"", "process \"Loft other\"") // what is open counts
	drawn, err = drawnBy(t, c, "maltwright.chart", c.URI("pale.malt"), wire.DrawOptions{Of: "heat"})
	require.NoError(t, err)
	assert.Contains(t, string(drawn), "of Loft other")

	for said, again := range map[string]func() error{
		`a chart is not made of "joy"`: func() error {
			_, err := drawnBy(t, c, "maltwright.chart", c.URI("pale.malt"), wire.DrawOptions{Of: "joy"})
			return err
		},
		"holds no process and no record": func() error { _, err := drawnBy(t, c, "maltwright.chart", c.URI("loft.malt")); return err },
		"cannot be read":                 func() error { _, err := drawnBy(t, c, "maltwright.chart", c.URI("none.malt")); return err },
		"argument 1":                     func() error { _, err := drawnBy(t, c, "maltwright.chart", 5); return err },
		`no command "maltwright.dance"`:  func() error { _, err := drawnBy(t, c, "maltwright.dance"); return err },
	} {
		assert.ErrorContains(t, again(), said)
	}
	c.Type("pale.malt", "steep in", "stoop in")
	_, err = drawnBy(t, c, "maltwright.sheet", c.URI("pale.malt"))
	assert.ErrorContains(t, err, "pale.malt has faults")
}

func TestSheetOfAProcessAndOfABatch(t *testing.T) {
	c := attending(t, "home/26-01.malt", "home/porch.malt")
	for _, name := range []string{"home/porch.malt", "home/26-01.malt"} {
		paper, err := drawnBy(t, c, "maltwright.sheet", c.URI(name))
		require.NoError(t, err)
		assert.True(t, strings.HasPrefix(string(paper), "%PDF-"), name)
	}
	drawn, err := drawnBy(t, c, "maltwright.chart", c.URI("home/26-01.malt"), wire.DrawOptions{Of: "weight"})
	require.NoError(t, err)
	assert.Contains(t, string(drawn), "26-01")
}

// Two processes of one file are two pictures, and a buffer may be called whatever it likes.
func TestEachPictureHasItsOwnFile(t *testing.T) {
	d := &drawn{cache: t.TempDir()}
	paths := map[string]bool{}
	for _, of := range []string{"a", "b"} {
		path, err := d.put("/malt/pale.malt", of, ".svg", []byte(of))
		require.NoError(t, err)
		paths[path] = true
	}
	for _, odd := range []string{"untitled:Untitled-1", `git:/a/b.malt?{"ref":"~"}`, "x:" + strings.Repeat("ä", 300), ".."} {
		path, err := d.put(odd, "", ".svg", nil)
		require.NoError(t, err, odd)
		assert.Equal(t, filepath.Join(d.cache, "drawn"), filepath.Dir(path))
		assert.Regexp(t, `^[-\pL\d_. ]{1,80}$`, filepath.Base(path))
		paths[path] = true
	}
	assert.Len(t, paths, 6)

	text := example(t, "pale.malt")
	c := attending(t, "loft.malt")
	at := strings.Index(text, "process ")
	c.Write("two.malt", text+"\n"+strings.Replace(text[at:], "Loft pale", "Loft other", 1))
	var first, second string
	for name, into := range map[string]*string{"Loft pale": &first, "Loft other": &second} {
		raw, err := json.Marshal([]any{c.URI("two.malt"), wire.DrawOptions{Name: name}})
		require.NoError(t, err)
		c.Ask("workspace/executeCommand", map[string]any{"command": "maltwright.chart", "arguments": json.RawMessage(raw)}, into)
	}
	assert.NotEqual(t, first, second)
}
