package folder_test

import (
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/cmd/folder"
)

const weighed = `use "pale.malt"

batch "26-06" of "Loft pale" {
  began 2026-03-06 07:00

  weighed 7.38 kg at 2026-03-06 14:00 after soak 1
}
`

// A batch is followed without anybody waiting for it; a record that is changed is followed again, and until
// then it is told as of when the answer is.
func TestABatchIsFollowedInTheBackground(t *testing.T) {
	dir := malthouse(t)
	put(t, dir, "26-06.malt", weighed)
	d, err := folder.Open(dir, folder.Options{Clock: func() time.Time { return noon }, Follow: true, Members: 20})
	require.NoError(t, err)
	defer func() { require.NoError(t, d.Close()) }()
	followed := func() *folder.Followed { return looked(t, d, noon).Underway[0].Followed }
	require.Eventually(t, func() bool { return followed() != nil }, time.Minute, 50*time.Millisecond)
	f := followed()
	assert.False(t, f.Stale)
	assert.Equal(t, noon, f.At)
	assert.Contains(t, strings.Join(f.Lines, "\n"), "moisture 2")
	assert.Contains(t, f.Sheet(40), "batch 26-06 of Loft pale")
	version := looked(t, d, noon).Version

	o, err := d.Batch(looked(t, d, noon).Underway[0].ID, noon)
	require.NoError(t, err)
	require.NotNil(t, o.Follow)

	put(t, dir, "26-06.malt", strings.Replace(weighed, "7.38", "7.41", 1))
	f = followed()
	assert.True(t, f.Stale)
	assert.NotEqual(t, version, looked(t, d, noon).Version)
	require.Eventually(t, func() bool { return !followed().Stale }, time.Minute, 50*time.Millisecond)
	assert.Contains(t, followed().Result.Readings[0].Text, "7.41 kg")
}

// To close a folder ends what is followed, and leaves nothing running.
func TestToCloseEndsTheFollowing(t *testing.T) {
	dir := malthouse(t)
	put(t, dir, "26-06.malt", weighed)
	d, err := folder.Open(dir, folder.Options{Clock: func() time.Time { return noon }, Follow: true, Members: 10_000})
	require.NoError(t, err)
	time.Sleep(50 * time.Millisecond) // it has begun, most likely
	require.NoError(t, d.Close())
	assert.Error(t, func() error { _, err := d.Look(t.Context(), noon); return err }())
}

// What is written on paper has the times of what is due, be the batch followed or not.
func TestWhatIsAheadIsWhatIsDue(t *testing.T) {
	dir := malthouse(t)
	put(t, dir, "26-06.malt", weighed)
	for _, follows := range []bool{false, true} {
		d, err := folder.Open(dir, folder.Options{Clock: func() time.Time { return noon }, Follow: follows, Members: 20})
		require.NoError(t, err)
		if follows {
			require.Eventually(t, func() bool { return looked(t, d, noon).Underway[0].Followed != nil }, time.Minute, 50*time.Millisecond)
		}
		b := looked(t, d, noon).Underway[0]
		a, err := d.Ahead(t.Context(), b.ID, noon)
		require.NoError(t, err)
		assert.Equal(t, follows, a.Followed)
		assert.Equal(t, follows, !a.At.IsZero())
		require.NotEmpty(t, b.Due)
		require.Len(t, a.Visits, len(b.Due))
		for i, v := range a.Visits {
			assert.WithinDuration(t, b.Due[i].At, b.Began.Add(time.Duration(v.At*float64(time.Second))), time.Minute/2, "visit %d, told to the minute", i)
		}
		require.NoError(t, d.Close())
	}
}
