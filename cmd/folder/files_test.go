package folder_test

import (
	"fmt"
	"os"
	"path/filepath"
	"runtime"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/cmd/folder"
	"maltwright/cmd/rewrite"
)

// A hidden folder is not entered, and neither a link nor a folder behind one is followed.
func TestNothingOutsideTheFolderIsShownOrWritten(t *testing.T) {
	dir, outside := malthouse(t), malthouse(t)
	put(t, outside, "secret.malt", strings.Replace(began, "26-06", "secret", 1))
	put(t, dir, ".hidden/x.malt", strings.Replace(began, "26-06", "hidden", 1))
	for _, name := range []string{"link.malt", "sub"} {
		target := filepath.Join(outside, "secret.malt")
		if name == "sub" {
			target = outside
		}
		if err := os.Symlink(target, filepath.Join(dir, name)); err != nil {
			t.Skip("no links here:", err)
		}
	}
	put(t, dir, "reaches.malt", "use \"sub/pale.malt\"\n\n"+strings.Split(began, "\n\n")[1])
	d := opened(t, dir, noon)
	s := looked(t, d, noon)
	names := map[string]string{}
	for _, b := range s.Underway {
		names[b.File] = b.Unsound
	}
	require.Len(t, names, 2)
	assert.Empty(t, names["26-06.malt"])
	assert.Contains(t, names["reaches.malt"], "leads out of the folder")

	// a link that takes the place of a record after it was looked at
	id := s.Underway[0].ID
	require.NoError(t, os.Remove(filepath.Join(dir, "26-06.malt")))
	require.NoError(t, os.Symlink(filepath.Join(outside, "26-06.malt"), filepath.Join(dir, "26-06.malt")))
	_, err := d.Note(t.Context(), id, reading("turned"), true)
	require.Error(t, err)
	assert.Equal(t, began, content(t, outside, "26-06.malt"))
}

// An edit by hand is seen at the next look: one that breaks the file, and one that mends it.
func TestAnEditByHandIsSeenAtOnce(t *testing.T) {
	dir := malthouse(t)
	d := opened(t, dir, noon)
	s := looked(t, d, noon)
	id, version := s.Underway[0].ID, s.Version
	assert.Equal(t, version, looked(t, d, noon).Version)

	put(t, dir, "26-06.malt", strings.Replace(began, "}\n", "  weihged 7.38 kg after soak 1 {\n", 1))
	s = looked(t, d, noon)
	assert.NotEqual(t, version, s.Version)
	require.NotEmpty(t, s.Unread)
	assert.Equal(t, "26-06.malt", s.Unread[0].File)
	assert.Contains(t, s.Unread[0].Says, "line ")
	for _, b := range s.Underway {
		assert.NotEmpty(t, b.Unsound)
	}
	_, err := d.Note(t.Context(), id, reading("turned"), true)
	require.Error(t, err)

	put(t, dir, "26-06.malt", began)
	s = looked(t, d, noon)
	assert.Equal(t, version, s.Version)
	assert.Empty(t, s.Underway[0].Unsound)

	// what the record uses
	text := content(t, dir, "pale.malt")
	put(t, dir, "pale.malt", strings.Replace(text, "process \"Loft pale\"", "process \"Loft dark\"", 1))
	s = looked(t, d, noon)
	assert.NotEmpty(t, s.Underway[0].Unsound)
	require.NoError(t, os.Remove(filepath.Join(dir, "pale.malt")))
	assert.Contains(t, looked(t, d, noon).Underway[0].Unsound, "pale.malt")
	put(t, dir, "pale.malt", text)
	assert.Empty(t, looked(t, d, noon).Underway[0].Unsound)
}

func TestTwoBatchesOfOneFileAreTwo(t *testing.T) {
	dir := malthouse(t)
	put(t, dir, "26-06.malt", began+strings.Replace(strings.Split(began, "\n\n")[1], "26-06", "26-07", 1))
	d := opened(t, dir, noon)
	s := looked(t, d, noon)
	require.Len(t, s.Underway, 2)
	assert.NotEqual(t, s.Underway[0].ID, s.Underway[1].ID)
	_, err := d.Note(t.Context(), s.Underway[1].ID, reading("7.38 kg after soak 1"), false)
	require.NoError(t, err)
	s = looked(t, d, noon)
	assert.Empty(t, s.Underway[0].Readings)
	assert.Len(t, s.Underway[1].Readings, 1)
	lines, err := d.Lines(s.Underway[0].ID)
	require.NoError(t, err)
	assert.Len(t, lines, 1)
}

// What cannot be written is told, and the record stays as it is.
func TestWhatCannotBeWrittenIsTold(t *testing.T) {
	dir := malthouse(t)
	full, err := folder.Open(dir, folder.Options{Writing: rewrite.Options{Sync: func(*os.File) error { return fmt.Errorf("no space left on device") }}})
	require.NoError(t, err)
	defer full.Close()
	id := looked(t, full, noon).Underway[0].ID
	_, err = full.Note(t.Context(), id, reading("turned at 2026-03-06 13:00"), true)
	var failed *folder.Failed
	require.ErrorAs(t, err, &failed)
	assert.Equal(t, "26-06.malt: no space left on device", failed.Error())
	assert.Equal(t, began, content(t, dir, "26-06.malt"))
	names, err := os.ReadDir(dir)
	require.NoError(t, err)
	assert.Len(t, names, 3, "nothing is left beside it")

	if runtime.GOOS == "windows" {
		return
	}
	require.NoError(t, os.Chmod(filepath.Join(dir, "26-06.malt"), 0o444))
	d := opened(t, dir, noon)
	_, err = d.Note(t.Context(), id, reading("turned"), true)
	require.ErrorAs(t, err, &failed)
	assert.Contains(t, failed.Says, "it may not be written")
}

// A record that is being written by another program is busy in the end, and not lost.
func TestARecordThatIsHeldIsBusy(t *testing.T) {
	dir := malthouse(t)
	d, err := folder.Open(dir, folder.Options{Writing: rewrite.Options{GiveUp: 20 * time.Millisecond}})
	require.NoError(t, err)
	defer d.Close()
	id := looked(t, d, noon).Underway[0].ID
	err = rewrite.Edit(filepath.Join(dir, "26-06.malt"), rewrite.Options{}, func(old []byte) ([]byte, error) {
		_, err := d.Note(t.Context(), id, reading("turned at 2026-03-06 13:00"), true)
		var busy *folder.Busy
		require.ErrorAs(t, err, &busy)
		return old, nil
	})
	require.NoError(t, err)
}

// A line that is put right must still be the one that was shown.
func TestOnlyTheLineThatWasShownIsPutRight(t *testing.T) {
	dir := malthouse(t)
	put(t, dir, "26-06.malt", weighed)
	d := opened(t, dir, noon)
	b := looked(t, d, noon).Underway[0]
	x := reading("7.4 kg after soak 1")
	x.Fix, x.Was = b.Readings[0].Line, "weighed 7.2 kg at 2026-03-06 14:00 after soak 1"
	_, err := d.Note(t.Context(), b.ID, x, true)
	var refused *folder.Refused
	require.ErrorAs(t, err, &refused)
	x.Was = b.Readings[0].Words
	a, err := d.Note(t.Context(), b.ID, x, true)
	require.NoError(t, err)
	assert.Equal(t, b.Readings[0].Words, a.Was)
	assert.Equal(t, strings.Replace(weighed, "7.38", "7.4", 1), content(t, dir, "26-06.malt"))
}

// crowd is a folder of so many records, most of them over.
func crowd(b *testing.B, records int) string {
	dir := malthouse(b)
	text, err := os.ReadFile("../../examples/batches/26-03.malt")
	require.NoError(b, err)
	for i := range records - 3 {
		put(b, dir, fmt.Sprintf("25-%03d.malt", i), strings.Replace(string(text), "26-03", fmt.Sprintf("25-%03d", i), 1))
	}
	for i := range 2 {
		put(b, dir, fmt.Sprintf("26-%02d.malt", 10+i), strings.Replace(weighed, "26-06", fmt.Sprintf("26-%02d", 10+i), 1))
	}
	return dir
}

// A look at 200 records that stay as they are, three of them under way.
func BenchmarkLook(b *testing.B) {
	d := opened(b, crowd(b, 200), noon)
	looked(b, d, noon)
	b.ResetTimer()
	for b.Loop() {
		looked(b, d, noon)
	}
}

// The first look at them.
func BenchmarkFirstLook(b *testing.B) {
	dir := crowd(b, 200)
	for b.Loop() {
		d, err := folder.Open(dir, folder.Options{})
		require.NoError(b, err)
		looked(b, d, noon)
		require.NoError(b, d.Close())
	}
}

// A reading in a record of a thousand weights, as a scale that writes by itself makes it.
func BenchmarkJudgeInALongRecord(b *testing.B) {
	dir := malthouse(b)
	record, err := os.ReadFile("../../examples/batches/26-03.malt")
	require.NoError(b, err)
	text, _, _ := strings.Cut(string(record), "  read    bed 16.3 °C") // grain that grows weighs as much from hour to hour
	when := at("2026-03-07 22:00")
	for i := range 1000 {
		when = when.Add(time.Minute)
		text += fmt.Sprintf("  weighed %.2f kg at %s\n", 9.29-0.01*float64(i%3), when.Format("2006-01-02 15:04"))
	}
	put(b, dir, "26-06.malt", text+"}\n")
	now := when.Add(time.Hour)
	d := opened(b, dir, now)
	id := looked(b, d, now).Underway[0].ID
	for b.Loop() {
		_, err := d.Judge(b.Context(), id, reading("turned"))
		require.NoError(b, err)
	}
}
