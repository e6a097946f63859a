package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/cmd/folder"
)

// workshop is a folder with a process and nothing else, and somebody at whose clock it is a time that
// the test sets.
func workshop(t *testing.T) (dir string, clock *time.Time) {
	t.Helper()
	dir = t.TempDir()
	for _, name := range []string{"loft.malt", "pale.malt"} {
		text, err := os.ReadFile(filepath.Join("../../examples", name))
		require.NoError(t, err)
		require.NoError(t, os.WriteFile(filepath.Join(dir, name), text, 0o644))
	}
	return dir, new(time.Date(2026, 3, 6, 7, 0, 0, 0, time.Local))
}

// A record that is begun and kept through a folder, as the page does it, is byte for byte the one that the
// commands make of the same words at the same times; and so is what is said of each reading, what is doubted,
// and what is taken back.
func TestAFolderAndTheCommandsMakeTheSameRecord(t *testing.T) {
	byCommand, clock := workshop(t)
	byFolder, _ := workshop(t)
	now := func() time.Time { return *clock }
	d, err := folder.Open(byFolder, folder.Options{Clock: now, Cache: t.TempDir()})
	require.NoError(t, err)
	defer d.Close()
	cache := t.TempDir()
	run := func(args ...string) (code int, out, errs string) {
		var o, e strings.Builder
		w := World{In: strings.NewReader(""), Out: &o, Err: &e, Folder: byCommand, Cache: cache, Env: func(string) string { return "" }, clock: now}
		code = Main(w, args)
		return code, o.String(), e.String()
	}
	s, err := d.Look(t.Context(), now())
	require.NoError(t, err)
	begun, err := d.Begin(t.Context(), s.Processes[0].ID, folder.Start{Weight: "5.9 kg"})
	require.NoError(t, err)
	code, out, errs := run("begin", "pale.malt", "--weight", "5.9 kg")
	require.Zero(t, code, errs)
	for _, line := range append(begun.Says, begun.Line) {
		assert.Contains(t, out, line)
	}
	same := func(what string) {
		t.Helper()
		assert.Equal(t, content(t, filepath.Join(byCommand, begun.File)), content(t, filepath.Join(byFolder, begun.File)), what)
	}
	same("begun")
	for _, x := range []struct{ now, words, at string }{
		{"2026-03-06 07:05", "water 13.4 °C", ""},
		{"2026-03-06 14:02", "weighed 7.26 kg after soak 1", "14:00"},
		{"2026-03-06 14:05", "8.2 kg after soak 1", ""}, // doubtful
		{"2026-03-06 23:40", "remark smells of cucumber", "23:30"},
		{"2026-03-07 06:00", "8.50 kg after soak 2", ""},
		{"2026-03-07 06:10", "weighed 71 kg after soak 2", ""}, // cannot be
		{"2026-03-07 06:20", "it smells of mould", ""},
		{"2026-03-08 07:00", "chit 84 of 100", "2 h ago"},
		{"2026-03-08 07:10", "wieghed 9 kg", ""}, // no word of a batch
		{"2026-03-10 08:00", "2 34 62 2 0 0", ""},
	} {
		var err error
		*clock, err = time.ParseInLocation("2006-01-02 15:04", x.now, time.Local)
		require.NoError(t, err)
		args := []string{"note", begun.File, x.words}
		if x.at != "" {
			args = append(args, "--at", x.at)
		}
		code, out, errs := run(args...)
		a, err := d.Note(t.Context(), begun.ID, folder.Reading{Words: []string{x.words}, At: x.at}, false)
		same(x.words)
		if code != 0 {
			require.Error(t, err, x.words)
			assert.Contains(t, errs, err.Error())
			continue
		}
		require.NoError(t, err, x.words)
		assert.Contains(t, out, a.Lines[0])
		assert.Contains(t, out, a.Says)
		for _, doubt := range a.Doubts {
			assert.Contains(t, out+errs, doubt.Message)
		}
	}
	for range 3 {
		code, out, errs := run("note", begun.File, "--undo")
		require.Zero(t, code, errs)
		u, err := d.Undo(t.Context(), begun.ID, "")
		require.NoError(t, err)
		assert.Contains(t, out, "taken back: "+u.Gone[0].Words)
		same("taken back")
	}
	for id := range 2 { // doubtful, and written all the same
		code, _, errs = run("note", begun.File, "8.2 kg after soak 2", "--sure", "--at", "2026-03-07 06:00")
		require.Zero(t, code, errs)
		_, err = d.Note(t.Context(), begun.ID, folder.Reading{Words: []string{"8.2 kg after soak 2"}, At: "2026-03-07 06:00", Own: string(rune('a' + id))}, true)
		require.NoError(t, err)
		same("sure")
	}
}
