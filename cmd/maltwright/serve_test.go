package main

import (
	"bytes"
	"context"
	"io"
	"net/http"
	"net/http/cookiejar"
	"net/netip"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"sync"
	"sync/atomic"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/cmd/serve/browsertest"
	"maltwright/cmd/serve/guard"
)

// served is the command as it runs.
type served struct {
	t                        testing.TB
	folder                   string
	page, reader, calendarAt string
	said                     *heard
	end                      func()
	code                     chan int
}

// heard is what a command writes while it runs.
type heard struct {
	mu   sync.Mutex
	text bytes.Buffer
}

func (h *heard) Write(p []byte) (int, error) {
	h.mu.Lock()
	defer h.mu.Unlock()
	return h.text.Write(p)
}

func (h *heard) String() string {
	h.mu.Lock()
	defer h.mu.Unlock()
	return h.text.String()
}

var servedRow = regexp.MustCompile(`(?m)^  (page|to read|calendar) +(http\S+)$`)

// serving runs the command over a folder of the examples, until the test ends.
func serving(t testing.TB, of string, change func(*World), args ...string) *served {
	t.Helper()
	return servingFolder(t, browsertest.Folder(t, of), change, args...)
}

func servingFolder(t testing.TB, folder string, change func(*World), args ...string) *served {
	t.Helper()
	ctx, cancel := context.WithCancel(context.Background())
	s := &served{t: t, folder: folder, said: &heard{}, end: cancel, code: make(chan int, 1)}
	w := World{In: strings.NewReader(""), Out: s.said, Err: s.said, Folder: folder, Env: func(string) string { return "" }, Context: ctx}
	if change != nil {
		change(&w)
	}
	go func() { s.code <- Main(w, append([]string{"serve", "--no-browser"}, args...)) }()
	t.Cleanup(func() { s.ends() })
	require.Eventually(t, func() bool { return s.finds() || len(s.code) > 0 }, hung, 5*time.Millisecond)
	require.NotEmpty(t, s.page, s.said.String())
	return s
}

func (s *served) finds() bool {
	for _, m := range servedRow.FindAllStringSubmatch(s.said.String(), -1) {
		*map[string]*string{"page": &s.page, "to read": &s.reader, "calendar": &s.calendarAt}[m[1]] = m[2]
	}
	return s.calendarAt != ""
}

// ends ends the command as Ctrl-C does, and gives its exit code.
func (s *served) ends() int {
	s.end()
	select {
	case code := <-s.code:
		s.code <- code
		return code
	case <-time.After(hung):
		s.t.Error("the command does not end")
		return -1
	}
}

func (s *served) base() string { return s.page[:strings.Index(s.page, "/K/")] }

// opens is a client that came by a link.
func (s *served) opens(link string) *http.Client {
	s.t.Helper()
	jar, err := cookiejar.New(nil)
	require.NoError(s.t, err)
	c := &http.Client{Jar: jar, Timeout: hung}
	s.t.Cleanup(c.CloseIdleConnections)
	r, err := c.Get(link)
	require.NoError(s.t, err)
	defer r.Body.Close()
	require.Equal(s.t, http.StatusOK, r.StatusCode)
	return c
}

func asked(t testing.TB, c *http.Client, address string) (int, string) {
	t.Helper()
	r, err := c.Get(address)
	require.NoError(t, err)
	defer r.Body.Close()
	b, err := io.ReadAll(r.Body)
	require.NoError(t, err)
	return r.StatusCode, string(b)
}

func TestAFolderIsServedToWhoeverHasItsAddress(t *testing.T) {
	s := serving(t, "home", nil)
	status, _ := asked(t, &http.Client{Timeout: hung}, s.base()+"/")
	assert.Equal(t, http.StatusUnauthorized, status)
	status, page := asked(t, s.opens(s.page), s.base()+"/")
	assert.Equal(t, http.StatusOK, status)
	assert.Contains(t, page, "26-03")
	assert.NotContains(t, page, "This link shows, and writes nothing")
	_, page = asked(t, s.opens(s.reader), s.base()+"/")
	assert.Contains(t, page, "This link shows, and writes nothing")
	status, _ = asked(t, s.opens(s.page), s.base()+"/style.css")
	assert.Equal(t, http.StatusOK, status)

	assert.Equal(t, ExitClean, s.ends())
	said := s.said.String()
	assert.Regexp(t, `^The page of \S+, on this machine alone\.\n`, said)
	assert.Regexp(t, `ended; what was sent is answered\n$`, said)
	_, err := http.Get(s.base()) //nolint:bodyclose // there is no answer
	assert.Error(t, err, "nobody is there any more")
}

// What knows the page finds it when it is served anew: the calendar by its address, a browser by the port.
func TestTheCalendarHasTheSameAddressFromOneRunToTheNext(t *testing.T) {
	folder, cache := browsertest.Folder(t, "home"), t.TempDir()
	kept := func(w *World) { w.Cache = cache }
	first := servingFolder(t, folder, kept)
	first.ends()
	second := servingFolder(t, folder, kept)
	assert.Equal(t, first.calendarAt, second.calendarAt)
	assert.NotEqual(t, first.page, second.page, "the other tokens are of one run")
	third := servingFolder(t, folder, kept)
	assert.NotEqual(t, second.base(), third.base(), "two at once have two ports")
	other := serving(t, "home", kept)
	assert.NotEqual(t, first.calendarAt[strings.Index(first.calendarAt, "key="):], other.calendarAt[strings.Index(other.calendarAt, "key="):])
	files, err := filepath.Glob(filepath.Join(cache, "*.kept"))
	require.NoError(t, err)
	for _, name := range files {
		info, err := os.Stat(name)
		require.NoError(t, err)
		if info.Mode().Perm()&0o077 != 0 && info.Size() < 64 {
			t.Errorf("%s can be read by others: %s", name, info.Mode())
		}
	}
}

func TestItEndsWhenItsTimeIsOver(t *testing.T) {
	s := serving(t, "home", nil, "--hours", "0.0001")
	require.Eventually(t, func() bool { return len(s.code) > 0 }, hung, 10*time.Millisecond)
	assert.Equal(t, ExitClean, s.ends())
	assert.Contains(t, s.said.String(), "ended: its time is over")
	assert.Contains(t, s.said.String(), "It ends on ")
}

// A laptop that slept wakes up behind the time that was said: its timers stood still.
func TestItEndsByTheClockOnTheWall(t *testing.T) {
	var woken atomic.Bool
	s := serving(t, "home", func(w *World) {
		w.looking = time.Millisecond
		w.clock = func() time.Time {
			if woken.Load() {
				return time.Now().Add(13 * time.Hour).Round(0)
			}
			return time.Now()
		}
	}, "--hours", "12")
	woken.Store(true)
	require.Eventually(t, func() bool { return len(s.code) > 0 }, hung, 10*time.Millisecond)
	assert.Equal(t, ExitClean, s.ends())
	assert.Contains(t, s.said.String(), "ended: its time is over")
}

var inNetwork = func(w *World) {
	w.networks = func() ([]guard.Interface, error) {
		return []guard.Interface{{Name: "wlan0", Address: netip.MustParseAddr("10.8.9.10")}, {Name: "eth0", Address: netip.MustParseAddr("192.168.1.20")}}, nil
	}
}

func TestWhatCannotBeServedIsSaid(t *testing.T) {
	folder := browsertest.Folder(t, "home")
	for _, c := range []struct {
		args string
		code int
		says string
	}{
		{"--lan 0.0.0.0", ExitUsage, "maltwright: --lan: 0.0.0.0 stands for every network this machine is in; name one address: this machine has 10.8.9.10 (wlan0), 192.168.1.20 (eth0)\n"},
		{"--lan ::", ExitUsage, "--lan: :: stands for every network"},
		{"--lan [::]", ExitUsage, "--lan: :: stands for every network"},
		{"--lan 192.168.1.21", ExitUsage, "--lan: 192.168.1.21 is no address of this machine; this machine has 10.8.9.10 (wlan0), 192.168.1.20 (eth0)\n"},
		{"--lan 127.0.0.1", ExitUsage, "127.0.0.1 is reached from this machine alone, and that is so without --lan"},
		{"--lan fe80::1", ExitUsage, "fe80::1 holds for one cable alone"},
		{"--lan fe80::1%eth0", ExitUsage, "holds for one cable alone"},
		{"--lan malt.home", ExitUsage, `"malt.home" is no address, as 192.168.1.20 is`},
		{"--lan 192.168.1.20:80", ExitUsage, "is no address"},
		{"--port 70000", ExitUsage, "--port 70000: a port is a number from 1 to 65535"},
		{"--port -1", ExitUsage, ""},
		{"--hours NaN", ExitUsage, "--hours NaN: a number of hours"},
		{"--hours 100000", ExitUsage, "--hours 100000: a number of hours, up to a year"},
		{"--cert a.pem", ExitUsage, "--cert and --key go together"},
		{"--cert a.pem --key a.key", ExitFailed, "a.pem: there is no such file"},
		{"--cert porch.malt --key porch.malt", ExitFailed, "porch.malt: certificate and key do not fit"},
		{"nowhere", ExitFailed, "nowhere: there is no such file"},
		{"porch.malt", ExitUsage, "porch.malt is no folder"},
	} {
		var out, errs strings.Builder
		w := World{In: strings.NewReader(""), Out: &out, Err: &errs, Folder: folder, Env: func(string) string { return "" }}
		inNetwork(&w)
		assert.Equal(t, c.code, Main(w, append([]string{"serve"}, strings.Fields(c.args)...)), c.args)
		assert.Contains(t, errs.String(), c.says, c.args)
		assert.Empty(t, out.String(), c.args)
	}
	var out strings.Builder
	w := World{Out: &out, Err: &out, Folder: folder}
	inNetwork(&w)
	assert.Equal(t, ExitClean, Main(w, []string{"serve", "--lan", "list"}))
	assert.Equal(t, "10.8.9.10        wlan0\n192.168.1.20     eth0\n", out.String())
	taken := serving(t, "home", nil)
	code, _, errs := runIn(folder, "serve", "--port", regexp.MustCompile(`:(\d+)`).FindStringSubmatch(taken.base())[1])
	assert.Equal(t, ExitFailed, code)
	assert.Regexp(t, `port \d+ is taken`, errs)
}

// ownAddress is an address by which others reach this machine.
func ownAddress(t testing.TB) netip.Addr {
	t.Helper()
	list, err := guard.Interfaces()
	require.NoError(t, err)
	if len(list) == 0 {
		t.Skip("this machine is in no network: --lan is NOT TESTED")
	}
	return list[0].Address
}

// At the end of a record everybody may go.
func TestInANetworkItEndsWithTheBatch(t *testing.T) {
	folder := browsertest.Folder(t, "home")
	began := time.Date(2026, 10, 24, 12, 0, 0, 0, time.Local)
	var mu sync.Mutex
	now := began
	s := servingFolder(t, folder, func(w *World) {
		w.looking = 5 * time.Millisecond
		w.clock = func() time.Time {
			mu.Lock()
			defer mu.Unlock()
			return now
		}
	}, "--lan", ownAddress(t).String(), "--hours", "8000")
	assert.Contains(t, s.said.String(), "Plain HTTP can be overheard")
	assert.Contains(t, s.said.String(), ", with the last batch, or by Ctrl-C.")
	_, page := asked(t, s.opens(s.page), s.base()+"/")
	assert.Contains(t, page, "26-03")
	time.Sleep(200 * time.Millisecond)
	assert.Empty(t, s.code, "a batch is under way")
	mu.Lock()
	now = began.AddDate(0, 3, 0)
	mu.Unlock()
	require.Eventually(t, func() bool { return len(s.code) > 0 }, hung, 10*time.Millisecond)
	assert.Contains(t, s.said.String(), "ended: no batch is under way any more")
}

func TestABrowserIsOpenedWhereThereIsOneToSee(t *testing.T) {
	env := func(pairs ...string) func(string) string {
		return func(name string) string {
			for i := 0; i < len(pairs); i += 2 {
				if pairs[i] == name {
					return pairs[i+1]
				}
			}
			return ""
		}
	}
	for _, c := range []struct {
		system string
		env    func(string) string
		name   string
	}{
		{"linux", env("DISPLAY", ":0"), "xdg-open"},
		{"linux", env("WAYLAND_DISPLAY", "wayland-0"), "xdg-open"},
		{"linux", env(), ""},
		{"linux", env("DISPLAY", ":10", "SSH_CONNECTION", "1 2 3 4"), ""},
		{"darwin", env(), "open"},
		{"darwin", env("SSH_TTY", "/dev/tty"), ""},
		{"windows", env(), "rundll32"},
		{"freebsd", env("DISPLAY", ":0"), "xdg-open"},
	} {
		name, _ := opener(c.system, c.env)
		assert.Equal(t, c.name, name, c.system)
	}
	opened := make(chan string, 1)
	s := servingOpened(t, opened)
	address := <-opened
	assert.NotEqual(t, s.page, address, "what a program is started with is seen by all")
	status, page := asked(t, s.opens(address), s.base()+"/")
	assert.Equal(t, http.StatusOK, status)
	assert.NotContains(t, page, "writes nothing")
	status, _ = asked(t, &http.Client{Timeout: hung}, address)
	assert.Equal(t, http.StatusUnauthorized, status, "it opens once")
}

// servingOpened runs the command as on a terminal.
func servingOpened(t testing.TB, opened chan string) *served {
	t.Helper()
	folder := browsertest.Folder(t, "home")
	ctx, cancel := context.WithCancel(context.Background())
	s := &served{t: t, folder: folder, said: &heard{}, end: cancel, code: make(chan int, 1)}
	w := World{In: strings.NewReader(""), Out: s.said, Err: s.said, Folder: folder, Terminal: true, Width: 80, Context: ctx,
		Env: func(string) string { return "" }, browser: func(address string) { opened <- address }}
	go func() { s.code <- Main(w, []string{"serve"}) }()
	t.Cleanup(func() { s.ends() })
	require.Eventually(t, s.finds, hung, 5*time.Millisecond)
	return s
}
