package recall_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/cmd/repository"
	"maltwright/lang/fingerprint"
	"maltwright/lang/read"
)

// A record that follows its process to another name still finds the text of its beginning, by its signs.
func TestAProcessThatHasAnotherNameTodayIsFoundByItsSigns(t *testing.T) {
	folder := kept(t)
	b, _ := batch(t, folder, "")
	print, revision := fingerprint.Of(b.Process), repository.Head(folder)
	b, r := batch(t, folder, pinned(print, revision))
	assert.True(t, r.Found(b))
	other, _ := batch(t, folder, pinned("0123456789ab", revision))
	other.Pinned.Print.Text = "0123456789ab"
	assert.False(t, r.Found(other))

	// today the name of the record is that of a process that was called otherwise then
	edit(t, folder, "pale.malt", `"Loft pale"`, `"Old name"`)
	commit(t, folder)
	revision = repository.Head(folder)
	edit(t, folder, "pale.malt", `"Old name"`, `"Loft pale"`)
	edit(t, folder, "pale.malt", "soak 7 h", "soak 9 h")
	print = printOf(t, folder, revision)
	b, _ = batch(t, folder, pinned(print, revision))
	require.NotNil(t, b.Today)
	assert.Equal(t, "Old name", b.Process.Name)
	assert.Equal(t, 7*3600.0, firstSoak(b.Process))
	assert.Equal(t, 9*3600.0, firstSoak(b.Today))
	assert.Contains(t, b.Since, `process "Old name" is now process "Loft pale"`)
}

// printOf is the fingerprint of the process as a revision has it.
func printOf(t *testing.T, folder, revision string) string {
	t.Helper()
	rev, err := repository.Find(folder, revision, "pale.malt")
	require.NoError(t, err)
	text, err := rev.Read("pale.malt")
	require.NoError(t, err)
	h, _ := read.Load("pale.malt", text, ".", rev)
	return fingerprint.Of(h.Processes[0])
}
