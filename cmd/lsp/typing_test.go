package lsp

import (
	"context"
	"io"
	"os"
	"path/filepath"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"maltwright/cmd/lsp/typist"
	"maltwright/cmd/lsp/wire"
)

// served is the server with short times, as tests run it.
func served(ctx context.Context, in io.Reader, out io.Writer) int {
	return Serve(ctx, in, out, Options{Version: "test", Quiet: 5 * time.Millisecond, Look: 20 * time.Millisecond, Wait: typist.Patience, Members: 20})
}

// typing begins to talk with a server over a folder with some files: names and texts in turn.
func typing(t testing.TB, files ...string) *typist.Typist {
	t.Helper()
	return typist.Sit(t, served, nil, files...)
}

// typingAs is typing in an editor that is otherwise.
func typingAs(t testing.TB, change func(*wire.InitializeParams), files ...string) *typist.Typist {
	t.Helper()
	return typist.Sit(t, served, change, files...)
}

// example is the text of a file of the examples.
func example(t testing.TB, name string) string {
	t.Helper()
	text, err := os.ReadFile(filepath.Join("../../examples", name))
	require.NoError(t, err)
	return string(text)
}

// loft is typing in the loft of the examples, with pale.malt open.
func loft(t testing.TB) *typist.Typist {
	t.Helper()
	c := typing(t, "pale.malt", example(t, "pale.malt"), "loft.malt", example(t, "loft.malt"))
	c.Open("pale.malt")
	return c
}
