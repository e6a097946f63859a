package main

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/lang/source/golden"
)

// What check prints about each broken example stands beside it. An ordinary run looks at
// every fourth one: package check finds what is wrong in all of them.
func TestCheckOfEveryBrokenExample(t *testing.T) {
	folder, err := filepath.Abs("../../examples/broken")
	require.NoError(t, err)
	files, err := filepath.Glob(filepath.Join(folder, "*.malt"))
	require.NoError(t, err)
	require.NotEmpty(t, files)
	for i, path := range files {
		name := strings.TrimSuffix(filepath.Base(path), ".malt")
		if name == "loft" || name == "pale" { // what the others use, and sound
			continue
		}
		if i%4 != 0 && !golden.Whole() {
			continue
		}
		t.Run(name, func(t *testing.T) {
			args := []string{"check", name + ".malt", "--fail-on", "note"}
			if name == "expectation-at-risk" { // found only where the odds are asked for
				args = append(args, "--odds")
			}
			said := func(width int) string {
				var out, errs bytes.Buffer
				w := World{In: strings.NewReader(""), Out: &out, Err: &errs, Folder: folder, Width: width, Env: func(string) string { return "" }}
				code := Main(w, args)
				assert.Empty(t, errs.String())
				assert.Equal(t, ExitFindings, code)
				return out.String()
			}
			for line := range strings.Lines(said(80)) { // of a terminal
				assert.LessOrEqual(t, len([]rune(strings.TrimRight(line, "\n"))), 80, line)
			}
			golden.File(t, strings.TrimSuffix(path, ".malt")+".txt", said(0))
		})
	}
}

func TestNoGoldenStandsWithoutItsBrokenExample(t *testing.T) {
	texts, err := filepath.Glob("../../examples/broken/*.txt")
	require.NoError(t, err)
	for _, path := range texts {
		_, err := os.Stat(strings.TrimSuffix(path, ".txt") + ".malt")
		assert.NoError(t, err)
	}
}
