//go:build unix

package rewrite

import (
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"syscall"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// nobody is a user who may write nothing that is not for all.
const nobody = 65534

// editVar makes this test binary edit the file that it names, instead of testing.
const editVar = "REWRITE_EDIT"

func TestMain(m *testing.M) {
	path := os.Getenv(editVar)
	if path == "" {
		os.Exit(m.Run())
	}
	o := Options{GiveUp: time.Second, Sync: func(f *os.File) error {
		if os.Getenv("REWRITE_STOP") != "" {
			_ = syscall.Kill(os.Getpid(), syscall.SIGSTOP)
		}
		return f.Sync()
	}}
	if err := Edit(path, o, add(" by a process")); err != nil {
		os.Stderr.WriteString(err.Error())
		os.Exit(1)
	}
	os.Exit(0)
}

// process is another process that edits the file.
func process(t *testing.T, path string, env ...string) *exec.Cmd {
	t.Helper()
	self, err := os.Executable()
	require.NoError(t, err)
	cmd := exec.Command(self)
	cmd.Env = append(append(os.Environ(), editVar+"="+path), env...)
	return cmd
}

func TestAPipeInPlaceOfALockIsNotWaitedFor(t *testing.T) {
	path := write(t, 0o644)
	require.NoError(t, syscall.Mkfifo(lockName(path), 0o644))
	assert.ErrorContains(t, Edit(path, Options{}, to("new")), "is no regular file, and so no lock")
	holds(t, path, "old")
}

// A holder that is stopped holds its lock: who comes after it gives up, and when it goes
// on nothing is lost. One that is killed holds up nobody.
func TestAHolderThatIsStoppedOrKilled(t *testing.T) {
	path := write(t, 0o644)
	holder := process(t, path, "REWRITE_STOP=1")
	require.NoError(t, holder.Start())
	var status syscall.WaitStatus
	_, err := syscall.Wait4(holder.Process.Pid, &status, syscall.WUNTRACED, nil)
	require.NoError(t, err)
	require.True(t, status.Stopped())
	o := Options{GiveUp: 50 * time.Millisecond}
	assert.ErrorContains(t, Edit(path, o, add(" by a test")), "is stopped")
	holds(t, path, "old")
	Sweep(path)
	left, err := filepath.Glob(filepath.Join(filepath.Dir(path), ".pale.malt.new-*"))
	require.NoError(t, err)
	assert.Len(t, left, 1, "what the stopped one writes stays")

	require.NoError(t, holder.Process.Signal(syscall.SIGCONT))
	require.NoError(t, holder.Wait())
	require.NoError(t, Edit(path, o, add(" by a test")))
	holds(t, path, "old by a process by a test")

	holder = process(t, path, "REWRITE_STOP=1")
	require.NoError(t, holder.Start())
	_, err = syscall.Wait4(holder.Process.Pid, &status, syscall.WUNTRACED, nil)
	require.NoError(t, err)
	require.NoError(t, holder.Process.Kill())
	_ = holder.Wait()
	require.NoError(t, Edit(path, o, add(" again")))
	holds(t, path, "old by a process by a test again")
	alone(t, path)
}

// shared is a file in a folder that everybody may write, and this binary beside it, where
// another user may run it.
func shared(t *testing.T) (path string, edit func() string) {
	t.Helper()
	if os.Geteuid() != 0 {
		t.Skip("only the superuser can run a program as another")
	}
	folder, err := os.MkdirTemp("", "rewrite")
	require.NoError(t, err)
	t.Cleanup(func() { os.RemoveAll(folder) })
	require.NoError(t, os.Chmod(folder, 0o777))
	self, err := os.Executable()
	require.NoError(t, err)
	program, err := os.ReadFile(self)
	require.NoError(t, err)
	bin := filepath.Join(folder, "edit")
	require.NoError(t, os.WriteFile(bin, program, 0o755))
	path = filepath.Join(folder, "pale.malt")
	require.NoError(t, os.WriteFile(path, []byte("old"), 0o644))
	return path, func() string {
		cmd := process(t, path)
		cmd.Path, cmd.Args = bin, []string{bin}
		cmd.SysProcAttr = &syscall.SysProcAttr{Credential: &syscall.Credential{Uid: nobody, Gid: nobody}}
		out, err := cmd.CombinedOutput()
		if err != nil && !strings.HasPrefix(err.Error(), "exit status") {
			t.Skipf("the program could not be run as another user: %v", err)
		}
		return string(out)
	}
}

func TestAFileOfAnotherIsLeftAlone(t *testing.T) {
	path, edit := shared(t)
	assert.Contains(t, edit(), "it may not be written by you")
	holds(t, path, "old")
	require.NoError(t, os.Chmod(path, 0o666))
	assert.Contains(t, edit(), "it belongs to another, and would become yours")
	holds(t, path, "old")
	require.NoError(t, os.Chown(path, nobody, 0))
	assert.Contains(t, edit(), "it belongs to a group that you are not in")
	holds(t, path, "old")
	require.NoError(t, os.Chown(path, nobody, nobody))
	require.NoError(t, os.WriteFile(lockName(path), nil, 0o600))
	assert.Contains(t, edit(), "is the lock of somebody else, and may not be opened")
	holds(t, path, "old")
	require.NoError(t, os.Chmod(lockName(path), 0o644))
	assert.Empty(t, edit())
	holds(t, path, "old by a process")
	left, err := filepath.Glob(filepath.Join(filepath.Dir(path), ".*"))
	require.NoError(t, err)
	assert.Empty(t, left)
}

func TestOwnerAndGroupAreKept(t *testing.T) {
	if os.Geteuid() != 0 {
		t.Skip("only the superuser can give files away")
	}
	path := write(t, 0o640)
	require.NoError(t, os.Chown(path, 1234, 4321))
	require.NoError(t, Edit(path, Options{}, to("new")))
	holds(t, path, "new")
	info, err := os.Stat(path)
	require.NoError(t, err)
	owner, _, err := ownershipOf(nil, info)
	require.NoError(t, err)
	assert.Equal(t, ownership{1234, 4321}, owner)
	assert.Equal(t, os.FileMode(0o640), info.Mode().Perm())
}
