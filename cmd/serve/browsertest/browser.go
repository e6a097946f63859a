// Package browsertest is for tests only: it drives a real browser over the pages that the program
// serves. The tests of a package share one that runs headless, with a profile that is new and gone
// when they are over, however they end; each Tab has cookies and a store of its own, unless it was
// opened beside another one. What goes wrong on the way fails the test at once, so that a test
// reads as what a person does.
//
// Where there is no Chromium the tests skip and say so.
package browsertest

import (
	"context"
	"fmt"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"sync"
	"testing"
	"time"

	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/require"
)

// patience is the longest that a browser may take for one thing, on a machine that has much else to do.
const patience = 60 * time.Second

// names are those of the program on different systems. Of MALTWRIGHT_CHROMIUM it is the first.
var names = []string{"chromium", "chromium-browser", "google-chrome", "google-chrome-stable"}

// Browser is a running browser.
type Browser struct {
	ctx  context.Context
	heir io.Writer // held, for the profile is swept when it is closed
}

// Option is what a browser is started with.
type Option func(*start)

type start struct {
	resolver string
	insecure bool
}

// Resolving takes names for other ones, as "MAP evil.test 127.0.0.1" does: whoever owns a name may
// have it lead to this machine.
func Resolving(rules string) Option { return func(s *start) { s.resolver = rules } }

// AnyCertificate takes certificates that nobody vouches for.
func AnyCertificate() Option { return func(s *start) { s.insecure = true } }

// Browsers that run, by what they were started with: to start one takes longer than most tests.
var (
	mu      sync.Mutex
	running = map[start]*Browser{}
)

// Open gives the browser that was started so in this run of the tests, or starts it. It skips the test where there is none.
func Open(t testing.TB, options ...Option) *Browser {
	t.Helper()
	path := find(t)
	var s start
	for _, option := range options {
		option(&s)
	}
	mu.Lock()
	defer mu.Unlock()
	if b := running[s]; b != nil && b.ctx.Err() == nil {
		return b
	}
	profile, err := os.MkdirTemp("", "browsertest")
	require.NoError(t, err)
	require.NoError(t, os.Mkdir(filepath.Join(profile, "tmp"), 0o700))
	heir, err := sweeper(profile)
	require.NoError(t, err)
	b, end, err := s.run(path, profile, heir)
	if heir == nil || err != nil {
		t.Cleanup(end)
	} else {
		running[s] = b
	}
	require.NoError(t, err, "the browser %s does not start", path)
	return b
}

// run starts the browser, and tells its process to the heir of the profile where there is one.
func (s start) run(path, profile string, heir io.Writer) (*Browser, func(), error) {
	flags := append(chromedp.DefaultExecAllocatorOptions[:],
		chromedp.ExecPath(path), chromedp.UserDataDir(profile), chromedp.DisableGPU, chromedp.NoSandbox,
		chromedp.Flag("disable-component-update", true),
		chromedp.Env("TZ=UTC", "LANG=C.UTF-8", "HOME="+profile, "TMPDIR="+filepath.Join(profile, "tmp")),
	)
	if s.resolver != "" {
		flags = append(flags, chromedp.Flag("host-resolver-rules", s.resolver))
	}
	if s.insecure {
		flags = append(flags, chromedp.IgnoreCertErrors)
	}
	all, ended := chromedp.NewExecAllocator(context.Background(), flags...)
	ctx, cancel := chromedp.NewContext(all)
	end := func() {
		cancel()
		ended()
		for range 20 { // its last processes may still write
			if os.RemoveAll(profile) == nil {
				return
			}
			time.Sleep(50 * time.Millisecond)
		}
	}
	if err := chromedp.Do(ctx); err != nil {
		return nil, end, err
	}
	if p := chromedp.FromContext(ctx).Browser.Process(); heir != nil && p != nil {
		if _, err := fmt.Fprintln(heir, p.Pid); err != nil {
			return nil, end, err
		}
	}
	return &Browser{ctx: ctx, heir: heir}, end, nil
}

// find gives the path of the browser.
func find(t testing.TB) string {
	t.Helper()
	for _, name := range append([]string{os.Getenv("MALTWRIGHT_CHROMIUM")}, names...) {
		if path, err := exec.LookPath(name); name != "" && err == nil {
			return path
		}
	}
	t.Skip("chromium is not installed: NOT TESTED in a browser; Debian has it as chromium, and MALTWRIGHT_CHROMIUM names another one")
	return ""
}
