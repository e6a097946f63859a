package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The guide shows what a doubtful reading is told of, in the record as it stands then.
func TestTheGuideShowsADoubtfulReading(t *testing.T) {
	folder := t.TempDir()
	for _, name := range []string{"pale.malt", "loft.malt", "26-03.malt"} {
		text, err := os.ReadFile(filepath.Join("../../examples/batches", name))
		require.NoError(t, err)
		if before, _, ok := strings.Cut(string(text), "  read    water 13.5 °C"); name == "26-03.malt" {
			require.True(t, ok)
			text = []byte(before + "}\n")
		}
		require.NoError(t, os.WriteFile(filepath.Join(folder, name), text, 0o644))
	}
	file := filepath.Join(folder, "26-03.malt")
	args := []string{"note", file, "weighed", "6.86", "kg", "after", "soak", "2", "--at", "2026-03-07 06:00"}
	before, err := os.ReadFile(file)
	require.NoError(t, err)
	code, out, errs := onScreen(false, nil, "", args...)
	assert.Equal(t, ExitFindings, code)
	guideShows(t, "maltwright: not noted: 6.86 kg", out+errs)
	text, err := os.ReadFile(file)
	require.NoError(t, err)
	assert.Equal(t, string(before), string(text), "it is not written")
	code, _, _ = onScreen(false, nil, "", append(args, "--sure")...)
	assert.Zero(t, code)
	text, err = os.ReadFile(file)
	require.NoError(t, err)
	assert.Contains(t, string(text), "weighed 6.86 kg at 2026-03-07 06:00 after soak 2\n", "it is written all the same")
}

// It shows what an answer looks like, of the first weight, and what begin says.
func TestTheGuideShowsAnAnswer(t *testing.T) {
	folder := t.TempDir()
	for _, name := range []string{"pale.malt", "loft.malt"} {
		text, err := os.ReadFile(filepath.Join("../../examples/batches", name))
		require.NoError(t, err)
		require.NoError(t, os.WriteFile(filepath.Join(folder, name), text, 0o644))
	}
	code, out, _ := runIn(folder, "begin", "pale.malt", "--at", "2026-03-06T07:00", "--name", "26-03")
	require.Zero(t, code)
	_, out, _ = strings.Cut(out, "\n")
	guideShows(t, "before it is wet:", out)
	file := filepath.Join(folder, "26-03.malt")
	code, _, errs := runIn(folder, "note", "26-03.malt", "sample 20.00 g dried to 17.54 g")
	require.Zero(t, code, errs)
	code, out, errs = runIn(folder, "note", "26-03.malt", "weighed", "7.38", "kg", "after", "soak", "1", "--at", "2026-03-06 14:00")
	require.Zero(t, code, errs)
	guideShows(t, "26-03: weighed 7.38 kg", out)
	assert.FileExists(t, file)
}
