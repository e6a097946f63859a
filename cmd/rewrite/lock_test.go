package rewrite

import (
	"os"
	"path/filepath"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestALockThatIsHeldForTooLongIsGivenUp(t *testing.T) {
	path := write(t, 0o644)
	release, err := tryLock(lockName(path))
	require.NoError(t, err)
	told := 0
	o := Options{Say: 5 * time.Millisecond, GiveUp: 60 * time.Millisecond, Waiting: func() { told++ }}
	err = Edit(path, o, to("new"))
	assert.EqualError(t, err, "another maltwright is writing it, and was not done after 60 ms; end that one if it hangs or is stopped, and try again")
	assert.Equal(t, 1, told)
	holds(t, path, "old")
	release()
	require.NoError(t, Edit(path, o, to("new")))
	holds(t, path, "new")
	alone(t, path)
}

// What stands in the place of a lock may be somebody's: it is named, and not touched.
func TestWhatIsNoLockIsLeftAlone(t *testing.T) {
	for name, c := range map[string]struct {
		want string
		make func(name string) error
	}{
		"a folder":           {"is a folder", func(name string) error { return os.Mkdir(name, 0o755) }},
		"a file with text":   {"is not empty", func(name string) error { return os.WriteFile(name, []byte("mine"), 0o644) }},
		"a link to a file":   {"is a link", func(name string) error { return os.Symlink("pale.malt", name) }},
		"a link to a folder": {"is a link", func(name string) error { return os.Symlink(".", name) }},
		"a dangling link":    {"is a link", func(name string) error { return os.Symlink("made.malt", name) }},
		"a link to itself":   {"is a link", func(name string) error { return os.Symlink(filepath.Base(name), name) }},
	} {
		t.Run(name, func(t *testing.T) {
			path := write(t, 0o644)
			if err := c.make(lockName(path)); err != nil {
				t.Skipf("not here: %v", err)
			}
			before, err := os.Lstat(lockName(path))
			require.NoError(t, err)
			err = Edit(path, Options{}, to("new"))
			assert.EqualError(t, err, ".pale.malt.lock beside it "+c.want+", and so no lock of maltwright; look what it is, take it away, and try again")
			Sweep(path)
			after, err := os.Lstat(lockName(path))
			require.NoError(t, err)
			assert.True(t, os.SameFile(before, after))
			assert.NoFileExists(t, filepath.Join(filepath.Dir(path), "made.malt"))
			holds(t, path, "old")
		})
	}
}

// It may be put there after the look.
func TestALinkInPlaceOfALockIsNotOpened(t *testing.T) {
	folder := t.TempDir()
	name := filepath.Join(folder, ".pale.malt.lock")
	if err := os.Symlink("made.malt", name); err != nil {
		t.Skipf("no links here: %v", err)
	}
	for _, fresh := range []bool{true, false} {
		f, err := openPlain(name, fresh)
		if err == nil { // Windows opens the link itself
			info, err := f.Stat()
			require.NoError(t, err)
			assert.Error(t, isLock(info, name))
			f.Close()
		}
		assert.NoFileExists(t, filepath.Join(folder, "made.malt"))
	}
}
