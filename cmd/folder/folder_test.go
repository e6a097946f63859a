package folder_test

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

// noon is the time of the tests: on the first day of the batch.
var noon = at("2026-03-06 14:05")

func at(text string) time.Time {
	t, err := time.ParseInLocation("2006-01-02 15:04", text, time.Local)
	if err != nil {
		panic(err)
	}
	return t
}

const began = `use "pale.malt"

batch "26-06" of "Loft pale" {
  began 2026-03-06 07:00
}
`

// malthouse is a folder with a process, its house, and a record that was just begun.
func malthouse(t testing.TB) string {
	t.Helper()
	dir := t.TempDir()
	for _, name := range []string{"loft.malt", "pale.malt"} {
		text, err := os.ReadFile(filepath.Join("../../examples", name))
		require.NoError(t, err)
		put(t, dir, name, string(text))
	}
	put(t, dir, "26-06.malt", began)
	return dir
}

func put(t testing.TB, dir, name, text string) {
	t.Helper()
	path := filepath.Join(dir, name)
	require.NoError(t, os.MkdirAll(filepath.Dir(path), 0o755))
	require.NoError(t, os.WriteFile(path, []byte(text), 0o644))
}

func content(t testing.TB, dir, name string) string {
	t.Helper()
	text, err := os.ReadFile(filepath.Join(dir, name))
	require.NoError(t, err)
	return string(text)
}

// opened opens a folder whose clock stands.
func opened(t testing.TB, dir string, now time.Time) *folder.Folder {
	t.Helper()
	d, err := folder.Open(dir, folder.Options{Clock: func() time.Time { return now }, Cache: t.TempDir()})
	require.NoError(t, err)
	t.Cleanup(func() { d.Close() })
	return d
}

func looked(t testing.TB, d *folder.Folder, now time.Time) folder.State {
	t.Helper()
	s, err := d.Look(t.Context(), now)
	require.NoError(t, err)
	return s
}

func reading(words string) folder.Reading { return folder.Reading{Words: []string{words}} }

func TestAFolderShowsWhatIsUnderWay(t *testing.T) {
	d := opened(t, malthouse(t), noon)
	s := looked(t, d, noon)
	require.Len(t, s.Underway, 1)
	b := s.Underway[0]
	assert.Equal(t, "26-06", b.Name)
	assert.Equal(t, "26-06.malt", b.File)
	assert.Equal(t, "Loft pale", b.Process)
	assert.Equal(t, "steep", b.Now.Stage)
	assert.Regexp(t, `^\d\d\.\d %$`, b.Now.Moisture)
	assert.Contains(t, b.Now.Weight, " kg")
	assert.NotEmpty(t, b.Now.Left)
	require.Len(t, s.Processes, 1)
	assert.Equal(t, s.Processes[0].ID, b.Of)
	assert.Empty(t, s.Unread)
	require.NotEmpty(t, s.Due)
	for i := range s.Due[1:] {
		assert.False(t, s.Due[i+1].At.Before(s.Due[i].At))
	}
}

func TestAReadingIsJudgedWrittenAndTakenBack(t *testing.T) {
	dir := malthouse(t)
	d := opened(t, dir, noon)
	id := looked(t, d, noon).Underway[0].ID
	x := reading("7.38 kg after soak 1")

	a, err := d.Judge(t.Context(), id, x)
	require.NoError(t, err)
	assert.Contains(t, a.Says, "moisture ")
	assert.Equal(t, []string{"weighed 7.38 kg at 2026-03-06 14:05 after soak 1"}, a.Lines)
	assert.Equal(t, began, content(t, dir, "26-06.malt"), "it is not written")

	a, err = d.Note(t.Context(), id, x, false)
	require.NoError(t, err)
	assert.True(t, a.Written)
	text := content(t, dir, "26-06.malt")
	assert.Contains(t, text, "\n  weighed 7.38 kg at 2026-03-06 14:05 after soak 1\n")

	b := looked(t, d, noon).Underway[0]
	require.Len(t, b.Readings, 1)
	assert.Contains(t, b.Readings[0].Says, "moisture ")

	a, err = d.Note(t.Context(), id, x, false)
	require.NoError(t, err)
	assert.True(t, a.There)
	assert.False(t, a.Written)
	assert.Equal(t, text, content(t, dir, "26-06.malt"))

	u, err := d.Undo(t.Context(), id, "")
	require.NoError(t, err)
	require.Len(t, u.Gone, 1)
	assert.Equal(t, began, content(t, dir, "26-06.malt"))
}

func TestWhatIsDoubtfulIsWrittenOnlyForWhoIsSure(t *testing.T) {
	dir := malthouse(t)
	d := opened(t, dir, noon)
	id := looked(t, d, noon).Underway[0].ID
	x := reading("8.4 kg after soak 1")
	_, err := d.Note(t.Context(), id, x, false)
	var doubtful *folder.Doubtful
	require.ErrorAs(t, err, &doubtful)
	assert.Contains(t, doubtful.Answer.Doubted(), "it fits as gross weight in \"blue tub\"")
	assert.Equal(t, `weighed 8.4 kg in "blue tub" at 2026-03-06 14:05 after soak 1`, doubtful.Answer.Offer)
	assert.Equal(t, began, content(t, dir, "26-06.malt"))
	_, err = d.Note(t.Context(), id, x, true)
	require.NoError(t, err)
	assert.Contains(t, content(t, dir, "26-06.malt"), "weighed 8.4 kg at")
}

func TestWhatIsNoReadingIsRefused(t *testing.T) {
	dir := malthouse(t)
	d := opened(t, dir, noon)
	id := looked(t, d, noon).Underway[0].ID
	for _, words := range []string{"", "wieghed 7 kg", "weighed 71 kg after soak 1", "weighed 7 kg\n}\nbatch \"x\" of \"y\" {", "weighed 7.1 kg at 2031-03-06 14:00", strings.Repeat("x ", 9000)} {
		_, err := d.Note(t.Context(), id, reading(words), true)
		var refused *folder.Refused
		require.ErrorAs(t, err, &refused, words)
		assert.Equal(t, began, content(t, dir, "26-06.malt"))
	}
}

func TestWhatIsNotThereAnyMoreIsGone(t *testing.T) {
	dir := malthouse(t)
	d := opened(t, dir, noon)
	s := looked(t, d, noon)
	id := s.Underway[0].ID
	require.NoError(t, os.Rename(filepath.Join(dir, "26-06.malt"), filepath.Join(dir, "26-07.malt")))
	var gone *folder.Gone
	for _, x := range []folder.ID{id, "", "x", "../26-07", s.Processes[0].ID} {
		_, err := d.Note(t.Context(), x, reading("turned"), false)
		require.ErrorAs(t, err, &gone, string(x))
		_, err = d.Lines(x)
		require.ErrorAs(t, err, &gone)
		_, err = d.Undo(t.Context(), x, "")
		require.ErrorAs(t, err, &gone)
	}
	_, err := d.Begin(t.Context(), id, folder.Start{})
	require.ErrorAs(t, err, &gone)
	moved := looked(t, d, noon).Underway
	require.Len(t, moved, 1)
	assert.NotEqual(t, id, moved[0].ID)
}

// A browser that kept readings for a folder may meet another one at the same address.
func TestABatchOfAnotherFolderIsNotTakenForIt(t *testing.T) {
	one, other := opened(t, malthouse(t), noon), opened(t, malthouse(t), noon)
	id := looked(t, one, noon).Underway[0].ID
	assert.NotEqual(t, one.ID(), other.ID())
	assert.NotEqual(t, id, looked(t, other, noon).Underway[0].ID, "both are called 26-06, in a file of one name")
	_, err := other.Note(t.Context(), id, reading("turned"), true)
	var gone *folder.Gone
	assert.ErrorAs(t, err, &gone)
}

// Another phone writes a line between the look at the page and the button.
func TestOnlyTheLineThatWasShownIsTakenBack(t *testing.T) {
	dir := malthouse(t)
	d := opened(t, dir, noon)
	id := looked(t, d, noon).Underway[0].ID
	for _, words := range []string{"turned at 2026-03-06 13:00", "turned at 2026-03-06 14:00"} {
		_, err := d.Note(t.Context(), id, reading(words), true)
		require.NoError(t, err)
	}
	written := content(t, dir, "26-06.malt")
	lines, err := d.Lines(id)
	require.NoError(t, err)
	_, err = d.Undo(t.Context(), id, lines[len(lines)-2].Words)
	var refused *folder.Refused
	require.ErrorAs(t, err, &refused)
	assert.Equal(t, written, content(t, dir, "26-06.malt"))
	u, err := d.Undo(t.Context(), id, lines[len(lines)-1].Words)
	require.NoError(t, err)
	assert.Equal(t, "turned at 2026-03-06 14:00", u.Gone[0].Words)
}
