package main

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/cmd/repository"
)

func TestTheDiffOfTidyIsColouredWhereTheTerminalTakesIt(t *testing.T) {
	path := filepath.Join(t.TempDir(), "a.malt")
	require.NoError(t, os.WriteFile(path, []byte("vessel  \"tub\" { holds 25 l }\n"), 0o600))
	_, out, _ := onScreen(true, nil, "", "tidy", "--show", path)
	assert.Contains(t, out, escape+"31m-vessel  \"tub\"")
	assert.Contains(t, out, escape+"32m+vessel \"tub\"")
	_, out, _ = onScreen(false, nil, "", "tidy", "--show", path)
	assert.NotContains(t, out, escape)
	_, out, _ = onScreen(true, map[string]string{"NO_COLOR": "1"}, "", "tidy", "--show", path)
	assert.NotContains(t, out, escape)
}

// Whatever is compared, the table stays within the terminal.
func TestComparisonsFitTheTerminal(t *testing.T) {
	files, err := filepath.Glob("../../examples/*.malt")
	require.NoError(t, err)
	require.NotEmpty(t, files)
	folder, err := filepath.Abs("../..")
	require.NoError(t, err)
	for i := range files {
		var out strings.Builder
		w := World{Out: &out, Err: &out, Folder: filepath.Join(folder, "examples"), Env: func(string) string { return "" }}
		r, err := Contrast{Old: filepath.Base(files[i]), New: filepath.Base(files[(i+1)%len(files)])}.compared(&w)
		require.NoError(t, err, out.String())
		assert.NotEmpty(t, r.Changes)
		for _, w.Width = range []int{80, 100} {
			out.Reset()
			require.NoError(t, contrastWriters["text"](&w, r))
			for _, line := range strings.Split(out.String(), "\n") {
				assert.LessOrEqual(t, len([]rune(line)), w.Width, line)
			}
		}
	}
}

// The page on version control gives what git --write sets, and the hook.
func TestThePageShowsWhatGitIsTold(t *testing.T) {
	page, err := os.ReadFile("../../docs/version-control.md")
	require.NoError(t, err)
	assert.Contains(t, string(page), repository.AttributesLine)
	assert.Contains(t, string(page), "```sh\n"+repository.Hook+"```\n")
}

// long is a process of ten thousand lines.
func long(change int) string {
	var b strings.Builder
	b.WriteString("process \"p\" {\n  steep in \"tub\" {\n")
	for i := range 9_990 {
		n := i%77 + 1
		if change > 0 && i%change == 0 {
			n++
		}
		fmt.Fprintf(&b, "  soak   %d min in water at %d °C  # batch\n", n, i%19+1)
	}
	return b.String() + "  }\n}\n"
}

func benchmark(b *testing.B, code int, args ...string) {
	folder := b.TempDir()
	require.NoError(b, os.WriteFile(filepath.Join(folder, "old.malt"), []byte(long(0)), 0o600))
	require.NoError(b, os.WriteFile(filepath.Join(folder, "new.malt"), []byte(long(50)), 0o600))
	require.NoError(b, os.WriteFile(filepath.Join(folder, "other.malt"), []byte(long(77)), 0o600))
	for b.Loop() {
		var out strings.Builder
		w := World{Out: &out, Err: &out, Folder: folder, Env: func(string) string { return "" }}
		require.Equal(b, code, Main(w, args), "%.300s", out.String())
	}
}

func BenchmarkTidyOfTenThousandLines(b *testing.B) {
	benchmark(b, ExitFindings, "tidy", "--verify", "old.malt")
}

func BenchmarkContrastOfTenThousandLines(b *testing.B) {
	benchmark(b, ExitFindings, "contrast", "old.malt", "new.malt")
}

func BenchmarkMergeOfTenThousandLines(b *testing.B) {
	benchmark(b, ExitClean, "merge", "--show", "old.malt", "new.malt", "other.malt")
}
