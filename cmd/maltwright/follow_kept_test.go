package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// What follow keeps for the next time stands in the cache folder, changes nothing of what it
// prints, and is neither used nor made where nobody wants it.
func TestWhatFollowKeepsChangesNothing(t *testing.T) {
	longSums(t)
	here, err := os.Getwd()
	require.NoError(t, err)
	folder := filepath.Join(t.TempDir(), "cache")
	run := func(cache string, more ...string) string {
		var out, errs strings.Builder
		w := World{In: strings.NewReader(""), Out: &out, Err: &errs, Folder: here, Cache: cache, Env: func(string) string { return "" }}
		args := append([]string{"follow", firstBatch, "--members", "60", "--at", "2026-03-07T23:30"}, more...)
		require.Equal(t, ExitClean, Main(w, args), errs.String())
		return out.String()
	}
	plain := run("")
	assert.Equal(t, plain, run(folder, "--no-cache"))
	assert.NoDirExists(t, folder)
	assert.Equal(t, plain, run(folder))
	kept, err := os.ReadDir(folder)
	require.NoError(t, err)
	require.Len(t, kept, 1)
	assert.Equal(t, plain, run(folder))
	path := filepath.Join(folder, kept[0].Name())
	require.NoError(t, os.WriteFile(path, []byte("no result"), 0o600))
	assert.Equal(t, plain, run(folder))
	text, err := os.ReadFile(path)
	require.NoError(t, err)
	assert.Greater(t, len(text), 1000, "it is put right")
}
