package main

import (
	"context"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Whatever takes long ends with its context, says so, and writes no half of an answer.
func TestEveryLongCommandCanBeInterrupted(t *testing.T) {
	ctx, cancel := context.WithCancel(t.Context())
	cancel()
	for _, args := range [][]string{
		{"check", "pale.malt"},
		{"check", "--odds", "pale.malt"},
		{"check", "--mend", "--dry-run", "pale.malt"},
		{"check", "."},
		{"forecast", "pale.malt"},
		{"forecast", "--spread", "--worst", "pale.malt"},
		{"visits", "pale.malt", "--start", "2026-03-06T07:00"},
		{"contrast", "pale.malt", "munich.malt"},
		{"follow", "batches/26-03.malt", "--at", "2026-03-10T12:00"},
		{"learn", "batches"},
		{"seasons", "batches"},
	} {
		t.Run(strings.Join(args, " "), func(t *testing.T) {
			var out, errs strings.Builder
			folder, err := filepath.Abs("../../examples")
			require.NoError(t, err)
			w := World{In: strings.NewReader(""), Out: &out, Err: &errs, Folder: folder, Env: func(string) string { return "" }, Context: ctx}
			assert.Equal(t, ExitFailed, Main(w, args))
			assert.Equal(t, "maltwright: interrupted\n", errs.String())
			assert.Empty(t, out.String())
		})
	}
}

// The size of a file in a commit is asked first: a large one is not fetched.
func TestALargeFileOfACommitIsRefusedUnread(t *testing.T) {
	if _, err := exec.LookPath("git"); err != nil {
		t.Skip("git is not installed")
	}
	folder := t.TempDir()
	run := func(args ...string) {
		t.Helper()
		cmd := exec.Command("git", append([]string{"-c", "user.name=x", "-c", "user.email=x@example.org"}, args...)...)
		cmd.Dir = folder
		out, err := cmd.CombinedOutput()
		require.NoError(t, err, string(out))
	}
	write := func(name, text string) {
		require.NoError(t, os.WriteFile(filepath.Join(folder, name), []byte(text), 0o644))
	}
	run("init", "-q")
	write("big.malt", strings.Repeat("# a line of a comment that goes on\n", 160_000))
	write("small.malt", "vessel \"tub\" { holds 25 l }\n")
	write("user.malt", "use \"big.malt\"\n")
	run("add", ".")
	run("commit", "-q", "-m", "x")
	contrast := func(old string) (int, string) {
		var out, errs strings.Builder
		w := World{In: strings.NewReader(""), Out: &out, Err: &errs, Folder: folder, Env: func(string) string { return "" }}
		return Main(w, []string{"contrast", "--brief", old, "small.malt"}), out.String() + errs.String()
	}
	code, said := contrast("HEAD:big.malt")
	assert.Equal(t, ExitFailed, code)
	assert.Contains(t, said, "HEAD:big.malt: it has 5.3 MiB, and 4 MiB is the most")

	code, _ = contrast("HEAD:user.malt")
	assert.Equal(t, ExitFindings, code, "what it uses is left out, and the rest is compared")
}
