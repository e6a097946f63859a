package main

import (
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// program is this test binary run as maltwright.
func program(t *testing.T, args ...string) *exec.Cmd {
	t.Helper()
	self, err := os.Executable()
	require.NoError(t, err)
	cmd := exec.Command(self)
	cmd.Args = append([]string{"maltwright"}, args...)
	return cmd
}

// slips is a file with so many sites in it, each with a misspelt word, and the same
// put right.
func slips(n int) (wrong, right string) {
	var b strings.Builder
	for i := range n {
		fmt.Fprintf(&b, "site \"Loft %d\" { watter 9 to 12 °C }\n", i)
	}
	return b.String(), strings.ReplaceAll(b.String(), "watter", "water")
}

// A program that is killed at any moment leaves the old text or the new one, whole.
func TestKilledWhileMendingLeavesOneTextOrTheOther(t *testing.T) {
	wrong, right := slips(60)
	folder := t.TempDir()
	path := filepath.Join(folder, "sites.malt")
	began := time.Now()
	require.NoError(t, os.WriteFile(path, []byte(wrong), 0o640))
	out, err := program(t, "check", "--mend", path).CombinedOutput()
	require.NoError(t, err, "%s", out)
	whole := time.Since(began)
	old, mended := 0, 0
	const tries = 12
	for i := range tries {
		require.NoError(t, os.WriteFile(path, []byte(wrong), 0o640))
		cmd := program(t, "check", "--mend", path)
		require.NoError(t, cmd.Start())
		time.Sleep(whole * time.Duration(i) / tries)
		_ = cmd.Process.Kill()
		_ = cmd.Wait()
		text, err := os.ReadFile(path)
		require.NoError(t, err)
		switch string(text) {
		case wrong:
			old++
		case right:
			mended++
		default:
			assert.Failf(t, "neither the old nor the new text", "%d bytes", len(text))
		}
	}
	assert.Equal(t, tries, old+mended)
	assert.Positive(t, old, "one at least was killed before it was done")
}

func TestMendingKeepsTheModeOfTheFile(t *testing.T) {
	if runtime.GOOS == "windows" {
		t.Skip("no modes here")
	}
	wrong, right := slips(1)
	path := filepath.Join(t.TempDir(), "site.malt")
	require.NoError(t, os.WriteFile(path, []byte(wrong), 0o600))
	require.NoError(t, os.Chmod(path, 0o604))
	out, err := program(t, "check", "--mend", path).CombinedOutput()
	require.NoError(t, err, "%s", out)
	text, err := os.ReadFile(path)
	require.NoError(t, err)
	assert.Equal(t, right, string(text))
	info, err := os.Stat(path)
	require.NoError(t, err)
	assert.Equal(t, os.FileMode(0o604), info.Mode().Perm())
}
