//go:build unix

package regular

import (
	"io/fs"
	"os"
	"path/filepath"
	"syscall"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestADeviceIsRefused(t *testing.T) {
	_, err := Open(os.DevNull)
	assert.ErrorIs(t, err, ErrNotRegular)
}

// A pipe that takes the place of a file between the look and the opening would be
// waited for without end.
func TestAPipeThatIsSwappedInIsRefusedWithoutWaiting(t *testing.T) {
	folder := t.TempDir()
	root, err := os.OpenRoot(folder)
	require.NoError(t, err)
	defer root.Close()
	path := filepath.Join(folder, "a.malt")
	for name, opening := range map[string]func() (*os.File, error){
		"by its path":    func() (*os.File, error) { return os.OpenFile(path, os.O_RDONLY|noWait, 0) },
		"below a folder": func() (*os.File, error) { return root.OpenFile("a.malt", os.O_RDONLY|noWait, 0) },
		"to be written":  func() (*os.File, error) { return os.OpenFile(path, os.O_RDWR|noWait, 0) },
	} {
		require.NoError(t, os.WriteFile(path, []byte("text"), 0o644))
		look := func() (fs.FileInfo, error) {
			info, err := os.Stat(path)
			require.NoError(t, os.Remove(path))
			require.NoError(t, syscall.Mkfifo(path, 0o644))
			return info, err
		}
		_, err := lookAndOpen(look, opening)
		assert.ErrorIs(t, err, ErrNotRegular, name)
		require.NoError(t, os.Remove(path))
	}
}
