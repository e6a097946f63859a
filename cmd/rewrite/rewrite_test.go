package rewrite

import (
	"bytes"
	"errors"
	"os"
	"path/filepath"
	"runtime"
	"strconv"
	"strings"
	"sync"
	"testing"
	"time"

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

func holds(t *testing.T, path, want string) {
	t.Helper()
	text, err := os.ReadFile(path)
	require.NoError(t, err)
	assert.Equal(t, want, string(text))
}

func alone(t *testing.T, path string) {
	t.Helper()
	files, err := os.ReadDir(filepath.Dir(path))
	require.NoError(t, err)
	assert.Len(t, files, 1, "nothing may stay behind")
}

// to gives a change to a text.
func to(text string) func([]byte) ([]byte, error) {
	return func([]byte) ([]byte, error) { return []byte(text), nil }
}

// add gives a change that puts a text behind the old one.
func add(text string) func([]byte) ([]byte, error) {
	return func(old []byte) ([]byte, error) { return append(old, text...), nil }
}

func TestTheTextIsReplacedAndTheModeKept(t *testing.T) {
	path := write(t, 0o640)
	require.NoError(t, Edit(path, Options{}, func(old []byte) ([]byte, error) {
		assert.Equal(t, "old", string(old))
		return []byte("new"), nil
	}))
	holds(t, path, "new")
	info, err := os.Stat(path)
	require.NoError(t, err)
	if runtime.GOOS != "windows" {
		assert.Equal(t, os.FileMode(0o640), info.Mode().Perm())
	}
	alone(t, path)
}

func TestTheSameTextIsNotWritten(t *testing.T) {
	path := write(t, 0o644)
	before, err := os.Stat(path)
	require.NoError(t, err)
	require.NoError(t, Edit(path, Options{}, to("old")))
	after, err := os.Stat(path)
	require.NoError(t, err)
	assert.True(t, os.SameFile(before, after))
	alone(t, path)
}

func TestAnErrorOfTheChangeLeavesTheFile(t *testing.T) {
	path, own := write(t, 0o644), errors.New("no")
	assert.Equal(t, own, Edit(path, Options{}, func([]byte) ([]byte, error) { return nil, own }))
	holds(t, path, "old")
	alone(t, path)
}

// A program that asks for no lock, such as an editor, changes the file when the new text
// is written already: nothing of it is lost.
func TestAFileThatChangedWhileItWasSyncedIsReadAgain(t *testing.T) {
	path := write(t, 0o644)
	times := 0
	o := Options{Sync: func(f *os.File) error {
		if times++; times == 1 {
			require.NoError(t, os.WriteFile(path, []byte("another"), 0o644))
		}
		return f.Sync()
	}}
	require.NoError(t, Edit(path, o, add(" and mine")))
	holds(t, path, "another and mine")
	assert.Equal(t, 2, times)
	alone(t, path)
}

func TestAFileThatChangesWithoutEndIsLeftAlone(t *testing.T) {
	path := write(t, 0o644)
	times := 0
	o := Options{Sync: func(*os.File) error {
		times++
		return os.WriteFile(path, []byte(strconv.Itoa(times)), 0o644)
	}}
	require.ErrorIs(t, Edit(path, o, to("mine")), ErrChanged)
	holds(t, path, strconv.Itoa(mostTries))
	alone(t, path)
}

// The second begins when the first has read, made its text and is about to put it in
// place. Without the lock one of the two would be lost, for certain.
func TestWhoComesWhileAnotherSyncsWaitsAndLosesNothing(t *testing.T) {
	path := write(t, 0o644)
	var wait sync.WaitGroup
	first := Options{Sync: func(f *os.File) error {
		waiting := make(chan struct{})
		wait.Go(func() {
			o := Options{Say: time.Millisecond, Waiting: func() { close(waiting) }}
			assert.NoError(t, Edit(path, o, add(" second")))
		})
		select {
		case <-waiting:
		case <-time.After(10 * time.Second):
			t.Error("the second did not wait")
		}
		return f.Sync()
	}}
	require.NoError(t, Edit(path, first, add(" first")))
	wait.Wait()
	holds(t, path, "old first second")
	alone(t, path)
}

// Each adds one to what it reads: without the lock some would be lost.
func TestOneHolderAtATime(t *testing.T) {
	path := write(t, 0o644)
	require.NoError(t, os.WriteFile(path, []byte("0"), 0o644))
	const holders, each = 8, 12
	var wait sync.WaitGroup
	for range holders {
		wait.Go(func() {
			for range each {
				assert.NoError(t, Edit(path, Options{}, func(old []byte) ([]byte, error) {
					n, err := strconv.Atoi(string(old))
					return []byte(strconv.Itoa(n + 1)), err
				}))
			}
		})
	}
	wait.Wait()
	holds(t, path, strconv.Itoa(holders*each))
	alone(t, path)
}

func TestAFileThatIsNotThereIsMadeOnlyWhereThatIsMeant(t *testing.T) {
	path := filepath.Join(t.TempDir(), "none")
	assert.ErrorIs(t, Edit(path, Options{}, to("new")), os.ErrNotExist)
	assert.NoFileExists(t, path)
	require.NoError(t, Edit(path, Options{Create: true}, func(old []byte) ([]byte, error) {
		assert.Empty(t, old)
		return []byte("new"), nil
	}))
	holds(t, path, "new")
	alone(t, path)
}

func TestAFileThatIsMadeByAnotherMeanwhileIsNotWrittenOver(t *testing.T) {
	path := filepath.Join(t.TempDir(), "none")
	o := Options{Create: true, Sync: func(*os.File) error {
		if _, err := os.Stat(path); err == nil {
			return nil
		}
		return os.WriteFile(path, []byte("another"), 0o644)
	}}
	require.NoError(t, Edit(path, o, add(" and mine")))
	holds(t, path, "another and mine")
	alone(t, path)
}

func TestFoldersMissingAndLargeFilesAreErrors(t *testing.T) {
	assert.Error(t, Edit(t.TempDir(), Options{}, to("new")))
	assert.ErrorIs(t, Edit(filepath.Join(t.TempDir(), "none", "x.malt"), Options{}, to("new")), os.ErrNotExist)
	path := write(t, 0o644)
	large := bytes.Repeat([]byte("# \n"), maxBytes/3+1)
	require.NoError(t, os.WriteFile(path, large, 0o644))
	assert.ErrorContains(t, Edit(path, Options{}, to("new")), "too large")
	holds(t, path, string(large))
}

func TestALinkIsNotFollowed(t *testing.T) {
	path := write(t, 0o644)
	link := filepath.Join(t.TempDir(), "link.malt")
	if err := os.Symlink(path, link); err != nil {
		t.Skipf("no links here: %v", err)
	}
	require.ErrorIs(t, Edit(link, Options{}, to("new")), ErrLink)
	holds(t, path, "old")
	alone(t, link)
}

func TestAFileThatItsOwnerMayNotWriteIsNotReplaced(t *testing.T) {
	path := write(t, 0o444)
	err := Edit(path, Options{}, to("new"))
	var refusal Refusal
	require.ErrorAs(t, err, &refusal)
	assert.True(t, strings.HasPrefix(refusal.Error(), "it may not be written"), refusal)
	holds(t, path, "old")
	alone(t, path)
}

func TestAFileOfSeveralNamesIsNotReplaced(t *testing.T) {
	path := write(t, 0o644)
	second := filepath.Join(filepath.Dir(path), "second.malt")
	if err := os.Link(path, second); err != nil {
		t.Skipf("no hard links here: %v", err)
	}
	assert.ErrorContains(t, Edit(path, Options{}, to("new")), "it has 2 names")
	holds(t, path, "old")
	holds(t, second, "old")
}
