package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Nothing below --fail-on is told with --quiet, and a danger always.
func TestQuietTellsOnlyWhatFails(t *testing.T) {
	folder := t.TempDir()
	facts := "site \"s\" { water 9 °C }\n" // that nothing uses it is a note
	require.NoError(t, os.WriteFile(filepath.Join(folder, "a.malt"), []byte(facts), 0o600))
	require.NoError(t, os.WriteFile(filepath.Join(folder, "b.malt"), []byte(facts+"site \"t\" { water 9 h }\n"), 0o600))
	check := func(args ...string) (string, int) {
		var out, errs strings.Builder
		w := World{In: strings.NewReader(""), Out: &out, Err: &errs, Folder: folder, Env: func(string) string { return "" }}
		code := Main(w, append([]string{"check", "--no-forecast"}, args...))
		return out.String() + errs.String(), code
	}
	said, code := check("--quiet", filepath.Join(folder, "a.malt"))
	assert.Empty(t, said)
	assert.Equal(t, ExitClean, code)
	said, code = check("--quiet", filepath.Join(folder, "b.malt"))
	assert.Contains(t, said, "[wrong-dimension]")
	assert.NotContains(t, said, "note:")
	assert.Equal(t, ExitFindings, code)
	said, code = check("--quiet", "--fail-on", "danger", filepath.Join(folder, "b.malt"))
	assert.Empty(t, said)
	assert.Equal(t, ExitClean, code)
}

// Of a text that does not read --mend says which line forbids it.
func TestMendNamesWhatForbidsIt(t *testing.T) {
	folder := t.TempDir()
	path := filepath.Join(folder, "a.malt")
	require.NoError(t, os.WriteFile(path, []byte("site \"s\" { water 9 °C }\n}\n"), 0o600))
	var out, errs strings.Builder
	w := World{In: strings.NewReader(""), Out: &out, Err: &errs, Folder: folder, Env: func(string) string { return "" }}
	Main(w, []string{"check", "--no-forecast", "--mend", path})
	assert.Contains(t, errs.String(), "does not read, and is left as it is: line 2 must be put right first:")
}
