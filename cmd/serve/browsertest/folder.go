package browsertest

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/require"
)

// Folder is a copy of the examples, or of a folder of them, which a test may write in.
func Folder(t testing.TB, of string) string {
	t.Helper()
	folder := t.TempDir()
	require.NoError(t, os.CopyFS(folder, os.DirFS(filepath.Join(root(t), "examples", of))))
	return folder
}

// root is the folder of the module, above that of the test that runs.
func root(t testing.TB) string {
	t.Helper()
	at, err := os.Getwd()
	require.NoError(t, err)
	for {
		if _, err := os.Stat(filepath.Join(at, "go.mod")); err == nil {
			return at
		}
		above := filepath.Dir(at)
		require.NotEqual(t, at, above, "no folder above the test holds go.mod")
		at = above
	}
}
