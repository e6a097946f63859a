package rewrite

import (
	"os"
	"path/filepath"
	"runtime"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func write(t *testing.T, mode os.FileMode) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), "pale.malt")
	require.NoError(t, os.WriteFile(path, []byte("old"), mode))
	require.NoError(t, os.Chmod(path, mode))
	return path
}

func alone(t *testing.T, path string) {
	t.Helper()
	files, err := os.ReadDir(filepath.Dir(path))
	require.NoError(t, err)
	assert.Len(t, files, 1, "no temporary file may stay behind")
}

func TestTheTextIsReplacedAndTheModeKept(t *testing.T) {
	path := write(t, 0o640)
	require.NoError(t, File(path, []byte("old"), []byte("new")))
	text, err := os.ReadFile(path)
	require.NoError(t, err)
	assert.Equal(t, "new", string(text))
	info, err := os.Stat(path)
	require.NoError(t, err)
	if runtime.GOOS != "windows" {
		assert.Equal(t, os.FileMode(0o640), info.Mode().Perm())
	}
	alone(t, path)
}

func TestAFileThatChangedMeanwhileIsLeftAlone(t *testing.T) {
	path := write(t, 0o644)
	require.ErrorIs(t, File(path, []byte("older"), []byte("new")), ErrChanged)
	text, _ := os.ReadFile(path)
	assert.Equal(t, "old", string(text))
	alone(t, path)
}

func TestALinkIsNotFollowed(t *testing.T) {
	path := write(t, 0o644)
	link := filepath.Join(t.TempDir(), "link.malt")
	if err := os.Symlink(path, link); err != nil {
		t.Skipf("no links here: %v", err)
	}
	require.ErrorIs(t, File(link, []byte("old"), []byte("new")), ErrLink)
	text, _ := os.ReadFile(path)
	assert.Equal(t, "old", string(text))
}

func TestFoldersAndMissingFilesAreErrors(t *testing.T) {
	assert.Error(t, File(t.TempDir(), nil, nil))
	assert.ErrorIs(t, File(filepath.Join(t.TempDir(), "none"), nil, nil), os.ErrNotExist)
}
