package main

import (
	"encoding/csv"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A record that came from somebody else cannot make a spreadsheet reckon.
func TestNamesOfBatchesAreNoFormulas(t *testing.T) {
	folder, _ := newRecord(t)
	const name = "=HYPERLINK(1;2)"
	for _, c := range [][3]string{{"-26-03.malt", name, "2026-03-06"}, {"-26-04.malt", "@26-04", "2026-03-20"}} {
		text := fmt.Sprintf("use \"pale.malt\"\nbatch %q of \"Loft pale\" { began %s 07:00 }\n", c[1], c[2])
		require.NoError(t, os.WriteFile(filepath.Join(folder, c[0]), []byte(text), 0o644))
	}
	code, out, errs := runIn(folder, "seasons", "./-26-03.malt", "./-26-04.malt", "--format", "csv")
	require.Equal(t, ExitClean, code, errs)
	lines, err := csv.NewReader(strings.NewReader(out)).ReadAll()
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
