//go:build unix

package main

import (
	"errors"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"syscall"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// nobody is a user who may write nothing that is not for all.
const nobody = 65534

// In a folder that may not be written one clear line says so, and the file is as it
// was. The superuser may write everywhere, and runs the program as another.
func TestAFolderThatMayNotBeWritten(t *testing.T) {
	folder, err := os.MkdirTemp("", "mend")
	require.NoError(t, err)
	t.Cleanup(func() { _ = os.Chmod(folder, 0o755); _ = os.RemoveAll(folder) })
	self, err := os.Executable()
	require.NoError(t, err)
	text, err := os.ReadFile(self)
	require.NoError(t, err)
	bin := filepath.Join(folder, "maltwright")
	require.NoError(t, os.WriteFile(bin, text, 0o755))
	wrong, _ := slips(1)
	path := filepath.Join(folder, "site.malt")
	require.NoError(t, os.WriteFile(path, []byte(wrong), 0o644))
	if os.Geteuid() == 0 {
		require.NoError(t, os.Chown(path, nobody, nobody))
	}
	require.NoError(t, os.Chmod(folder, 0o555))

	cmd := exec.Command(bin, "check", "--mend", "site.malt")
	cmd.Dir = folder
	var out, errs strings.Builder
	cmd.Stdout, cmd.Stderr = &out, &errs
	if os.Geteuid() == 0 {
		cmd.SysProcAttr = &syscall.SysProcAttr{Credential: &syscall.Credential{Uid: nobody, Gid: nobody}}
	}
	var exit *exec.ExitError
	if err := cmd.Run(); !errors.As(err, &exit) {
		t.Skipf("the program could not be run as another user: %v", err)
	}
	assert.Equal(t, ExitFailed, exit.ExitCode())
	assert.Equal(t, "maltwright: site.malt: nothing may be written in its folder\n", errs.String())
	assert.Empty(t, out.String())
	now, err := os.ReadFile(path)
	require.NoError(t, err)
	assert.Equal(t, wrong, string(now))
	left, err := filepath.Glob(filepath.Join(folder, ".*"))
	require.NoError(t, err)
	assert.Empty(t, left, "no temporary file stays behind")
}
