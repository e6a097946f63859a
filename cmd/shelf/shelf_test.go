package shelf

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func names(t *testing.T, folder string) (list []string) {
	t.Helper()
	entries, err := os.ReadDir(folder)
	require.NoError(t, err)
	for _, e := range entries {
		list = append(list, e.Name())
	}
	return list
}

func TestWhatIsPutIsFoundAgain(t *testing.T) {
	folder := filepath.Join(t.TempDir(), "deep", "shelf")
	s := In(folder, "one")
	assert.Nil(t, s.Get("a"))
	s.Put("a", []byte("x"))
	s.Put("b", []byte("y"))
	s.Put("a", []byte("z"))
	assert.Equal(t, []byte("z"), s.Get("a"))
	assert.Equal(t, []byte("y"), In(folder, "one").Get("b"))
	assert.Len(t, names(t, folder), 2, "nothing half written is left")
	require.NoError(t, os.RemoveAll(folder))
	assert.Nil(t, s.Get("a"))
}

func TestAnotherProgramFindsNothing(t *testing.T) {
	folder := t.TempDir()
	In(folder, "one").Put("a", []byte("x"))
	assert.Nil(t, In(folder, "two").Get("a"))
	assert.Nil(t, In(folder, "").Get("a"))
	In(folder, "").Put("c", []byte("x"))
	In("", "one").Put("c", []byte("x"))
	assert.Len(t, names(t, folder), 1)
}

// A program that is built anew is another, though its name and its place stay.
func TestAProgramIsWhatItHolds(t *testing.T) {
	path := filepath.Join(t.TempDir(), "maltwright")
	require.NoError(t, os.WriteFile(path, []byte("built once"), 0o700))
	was := programOf(path)
	assert.Len(t, was, 64)
	assert.Equal(t, was, programOf(path))
	require.NoError(t, os.WriteFile(path, []byte("built anew"), 0o700))
	assert.NotEqual(t, was, programOf(path))
	assert.Empty(t, programOf(filepath.Join(t.TempDir(), "none")))
	assert.Len(t, Program(), 64)
}

func TestAShelfStaysWithinItsBoundAndLeavesWhatIsNotItsOwn(t *testing.T) {
	folder := t.TempDir()
	foreign := []string{"letter.txt", "new-.tmp.bak", "ff.kept"}
	for _, name := range foreign {
		require.NoError(t, os.WriteFile(filepath.Join(folder, name), make([]byte, 5000), 0o600))
	}
	s := In(folder, "one")
	s.most = 3500
	old := time.Now().Add(-time.Hour)
	for i := range 3 {
		s.Put(fmt.Sprint(i), make([]byte, 1000))
		require.NoError(t, os.Chtimes(s.path(fmt.Sprint(i)), old, old.Add(time.Duration(i)*time.Minute)))
	}
	assert.NotNil(t, s.Get("0"), "it is asked for")
	s.Put("3", make([]byte, 1000))
	assert.NotNil(t, s.Get("0"))
	assert.Nil(t, s.Get("1"), "nobody asked for it")
	assert.NotNil(t, s.Get("3"))
	assert.Subset(t, names(t, folder), foreign)
	s.Put("big", make([]byte, MostOne+1))
	assert.Nil(t, s.Get("big"))
}

func TestAFolderThatCannotBeWrittenForgets(t *testing.T) {
	file := filepath.Join(t.TempDir(), "file")
	require.NoError(t, os.WriteFile(file, nil, 0o600))
	s := In(file, "one")
	s.Put("a", []byte("x"))
	assert.Nil(t, s.Get("a"))
	require.NoError(t, os.Mkdir(file+"s", 0o700))
	s = In(file+"s", "one")
	require.NoError(t, os.Mkdir(s.path("a"), 0o700))
	assert.Nil(t, s.Get("a"), "a folder in the place of a result")
	s.Put("a", bytes.Repeat([]byte("x"), 10))
	assert.Nil(t, s.Get("a"))
}
