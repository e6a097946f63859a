package main

import (
	"bytes"
	"fmt"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/lang/source/golden"
)

// newRecord is a folder with an empty record in it.
func newRecord(t *testing.T) (folder, file string) {
	t.Helper()
	folder = t.TempDir()
	for _, name := range []string{"loft.malt", "pale.malt"} {
		text, err := os.ReadFile(filepath.Join("../../examples", name))
		require.NoError(t, err)
		require.NoError(t, os.WriteFile(filepath.Join(folder, name), text, 0o644))
	}
	file = filepath.Join(folder, "batch.malt")
	text := "use \"pale.malt\"\n\n# kept as it is:   so\nbatch \"26-06\" of \"Loft pale\" {\n  began   2026-03-06 07:00\n  # the end\n}\n"
	require.NoError(t, os.WriteFile(file, []byte(text), 0o644))
	return folder, file
}

// weighing is what the grain may well weigh an hour into its first soak: a weight that the
// record makes unlikely costs a fit of all of it.
func weighing(i int) string { return fmt.Sprintf("weighed %d g at 2026-03-06 08:00", 6760+i) }

func countOf(text []byte, i int) int { return bytes.Count(text, []byte("  "+weighing(i)+"\n")) }

// noting is the program that notes a weight in the record of a folder.
func noting(t *testing.T, folder string, i int) *exec.Cmd {
	t.Helper()
	cmd := program(t, "note", "batch.malt", weighing(i), "--sure")
	cmd.Dir = folder
	return cmd
}

func TestNotesOfManyAtOnceAreAllKept(t *testing.T) {
	folder, file := newRecord(t)
	writers, each := 6, 3
	if golden.Long() {
		writers, each = 8, 20
	}
	var wait sync.WaitGroup
	for n := range writers {
		wait.Go(func() {
			for k := range each {
				out, err := noting(t, folder, n*each+k).CombinedOutput()
				assert.NoError(t, err, string(out))
			}
		})
	}
	wait.Wait()
	text, err := os.ReadFile(file)
	require.NoError(t, err)
	for i := range writers * each {
		assert.Equal(t, 1, countOf(text, i), weighing(i))
	}
	assert.Equal(t, 7+writers*each, bytes.Count(text, []byte("\n")), "and nothing else")
	left, err := filepath.Glob(filepath.Join(folder, ".*"))
	require.NoError(t, err)
	assert.Empty(t, left, "no lock and no temporary file stays behind")
}

// A kill at whatever moment leaves the old file or the new one, whole, and holds up
// nobody who comes after it. It goes on until some were killed and some came through.
func TestAKillLeavesTheOldFileOrTheNew(t *testing.T) {
	folder, file := newRecord(t)
	whole := timeOf(t, folder)
	killed, written, enough := 0, 0, 24
	if golden.Long() {
		enough = 120
	}
	for i := 0; i < enough || i < 120 && (killed == 0 || written == 0); i++ {
		before, err := os.ReadFile(file)
		require.NoError(t, err)
		cmd := noting(t, folder, i)
		require.NoError(t, cmd.Start())
		time.Sleep(time.Duration(rand.Int64N(int64(whole + whole/4))))
		_ = cmd.Process.Kill() // it may have ended by itself
		if cmd.Wait() != nil {
			killed++
		}
		after, err := os.ReadFile(file)
		require.NoError(t, err)
		if bytes.Equal(before, after) {
			continue
		}
		written++
		want := strings.Replace(string(before), "  # the end\n", "  "+weighing(i)+"\n  # the end\n", 1)
		require.Equal(t, want, string(after))
	}
	t.Logf("%d killed, %d written", killed, written)
	assert.Positive(t, killed, "none was killed")
	assert.Positive(t, written, "none was let through")
	timeOf(t, folder) // the next one is not held up
}

// timeOf notes something and gives how long it took.
func timeOf(t *testing.T, folder string) time.Duration {
	t.Helper()
	start := time.Now()
	out, err := noting(t, folder, 0).CombinedOutput()
	require.NoError(t, err, string(out))
	return time.Since(start)
}

func TestAReadingWithoutATimeHasThatOfNow(t *testing.T) {
	folder, file := newRecord(t)
	var out bytes.Buffer
	w := World{Out: &out, Err: &out, Folder: folder, Env: func(string) string { return "" }}
	before := time.Now().Truncate(time.Minute)
	require.Equal(t, ExitClean, Main(w, []string{"note", "batch.malt", "turned"}), out.String())
	after := time.Now()
	text, err := os.ReadFile(file)
	require.NoError(t, err)
	_, rest, found := strings.Cut(string(text), "  turned  at ")
	require.True(t, found, string(text))
	got, err := time.ParseInLocation("2006-01-02 15:04", rest[:16], time.Local)
	require.NoError(t, err)
	assert.False(t, got.Before(before) || got.After(after), "%s is not now", got)
}
