package guard

import (
	"fmt"
	"io"
	"net/http"
	"net/http/httptest"
	"net/netip"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// desk is a guard around a handler that keeps what is written.
type desk struct {
	*Guard
	mu      sync.Mutex
	written []string
	logged  []string
	now     time.Time
}

func newDesk(change func(*Options)) *desk {
	d := &desk{now: time.Date(2026, 3, 6, 7, 0, 0, 0, time.UTC)}
	o := Options{Hosts: []string{"127.0.0.1:8080", "localhost:8080", "[::1]:8080"}, Write: NewToken(), Read: NewToken(), Calendar: NewToken(),
		Clock: func() time.Time { return d.now },
		Log: func(line string) {
			d.mu.Lock()
			defer d.mu.Unlock()
			d.logged = append(d.logged, line)
		}}
	if change != nil {
		change(&o)
	}
	d.Guard = Around(http.HandlerFunc(d.page), o)
	return d
}

func (d *desk) page(w http.ResponseWriter, r *http.Request) {
	switch {
	case r.URL.Path == "/breaks":
		panic("a mistake\n500 forged")
	case r.URL.Path == "/breaks-late":
		fmt.Fprint(w, "half a page")
		panic("a mistake")
	case r.Method == http.MethodPost:
		if err := r.ParseForm(); err != nil {
			http.Error(w, err.Error(), http.StatusRequestEntityTooLarge)
			return
		}
		d.mu.Lock()
		d.written = append(d.written, r.FormValue("words"))
		d.mu.Unlock()
		http.Redirect(w, r, "/", http.StatusSeeOther)
		return
	}
	fmt.Fprintf(w, "%s?%s may write: %v", r.URL.Path, r.URL.RawQuery, MayWrite(r.Context()))
}

// asks sends a request as a change makes it.
func (d *desk) asks(method, target string, change ...func(*http.Request)) *http.Response {
	body := io.Reader(http.NoBody)
	if method == http.MethodPost {
		body = strings.NewReader("words=weighed+7.48+kg")
	}
	r := httptest.NewRequest(method, "http://127.0.0.1:8080/", body)
	if method == http.MethodPost {
		r.Header.Set("Content-Type", "application/x-www-form-urlencoded")
	}
	r.RequestURI = target
	path, query, _ := strings.Cut(target, "?")
	r.URL.Path, r.URL.RawQuery = path, query
	if strings.Contains(path, "%") {
		r.URL.RawPath = path
	}
	for _, c := range change {
		c(r)
	}
	w := httptest.NewRecorder()
	d.ServeHTTP(w, r)
	return w.Result()
}

// as gives a request the cookie that a link gives.
func (d *desk) as(t testing.TB, token Token) func(*http.Request) {
	t.Helper()
	answer := d.asks(http.MethodGet, way+string(token))
	require.Equal(t, http.StatusSeeOther, answer.StatusCode)
	require.Len(t, answer.Cookies(), 1)
	return func(r *http.Request) { r.AddCookie(answer.Cookies()[0]) }
}

func header(name, value string) func(*http.Request) {
	return func(r *http.Request) { r.Header.Set(name, value) }
}

func host(name string) func(*http.Request) { return func(r *http.Request) { r.Host = name } }

func text(t testing.TB, r *http.Response) string {
	t.Helper()
	b, err := io.ReadAll(r.Body)
	require.NoError(t, err)
	return string(b)
}

func TestALinkIsSwappedForACookie(t *testing.T) {
	d := newDesk(nil)
	answer := d.asks(http.MethodGet, way+string(d.Write))
	assert.Equal(t, http.StatusSeeOther, answer.StatusCode)
	assert.Equal(t, "/", answer.Header.Get("Location"))
	require.Len(t, answer.Cookies(), 1)
	c := answer.Cookies()[0]
	assert.Equal(t, "maltwright-8080", c.Name, "named by its port, for cookies of a host go to all of its ports")
	assert.True(t, c.HttpOnly)
	assert.Equal(t, http.SameSiteStrictMode, c.SameSite)
	assert.Equal(t, "/", c.Path)
	assert.Empty(t, c.Domain)
	assert.False(t, c.Secure)
	assert.NotContains(t, c.Value, string(d.Write), "the cookie does not give the link away")
	assert.GreaterOrEqual(t, len(d.Write), 26, "128 bits")

	with := func(r *http.Request) { r.AddCookie(c) }
	assert.Equal(t, "/batch/1?of=heat may write: true", text(t, d.asks(http.MethodGet, "/batch/1?of=heat", with)))
	assert.Equal(t, http.StatusSeeOther, d.asks(http.MethodPost, "/batch/1/reading", with).StatusCode)
	assert.Equal(t, []string{"weighed 7.48 kg"}, d.written)

	lower := d.asks(http.MethodGet, strings.ToLower(way+string(d.Write)))
	assert.Equal(t, http.StatusSeeOther, lower.StatusCode, "a program that makes addresses small")
	again := d.asks(http.MethodGet, way+string(d.Write), header("Sec-Fetch-Site", "cross-site"), header("Sec-Fetch-Mode", "navigate"), header("Sec-Fetch-Dest", "document"))
	assert.Equal(t, http.StatusOK, again.StatusCode, "a strict cookie does not go along a redirect that begins elsewhere")
	assert.Equal(t, "0; url=/", again.Header.Get("Refresh"))
	assert.Len(t, again.Cookies(), 1)
}

func TestUnderTLSTheCookieIsSecure(t *testing.T) {
	d := newDesk(func(o *Options) { o.Secure = true })
	c := d.asks(http.MethodGet, way+string(d.Write)).Cookies()[0]
	assert.True(t, c.Secure)
	assert.Equal(t, "__Host-maltwright-8080", c.Name)
}

func TestOfTwoServersEachHasItsOwnTokens(t *testing.T) {
	one, other := newDesk(nil), newDesk(nil)
	assert.NotEqual(t, one.Write, other.Write)
	assert.NotEqual(t, one.Write, one.Read)
	assert.Equal(t, http.StatusUnauthorized, other.asks(http.MethodGet, "/", one.as(t, one.Write)).StatusCode)
}

func TestAReaderCanNotWrite(t *testing.T) {
	d := newDesk(nil)
	reads := d.as(t, d.Read)
	assert.Equal(t, "/? may write: false", text(t, d.asks(http.MethodGet, "/", reads)))
	assert.Equal(t, http.StatusForbidden, d.asks(http.MethodPost, "/batch/1/reading", reads).StatusCode)
	assert.Empty(t, d.written)
	assert.False(t, MayWrite(t.Context()), "nor can anybody without a guard")
}

func TestTheTokenOfTheCalendarOpensTheCalendarAlone(t *testing.T) {
	d := newDesk(nil)
	address := CalendarLink("", d.Calendar)
	answer := d.asks(http.MethodGet, address)
	assert.Equal(t, http.StatusOK, answer.StatusCode)
	assert.Empty(t, answer.Cookies())
	assert.Equal(t, "/due.ics? may write: false", text(t, answer), "the handler does not see the token")
	for _, target := range []string{"/?key=" + string(d.Calendar), "/pulse?key=" + string(d.Calendar), way + string(d.Calendar), "/due.ics", "/due.ics?key=", "/due.ics?key=" + string(d.Write), "/due.ics?key=" + string(d.Read)} {
		assert.Equal(t, http.StatusUnauthorized, d.asks(http.MethodGet, target).StatusCode, target)
	}
	assert.Equal(t, http.StatusUnauthorized, d.asks(http.MethodPost, address).StatusCode)
	assert.Equal(t, http.StatusOK, d.asks(http.MethodGet, "/due.ics", d.as(t, d.Read)).StatusCode, "whoever sees the page may fetch it")
	for _, line := range d.logged {
		for _, token := range []Token{d.Write, d.Read, d.Calendar} {
			assert.NotContains(t, line, string(token))
		}
	}
	assert.NotEmpty(t, d.logged)
}

func TestEveryAnswerHasItsHeaders(t *testing.T) {
	d := newDesk(nil)
	writes := d.as(t, d.Write)
	for name, answer := range map[string]*http.Response{
		"page":     d.asks(http.MethodGet, "/", writes),
		"link":     d.asks(http.MethodGet, way+string(d.Write)),
		"nobody":   d.asks(http.MethodGet, "/"),
		"name":     d.asks(http.MethodGet, "/", host("evil.test:8080")),
		"method":   d.asks(http.MethodDelete, "/", writes),
		"breaks":   d.asks(http.MethodGet, "/breaks", writes),
		"nowhere":  d.asks(http.MethodGet, "/../etc", writes),
		"calendar": d.asks(http.MethodGet, "/due.ics?key="+string(d.Calendar)),
	} {
		h := answer.Header
		assert.Contains(t, h.Get("Content-Security-Policy"), "default-src 'none'", name)
		assert.Contains(t, h.Get("Content-Security-Policy"), "frame-ancestors 'none'", name)
		assert.NotContains(t, h.Get("Content-Security-Policy"), "unsafe", name)
		assert.Equal(t, "nosniff", h.Get("X-Content-Type-Options"), name)
		assert.Equal(t, "same-origin", h.Get("Referrer-Policy"), name)
		assert.Equal(t, "same-origin", h.Get("Cross-Origin-Opener-Policy"), name)
		assert.Equal(t, "same-origin", h.Get("Cross-Origin-Resource-Policy"), name)
		assert.Equal(t, "no-store", h.Get("Cache-Control"), name)
		assert.NotEmpty(t, h.Get("Permissions-Policy"), name)
		assert.Empty(t, h.Get("Access-Control-Allow-Origin"), name)
		assert.Empty(t, h.Get("Server"), name)
	}
}

func TestADocumentOfItsOwnMayCarryItsStyle(t *testing.T) {
	h := http.Header{}
	AllowStyle(h, "")
	assert.Contains(t, h.Get("Content-Security-Policy"), "style-src 'self' 'sha256-47DEQpj8HBSa+/TImW+5JCeuQeRkm5NMpJWZG3hSuFU='")
	assert.Contains(t, h.Get("Content-Security-Policy"), "script-src 'self'")
	setHeaders(h)
	assert.NotContains(t, h.Get("Content-Security-Policy"), "sha256", "it is that of one answer")
}

func TestAHandlerThatBreaksIsAnsweredForAndTheNextIsServed(t *testing.T) {
	d := newDesk(func(o *Options) { o.Limits.AtOnce = 1 })
	writes := d.as(t, d.Write)
	for range 3 {
		answer := d.asks(http.MethodGet, "/breaks", writes)
		assert.Equal(t, http.StatusInternalServerError, answer.StatusCode)
		assert.NotContains(t, text(t, answer), "forged", "what broke is not shown to whoever asks")
	}
	last := d.logged[len(d.logged)-1]
	first, _, _ := strings.Cut(last, "\n")
	assert.Contains(t, first, `500 "GET" "/breaks": "a mistake\n500 forged"`)
	assert.Contains(t, last, "guard_test.go", "where it broke")
	assert.PanicsWithValue(t, http.ErrAbortHandler, func() { d.asks(http.MethodGet, "/breaks-late", writes) }, "half a page is not taken for a whole one")
	assert.Equal(t, http.StatusOK, d.asks(http.MethodGet, "/", writes).StatusCode, "its room is given back")
}

func TestATicketOpensOnceAndSoon(t *testing.T) {
	d := newDesk(nil)
	first, second := d.Ticket(), d.Ticket()
	assert.Equal(t, http.StatusUnauthorized, d.asks(http.MethodGet, way+string(first)).StatusCode, "there is one at a time")
	assert.Equal(t, "/? may write: true", text(t, d.asks(http.MethodGet, "/", d.as(t, second))))
	assert.Equal(t, http.StatusUnauthorized, d.asks(http.MethodGet, way+string(second)).StatusCode, "it was used")
	late := d.Ticket()
	d.now = d.now.Add(2 * time.Minute)
	assert.Equal(t, http.StatusUnauthorized, d.asks(http.MethodGet, way+string(late)).StatusCode, "it ran out")
}

func TestALogIsNotFilled(t *testing.T) {
	var lines []string
	now := time.Date(2026, 3, 6, 7, 0, 0, 0, time.UTC)
	log := Sparing(func(line string) { lines = append(lines, line) }, 3, time.Minute, func() time.Time { return now })
	for range 10 {
		log("refused")
	}
	assert.Len(t, lines, 3)
	now = now.Add(time.Minute)
	log("refused again")
	assert.Equal(t, []string{"7 more lines were left out", "refused again"}, lines[3:])
}

// Where the keys are kept, who came before a new start is let in after it, as what they were; a key that is not whole is none.
func TestWhatABrowserHoldsOutlivesANewStartWhereItIsKept(t *testing.T) {
	k := Options{Write: NewToken(), Read: NewToken(), WriteCookie: NewToken(), ReadCookie: NewToken()}
	kept := func(o *Options) {
		o.Write, o.Read, o.WriteCookie, o.ReadCookie = k.Write, k.Read, k.WriteCookie, k.ReadCookie
	}
	before, after := newDesk(kept), newDesk(kept)
	assert.Equal(t, "/? may write: true", text(t, after.asks(http.MethodGet, "/", before.as(t, k.Write))))
	assert.Equal(t, "/? may write: false", text(t, after.asks(http.MethodGet, "/", before.as(t, k.Read))))
	assert.Equal(t, http.StatusForbidden, after.asks(http.MethodPost, "/batch/1/reading", before.as(t, k.Read)).StatusCode)
	other := newDesk(func(o *Options) { kept(o); o.WriteCookie, o.ReadCookie = NewToken(), NewToken() })
	assert.Equal(t, http.StatusUnauthorized, other.asks(http.MethodGet, "/", before.as(t, k.Write)).StatusCode)
	for _, bad := range []Token{"", "A", k.WriteCookie[:25]} {
		d := newDesk(func(o *Options) { kept(o); o.WriteCookie, o.ReadCookie = bad, bad })
		r := func(r *http.Request) { r.AddCookie(&http.Cookie{Name: "maltwright-8080", Value: string(bad)}) }
		assert.Equal(t, http.StatusUnauthorized, d.asks(http.MethodGet, "/", r).StatusCode)
	}
}

// A browser leaves out the port that its scheme has by itself.
func TestThePortOfTheSchemeIsLeftOut(t *testing.T) {
	d := newDesk(func(o *Options) { o.Hosts = Names(netip.MustParseAddr("192.168.1.20"), 80) })
	for host, want := range map[string]int{"192.168.1.20": http.StatusUnauthorized, "192.168.1.20:80": http.StatusUnauthorized, "[::1]": http.StatusUnauthorized, "localhost": http.StatusUnauthorized,
		"evil.example": http.StatusMisdirectedRequest, "192.168.1.20:81": http.StatusMisdirectedRequest} {
		answer := d.asks(http.MethodGet, "/", func(r *http.Request) { r.Host = host })
		assert.Equal(t, want, answer.StatusCode, host)
	}
	assert.NotContains(t, Names(netip.MustParseAddr("192.168.1.20"), 8080), "192.168.1.20")
}
