package regular

import (
	"io"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestARegularFileIsRead(t *testing.T) {
	folder := t.TempDir()
	path := filepath.Join(folder, "a.malt")
	require.NoError(t, os.WriteFile(path, []byte("text"), 0o644))
	root, err := os.OpenRoot(folder)
	require.NoError(t, err)
	defer root.Close()
	for name, open := range map[string]func() (*os.File, error){
		"by its path":    func() (*os.File, error) { return Open(path) },
		"below a folder": func() (*os.File, error) { return OpenIn(root, "a.malt") },
		"to be written":  func() (*os.File, error) { return OpenFile(path, os.O_RDWR) },
	} {
		f, err := open()
		require.NoError(t, err, name)
		text, err := io.ReadAll(f)
		require.NoError(t, err, name)
		assert.Equal(t, "text", string(text), name)
		require.NoError(t, f.Close())
	}
}

func TestAFolderAndAMissingFileAreRefused(t *testing.T) {
	folder := t.TempDir()
	_, err := Open(folder)
	assert.ErrorIs(t, err, ErrFolder)
	_, err = Open(filepath.Join(folder, "none"))
	assert.ErrorIs(t, err, os.ErrNotExist)
}
