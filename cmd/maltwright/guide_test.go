package main

import (
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"maltwright/lang/source/golden"
)

// longSums skips what makes thousands of forecasts under the race detector. The packages
// that make them have tests of their own with it.
func longSums(t *testing.T) {
	t.Helper()
	if golden.Raced {
		t.Skip("thousands of forecasts take minutes under the race detector; go test without -race runs it")
	}
}

const guide = "../../docs/batch.md"

// guideShows compares the example in the guide that begins so with what the program
// prints.
func guideShows(t *testing.T, opening, real string) {
	t.Helper()
	page, err := os.ReadFile(guide)
	require.NoError(t, err)
	before, rest, ok := strings.Cut(string(page), "```text\n"+opening)
	require.True(t, ok, "no example begins with %q", opening)
	example, after, ok := strings.Cut(rest, "```")
	require.True(t, ok)
	if golden.Updating() {
		require.NoError(t, os.WriteFile(guide, []byte(before+"```text\n"+real+"```"+after), 0o644))
		return
	}
	golden.Same(t, guide, opening+example, real)
}
