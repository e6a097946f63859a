package main

import (
	"encoding/csv"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A record that came from somebody else cannot make a spreadsheet reckon.
func TestNamesOfBatchesAreNoFormulas(t *testing.T) {
	longSums(t)
	folder := t.TempDir()
	require.NoError(t, os.CopyFS(folder, os.DirFS("../../examples/batches")))
	const name = "=HYPERLINK(1;2)"
	for file, with := range map[string]string{"26-03.malt": `batch "` + name + `"`, "26-04.malt": `batch "@26-04"`} {
		text, err := os.ReadFile(filepath.Join(folder, file))
		require.NoError(t, err)
		text = []byte(strings.Replace(string(text), `batch "`+strings.TrimSuffix(file, ".malt")+`"`, with, 1))
		require.NoError(t, os.WriteFile(filepath.Join(folder, "-"+file), text, 0o644))
	}
	lines, err := csv.NewReader(strings.NewReader(shownSeasons(t, 0, nil, folder+"/-26-03.malt", folder+"/-26-04.malt", "--format", "csv"))).ReadAll()
	require.NoError(t, err)
	assert.Equal(t, "'"+name, lines[1][1])
	assert.Equal(t, "'@26-04", lines[2][1])
	for _, row := range lines {
		for _, cell := range row {
			assert.NotRegexp(t, `^[=+@]|^-[^0-9]`, cell)
		}
	}
}

// Nothing else writes CSV, so that nothing else forgets.
func TestAllCSVIsWrittenInOnePlace(t *testing.T) {
	files, err := filepath.Glob("../../*/*/*.go")
	require.NoError(t, err)
	require.Greater(t, len(files), 100)
	for _, path := range files {
		text, err := os.ReadFile(path)
		require.NoError(t, err)
		if filepath.Base(path) != "csv.go" && !strings.HasSuffix(path, "_test.go") {
			assert.NotContains(t, string(text), "csv.NewWriter", path)
		}
	}
}
