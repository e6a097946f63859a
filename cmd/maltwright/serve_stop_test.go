package main

import (
	"fmt"
	"net/http"
	"net/url"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/cmd/serve/browsertest"
)

var batchLink = regexp.MustCompile(`href="(/batch/[a-z0-9]+)"`)

// atBatch is the home batch as it is under way: its clock and the address of its page.
func atBatch(w *World) {
	began := time.Now()
	w.clock = func() time.Time { return time.Date(2026, 10, 30, 12, 0, 0, 0, time.Local).Add(time.Since(began)) }
}

// batch is the path of the one batch under way.
func (s *served) batch(c *http.Client) string {
	s.t.Helper()
	_, page := asked(s.t, c, s.base()+"/")
	m := batchLink.FindStringSubmatch(page)
	require.NotNil(s.t, m, page)
	return m[1]
}

// remark is the form of a remark, written at once.
func remark(text string) url.Values {
	return url.Values{"kind": {"remark"}, "text": {text}, "write": {"sure"}}
}

// Readings are sent by several phones at once while the command is ended: each that was answered as written stands in the record once, and no other
// does; and the record reads.
func TestEndingLosesNoReading(t *testing.T) {
	folder := browsertest.Folder(t, "home")
	s := servingFolder(t, folder, atBatch)
	c := s.opens(s.page)
	c.CheckRedirect = func(*http.Request, []*http.Request) error { return http.ErrUseLastResponse }
	batch := s.batch(c)
	var mu sync.Mutex
	answered, refused := map[string]bool{}, 0
	var phones sync.WaitGroup
	for phone := range 4 {
		phones.Go(func() {
			for n := range 200 {
				text := fmt.Sprintf("phone %d says %d.", phone, n)
				r, err := c.PostForm(s.base()+batch+"/reading", remark(text))
				mu.Lock()
				switch {
				case err != nil:
					refused++
				case r.StatusCode == http.StatusSeeOther:
					answered[text] = true
				default:
					refused++
				}
				mu.Unlock()
				if err != nil {
					return
				}
				r.Body.Close()
			}
		})
	}
	require.Eventually(t, func() bool { mu.Lock(); defer mu.Unlock(); return len(answered) > 4 }, hung, time.Millisecond)
	assert.Equal(t, ExitClean, s.ends())
	phones.Wait()
	written := map[string]bool{}
	for name, text := range filesOf(t, folder) {
		for _, m := range regexp.MustCompile(`remark +"(phone [^"]*)"`).FindAllStringSubmatch(text, -1) {
			assert.False(t, written[m[1]], "%s: %s stands there twice", name, m[1])
			written[m[1]] = true
		}
	}
	assert.Equal(t, answered, written)
	t.Logf("%d written, %d refused", len(written), refused)
	code, _, errs := runIn(folder, "check", ".")
	assert.Less(t, code, ExitUsage, errs)
	left, err := filepath.Glob(filepath.Join(folder, "*.lock*"))
	require.NoError(t, err)
	assert.Empty(t, left)
}

// What stands in a name, a remark or a form is shown as it was written, by a page that runs no script.
func TestWhatIsSentIsShownAsItIs(t *testing.T) {
	s := serving(t, "home", atBatch)
	c := s.opens(s.page)
	batch := s.batch(c)
	for _, text := range []string{`<script>alert(1)</script>`, `"><img src=x onerror=alert(1)>`, `javascript:alert(1)`, `{{.Version}}`, `</textarea><script>alert(2)</script>`, "line\r\nSet-Cookie: x=y", "a\x00b", "\u202egnp.exe"} {
		r, err := c.PostForm(s.base()+batch+"/reading", remark(text))
		require.NoError(t, err)
		r.Body.Close()
		assert.Empty(t, r.Header.Get("Set-Cookie"))
		_, page := asked(t, c, s.base()+batch)
		assert.NotContains(t, page, "<script>alert")
		assert.NotContains(t, page, "<img src=x")
		assert.NotContains(t, page, "\x00")
		assert.NotContains(t, page, "\u202e")
	}
	_, page := asked(t, c, s.base()+batch)
	assert.Contains(t, page, "&lt;script&gt;alert(1)", "it is shown, and harmless")
}

// Over the wire a path may hold anything. None of it names a file.
func TestNoFileIsReadByAPath(t *testing.T) {
	folder := browsertest.Folder(t, "home")
	require.NoError(t, os.WriteFile(filepath.Join(filepath.Dir(folder), "secret.malt"), []byte("# secret\n"), 0o600))
	s := servingFolder(t, folder, atBatch)
	c := s.opens(s.page)
	for _, path := range []string{"/batch/../../secret.malt", "/batch/..%2f..%2fsecret.malt", "/batch/%2e%2e/%2e%2e/secret.malt", "/porch.malt", "/batch/porch.malt", "/batch/26-03", "/process/porch", "/.git/config", "/batch/%00", "//etc/passwd", "/batch/" + strings.Repeat("a", 9000), "/batch/26-03/report", "/debug/pprof/", "/static/../porch.malt"} {
		u, err := url.Parse(s.base())
		require.NoError(t, err)
		u.Opaque = "//" + u.Host + path
		r, err := c.Do(&http.Request{Method: http.MethodGet, URL: u, Host: u.Host, Header: http.Header{}})
		require.NoError(t, err, path)
		assert.Contains(t, []int{http.StatusNotFound, http.StatusBadRequest, http.StatusRequestURITooLong}, r.StatusCode, path)
		r.Body.Close()
		status, page := r.StatusCode, ""
		assert.NotContains(t, page, "secret", "%d", status)
	}
}

// A reader sees everything and changes nothing, by none of the forms there are.
func TestAReaderChangesNothing(t *testing.T) {
	folder := browsertest.Folder(t, "home")
	before := filesOf(t, folder)
	s := servingFolder(t, folder, atBatch)
	c := s.opens(s.reader)
	batch := s.batch(c)
	_, page := asked(t, c, s.base()+batch)
	assert.NotContains(t, page, "<form", "a page without forms")
	for _, path := range []string{batch + "/reading", batch + "/undo", "/process/x/begin", "/process/x/what-if", "/kept", "/"} {
		r, err := c.PostForm(s.base()+path, remark("a reader was here"))
		require.NoError(t, err)
		r.Body.Close()
		assert.Equal(t, http.StatusForbidden, r.StatusCode, path)
	}
	s.ends()
	assert.Equal(t, before, filesOf(t, folder))
}

func filesOf(t testing.TB, folder string) map[string]string {
	t.Helper()
	all := map[string]string{}
	require.NoError(t, filepath.WalkDir(folder, func(path string, d os.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			return err
		}
		text, err := os.ReadFile(path)
		all[path] = string(text)
		return err
	}))
	return all
}
