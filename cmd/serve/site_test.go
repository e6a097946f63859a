package serve

import (
	"context"
	"encoding/json"
	"io"
	"net/http"
	"net/http/httptest"
	"net/url"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"sync/atomic"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"maltwright/cmd/folder"
)

// site is a folder that is served to a test, with a clock that the test sets.
type site struct {
	http.Handler
	t      testing.TB
	clock  atomic.Pointer[time.Time] // a page asks for it by itself, too
	folder string
	reader bool
}

// siteOf serves a copy of a folder of the examples as of a time.
func siteOf(t testing.TB, of, at string) *site {
	t.Helper()
	s := &site{t: t, folder: t.TempDir()}
	s.at(at)
	if of != "" {
		require.NoError(t, os.CopyFS(s.folder, os.DirFS(filepath.Join("../../examples", of))))
	}
	d, err := folder.Open(s.folder, folder.Options{Clock: s.now})
	require.NoError(t, err)
	t.Cleanup(func() { _ = d.Close() })
	s.Handler = New(d, Options{Clock: s.now, MayWrite: s.mayWrite})
	return s
}

func (s *site) at(stamped string) {
	s.t.Helper()
	now, err := time.ParseInLocation(stamp, stamped, time.Local)
	require.NoError(s.t, err)
	s.clock.Store(&now)
}

func (s *site) now() time.Time { return *s.clock.Load() }

func (s *site) later(by time.Duration) {
	now := s.now().Add(by)
	s.clock.Store(&now)
}

// without leaves lines out of a file of the folder, from the first that holds a text on.
func (s *site) without(name, from string) {
	s.t.Helper()
	text := s.read(name)
	at := strings.Index(text, from)
	require.Positive(s.t, at)
	s.put(name, text[:at]+"}\n")
}

func (s *site) read(name string) string {
	s.t.Helper()
	text, err := os.ReadFile(filepath.Join(s.folder, name))
	require.NoError(s.t, err)
	return string(text)
}

// squeezed is a file of the folder with each run of blanks as one.
func (s *site) squeezed(name string) string {
	s.t.Helper()
	return strings.Join(strings.Fields(s.read(name)), " ")
}

func (s *site) put(name, text string) {
	s.t.Helper()
	require.NoError(s.t, os.WriteFile(filepath.Join(s.folder, name), []byte(text), 0o600))
}

// reply is what came back.
type reply struct {
	status int
	body   string
	to     string // where it leads
	head   http.Header
}

func (s *site) do(r *http.Request) reply {
	s.t.Helper()
	w := httptest.NewRecorder()
	s.ServeHTTP(w, r)
	body, err := io.ReadAll(w.Result().Body)
	require.NoError(s.t, err)
	return reply{w.Code, string(body), w.Header().Get("Location"), w.Header()}
}

func (s *site) get(path string) reply {
	s.t.Helper()
	path, _, _ = strings.Cut(path, "#") // a browser keeps that to itself
	return s.do(httptest.NewRequest(http.MethodGet, path, nil))
}

// post sends a form, given as names and values.
func (s *site) post(path string, form ...string) reply {
	s.t.Helper()
	v := url.Values{}
	for i := 0; i < len(form); i += 2 {
		v.Add(form[i], form[i+1])
	}
	return s.send(path, v)
}

func (s *site) send(path string, v url.Values) reply {
	s.t.Helper()
	r := httptest.NewRequest(http.MethodPost, path, strings.NewReader(v.Encode()))
	r.Header.Set("Content-Type", "application/x-www-form-urlencoded")
	return s.do(r)
}

// page is a page that must be there.
func (s *site) page(path string) string {
	s.t.Helper()
	a := s.get(path)
	require.Equal(s.t, http.StatusOK, a.status, "%s: %s", path, a.body)
	return a.body
}

// linked is the address behind a text of a page.
func linked(t testing.TB, page, text string) string {
	t.Helper()
	for _, m := range regexp.MustCompile(`(?s)<a [^>]*href="([^"]*)"[^>]*>(.*?)</a>`).FindAllStringSubmatch(page, -1) {
		if strings.Contains(m[2], text) {
			return m[1]
		}
	}
	require.Fail(t, "no link", "%q in %s", text, page)
	return ""
}

// fields are those of a form that are sent by its button of a name and a value.
func fields(t testing.TB, page, action string) url.Values {
	t.Helper()
	form := regexp.MustCompile(`(?s)<form method="post" action="` + regexp.QuoteMeta(action) + `".*?</form>`).FindString(page)
	require.NotEmpty(t, form, "no form for %s in %s", action, page)
	v := url.Values{}
	for _, m := range regexp.MustCompile(`<input type="hidden" name="([^"]*)" value="([^"]*)">`).FindAllStringSubmatch(form, -1) {
		v.Add(m[1], unescaped(m[2]))
	}
	return v
}

func unescaped(text string) string {
	return strings.NewReplacer("&#34;", `"`, "&#39;", "'", "&lt;", "<", "&gt;", ">", "&#43;", "+", "&amp;", "&").Replace(text)
}

// plain is the text of a page without its marks.
func plain(page string) string {
	if _, body, found := strings.Cut(page, "<body"); found {
		page = body
	}
	return strings.Join(strings.Fields(unescaped(regexp.MustCompile(`<[^>]*>`).ReplaceAllString(page, " "))), " ")
}

func (s *site) mayWrite(context.Context) bool { return !s.reader }

func folderID(batch string) folder.ID { return folder.ID(strings.TrimPrefix(batch, "/batch/")) }

// sendKept sends readings as the script does that kept them, and gives what became of each.
func (s *site) sendKept(list ...sent) map[string]outcome {
	s.t.Helper()
	body, err := json.Marshal(list)
	require.NoError(s.t, err)
	r := httptest.NewRequest(http.MethodPost, "/kept", strings.NewReader(string(body)))
	r.Header.Set("Content-Type", "application/json")
	a := s.do(r)
	require.Equal(s.t, http.StatusOK, a.status, a.body)
	var got []outcome
	require.NoError(s.t, json.Unmarshal([]byte(a.body), &got))
	by := map[string]outcome{}
	for _, o := range got {
		by[o.Own] = o
	}
	return by
}

func replaced(t testing.TB, text, old, to string) string {
	t.Helper()
	require.Equal(t, 1, strings.Count(text, old), old)
	return strings.Replace(text, old, to, 1)
}
