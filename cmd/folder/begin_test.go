package folder_test

import (
	"path/filepath"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/cmd/folder"
)

func TestABatchIsBegunBesideItsProcess(t *testing.T) {
	dir := malthouse(t)
	d := opened(t, dir, noon)
	s := looked(t, d, noon)
	var held *folder.Held
	_, err := d.Begin(t.Context(), s.Processes[0].ID, folder.Start{})
	require.ErrorAs(t, err, &held, "the other batch is in the vessel")
	assert.Contains(t, held.Says, `batch "26-06", begun Fri 6 Mar 07:00, is still in "blue tub" by its record 26-06.malt`)
	assert.NoFileExists(t, filepath.Join(dir, "26-07.malt"))

	b, err := d.Begin(t.Context(), s.Processes[0].ID, folder.Start{At: "13:00", Weight: "5.5 kg", Sure: true})
	require.NoError(t, err)
	assert.Equal(t, "26-07", b.Batch)
	assert.Equal(t, "26-07.malt", b.File)
	assert.NotEmpty(t, b.Says)
	assert.Regexp(t, `^weighed [\d.]+ kg in "blue tub" after soak 1$`, b.Line)
	text := content(t, dir, "26-07.malt")
	assert.Contains(t, text, "began  2026-03-06 13:00\n")
	assert.Contains(t, text, "from   5.5 kg of ")
	assert.Contains(t, text, "pinned \"")
	s = looked(t, d, noon)
	require.Len(t, s.Underway, 2)
	assert.Equal(t, b.ID, s.Underway[1].ID)
	_, err = d.Note(t.Context(), b.ID, reading("water 13.4 °C"), false)
	require.NoError(t, err)
}

func TestWhatCannotBeBegunIsRefused(t *testing.T) {
	dir := malthouse(t)
	put(t, dir, "broken.malt", "process \"Broken\" {\n  grain \"none\"\n  steep {\n")
	d := opened(t, dir, noon)
	id := map[string]folder.ID{}
	for _, p := range looked(t, d, noon).Processes {
		id[p.File] = p.ID
	}
	for field, start := range map[string]folder.Start{
		"name": {Name: "../x", Sure: true}, "weight": {Weight: "5.5", Sure: true}, "at": {At: "half past", Sure: true},
	} {
		_, err := d.Begin(t.Context(), id["pale.malt"], start)
		var refused *folder.Refused
		var wrong *folder.Wrong
		require.ErrorAs(t, err, &refused)
		require.ErrorAs(t, err, &wrong)
		assert.Equal(t, field, wrong.Field)
	}
	var wrong *folder.Wrong
	for _, name := range []string{"26-06", "pale", "loft"} {
		_, err := d.Begin(t.Context(), id["pale.malt"], folder.Start{Name: name, Sure: true})
		require.ErrorAs(t, err, &wrong, name)
	}
	_, err := d.Begin(t.Context(), id["broken.malt"], folder.Start{Sure: true})
	var unsound *folder.Unsound
	require.ErrorAs(t, err, &unsound)
	assert.NotEmpty(t, unsound.Findings)
	names, err := filepath.Glob(filepath.Join(dir, "*"))
	require.NoError(t, err)
	assert.Len(t, names, 4)
}

func TestWhatWouldBe(t *testing.T) {
	d := opened(t, malthouse(t), noon)
	id := looked(t, d, noon).Processes[0].ID
	r, err := d.WhatIf(t.Context(), id, time.Time{}, []string{"soak 1 to 9 h"})
	require.NoError(t, err)
	assert.NotEmpty(t, r.Rows)
	_, err = d.WhatIf(t.Context(), id, time.Time{}, []string{"pigs to fly"})
	var refused *folder.Refused
	require.ErrorAs(t, err, &refused)
	_, err = d.WhatIf(t.Context(), id, time.Time{}, []string{"site air to 900 °C"})
	var unsound *folder.Unsound
	require.ErrorAs(t, err, &unsound)

	o, err := d.Process(t.Context(), id)
	require.NoError(t, err)
	require.NotNil(t, o.Forecast)
	s := looked(t, d, noon)
	assert.True(t, s.Processes[0].Checked)
}
