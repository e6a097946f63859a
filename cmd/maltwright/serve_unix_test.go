//go:build unix

package main

import (
	"errors"
	"fmt"
	"io"
	"net"
	"net/url"
	"os"
	"os/exec"
	"path/filepath"
	"syscall"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/cmd/serve/browsertest"
)

// servedProgram runs the command as a program of its own.
func servedProgram(t testing.TB, args ...string) (*served, *exec.Cmd) {
	t.Helper()
	self, err := os.Executable()
	require.NoError(t, err)
	link := filepath.Join(t.TempDir(), "maltwright") // by its name the test's own program is the command; see TestMain
	if err := os.Symlink(self, link); err != nil {
		t.Skipf("no links here: %v", err)
	}
	s := &served{t: t, folder: browsertest.Folder(t, "home"), said: &heard{}}
	cmd := exec.Command(link, append([]string{"serve"}, args...)...)
	cmd.Dir, cmd.Stdout, cmd.Stderr = s.folder, s.said, s.said
	cmd.Env = append(os.Environ(), "TZ=UTC", "XDG_CACHE_HOME="+t.TempDir(), "GORACE=atexit_sleep_ms=0")
	require.NoError(t, cmd.Start())
	t.Cleanup(func() { _ = cmd.Process.Kill() })
	require.Eventually(t, s.finds, hung, 10*time.Millisecond)
	return s, cmd
}

// ended waits for a program to end.
func ended(t testing.TB, cmd *exec.Cmd) error {
	t.Helper()
	done := make(chan error, 1)
	go func() { done <- cmd.Wait() }()
	select {
	case err := <-done:
		return err
	case <-time.After(hung):
		t.Fatal("the program does not end")
		return nil
	}
}

func TestASignalEndsItInOrder(t *testing.T) {
	for _, signal := range []syscall.Signal{syscall.SIGINT, syscall.SIGTERM, syscall.SIGHUP} {
		s, cmd := servedProgram(t)
		require.NoError(t, cmd.Process.Signal(signal))
		assert.NoError(t, ended(t, cmd), signal)
		assert.Contains(t, s.said.String(), "\nended; what was sent is answered\n", signal)
	}
}

// A form that does not come to its end keeps the program for a while; a second signal does not wait for it.
func TestASecondSignalEndsItAtOnce(t *testing.T) {
	s, cmd := servedProgram(t)
	c := s.opens(s.page)
	u, err := url.Parse(s.base())
	require.NoError(t, err)
	half, err := net.Dial("tcp", u.Host)
	require.NoError(t, err)
	defer half.Close()
	fmt.Fprintf(half, "POST %s/reading HTTP/1.1\r\nHost: %s\r\nCookie: %s\r\nContent-Type: application/x-www-form-urlencoded\r\nContent-Length: 1000\r\nExpect: 100-continue\r\n\r\n", s.batch(c), u.Host, c.Jar.Cookies(u)[0])
	begun := make([]byte, 12)
	_, err = io.ReadFull(half, begun) // the handler reads: "HTTP/1.1 100"
	require.NoError(t, err)
	require.Equal(t, "HTTP/1.1 100", string(begun))
	require.NoError(t, cmd.Process.Signal(syscall.SIGINT))
	time.Sleep(300 * time.Millisecond)
	_, err = net.DialTimeout("tcp", u.Host, hung)
	assert.Error(t, err, "it takes nothing new")
	assert.NotContains(t, s.said.String(), "ended")
	require.NoError(t, cmd.Process.Signal(syscall.SIGINT))
	var exit *exec.ExitError
	require.True(t, errors.As(ended(t, cmd), &exit))
	assert.Equal(t, syscall.SIGINT, exit.Sys().(syscall.WaitStatus).Signal()) //nolint:forcetypeassert // on unix
}
