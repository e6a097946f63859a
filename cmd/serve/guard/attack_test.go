package guard

import (
	"net/http"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
)

// Whoever asks by a name that is not listed owns that name, and has it lead here.
func TestANameOfElsewhereIsMisdirected(t *testing.T) {
	d := newDesk(nil)
	writes := d.as(t, d.Write)
	for _, name := range []string{"evil.test", "evil.test:8080", "127.0.0.1", "127.0.0.1:8081", "localhost", "localhost:80", "127.0.0.1:8080.evil.test", "localhost.:8080", "0.0.0.0:8080", "[::]:8080", "2130706433:8080", "127.1:8080", "[::ffff:127.0.0.1]:8080", "", "127.0.0.1:8080,evil.test"} {
		assert.Equal(t, http.StatusMisdirectedRequest, d.asks(http.MethodGet, "/", writes, host(name)).StatusCode, name)
		assert.Equal(t, http.StatusMisdirectedRequest, d.asks(http.MethodGet, way+string(d.Write), host(name)).StatusCode, name)
		assert.Equal(t, http.StatusMisdirectedRequest, d.asks(http.MethodPost, "/batch/1/reading", writes, host(name)).StatusCode, name)
	}
	for _, name := range []string{"localhost:8080", "LOCALHOST:8080", "127.0.0.1:8080", "[::1]:8080"} {
		assert.Equal(t, http.StatusOK, d.asks(http.MethodGet, "/", writes, host(name)).StatusCode, name)
	}
	assert.Equal(t, http.StatusMisdirectedRequest, d.asks(http.MethodGet, "/", host("evil.test:8080"), writes, header("X-Forwarded-Host", "127.0.0.1:8080")).StatusCode)
	assert.Empty(t, d.written)
}

// Even with the cookie, which a browser would not send along.
func TestAPageOfElsewhereSendsNothing(t *testing.T) {
	d := newDesk(nil)
	writes := d.as(t, d.Write)
	for _, from := range [][]func(*http.Request){
		{header("Origin", "https://evil.test")},
		{header("Origin", "http://127.0.0.1:8081")}, // another port of this machine
		{header("Origin", "http://localhost:9000")},
		{header("Origin", "null")},
		{header("Sec-Fetch-Site", "cross-site")},
		{header("Sec-Fetch-Site", "same-site"), header("Origin", "http://127.0.0.1:8081")},
		{header("Sec-Fetch-Site", "cross-site"), header("Sec-Fetch-Mode", "navigate"), header("Sec-Fetch-Dest", "document"), header("Origin", "https://evil.test")},
	} {
		assert.Equal(t, http.StatusForbidden, d.asks(http.MethodPost, "/batch/1/reading", append(from, writes)...).StatusCode)
	}
	assert.Empty(t, d.written)
	for _, from := range [][]func(*http.Request){
		{header("Origin", "http://127.0.0.1:8080")},
		{header("Sec-Fetch-Site", "same-origin"), header("Origin", "http://127.0.0.1:8080")},
		nil, // a program of the person, with the cookie
	} {
		assert.Equal(t, http.StatusSeeOther, d.asks(http.MethodPost, "/batch/1/reading", append(from, writes)...).StatusCode)
	}
	assert.Len(t, d.written, 3)
}

func TestAPageOfElsewhereEmbedsNothing(t *testing.T) {
	d := newDesk(nil)
	writes := d.as(t, d.Write)
	for _, site := range []string{"cross-site", "same-site"} {
		for dest, mode := range map[string]string{"image": "no-cors", "script": "no-cors", "empty": "cors", "iframe": "navigate", "embed": "navigate", "object": "navigate", "style": "no-cors"} {
			answer := d.asks(http.MethodGet, "/batch/1/chart.svg", writes, header("Sec-Fetch-Site", site), header("Sec-Fetch-Mode", mode), header("Sec-Fetch-Dest", dest))
			assert.Equal(t, http.StatusForbidden, answer.StatusCode, "%s %s", site, dest)
		}
		follows := d.asks(http.MethodGet, "/", writes, header("Sec-Fetch-Site", site), header("Sec-Fetch-Mode", "navigate"), header("Sec-Fetch-Dest", "document"))
		assert.Equal(t, http.StatusOK, follows.StatusCode, "a link may lead here")
	}
}

func TestWithoutTheRightTokenNothingIsShown(t *testing.T) {
	d := newDesk(nil)
	for _, target := range []string{"/", "/batch/1", "/pulse", "/style.css", "/due.ics", "/K", "/k/x", "/K/" + strings.Repeat("A", 26), "/K/" + string(d.Write)[1:], "/K/" + string(d.Write) + "A"} {
		answer := d.asks(http.MethodGet, target)
		assert.Equal(t, http.StatusUnauthorized, answer.StatusCode, target)
		assert.Empty(t, answer.Cookies(), target)
		assert.NotContains(t, text(t, answer), "may write", target)
	}
	for _, value := range []string{"", "x", string(d.Write), string(d.Read), strings.Repeat("A", 26), strings.Repeat("A", 4000)} {
		cookie := func(r *http.Request) { r.AddCookie(&http.Cookie{Name: d.cookies.name, Value: value}) }
		assert.Equal(t, http.StatusUnauthorized, d.asks(http.MethodGet, "/", cookie).StatusCode, value)
		assert.Equal(t, http.StatusUnauthorized, d.asks(http.MethodPost, "/batch/1/reading", cookie).StatusCode, value)
	}
	assert.Equal(t, http.StatusUnauthorized, d.asks(http.MethodGet, "/?t="+string(d.Write)).StatusCode)
	assert.Equal(t, http.StatusUnauthorized, d.asks(http.MethodPost, way+string(d.Write)).StatusCode, "a link is followed, not sent")
	assert.Empty(t, d.written)

	none := newDesk(func(o *Options) { o.Write, o.Read, o.Calendar = "", "", "" })
	for _, target := range []string{"/due.ics?key=", "/K/A"} {
		assert.Equal(t, http.StatusUnauthorized, none.asks(http.MethodGet, target).StatusCode, "a token that is not set opens nothing")
	}
}

func TestWrongLinksAreFewAMinute(t *testing.T) {
	d := newDesk(nil)
	opened := d.as(t, d.Write)
	for range 10 {
		assert.Equal(t, http.StatusUnauthorized, d.asks(http.MethodGet, "/K/WRONG").StatusCode)
	}
	for _, target := range []string{"/K/WRONG", way + string(d.Write), "/due.ics?key=" + string(d.Calendar)} {
		answer := d.asks(http.MethodGet, target)
		assert.Equal(t, http.StatusTooManyRequests, answer.StatusCode, "none is looked at: %s", target)
		assert.Equal(t, "60", answer.Header.Get("Retry-After"))
	}
	assert.Equal(t, http.StatusOK, d.asks(http.MethodGet, "/", opened).StatusCode, "who is in stays in")
	elsewhere := func(r *http.Request) { r.RemoteAddr = "192.0.2.77:1234" }
	assert.Equal(t, http.StatusSeeOther, d.asks(http.MethodGet, way+string(d.Write), elsewhere).StatusCode, "nor is anybody else kept out")
	d.now = d.now.Add(time.Minute)
	assert.Equal(t, http.StatusSeeOther, d.asks(http.MethodGet, way+string(d.Write)).StatusCode)
}

// A page of elsewhere that tries links from the person's own browser does not keep the person out.
func TestWrongLinksThatAPageEmbedsAreNotCounted(t *testing.T) {
	d := newDesk(nil)
	for range 50 {
		d.asks(http.MethodGet, "/K/WRONG", header("Sec-Fetch-Site", "cross-site"), header("Sec-Fetch-Mode", "no-cors"), header("Sec-Fetch-Dest", "image"))
	}
	assert.Equal(t, http.StatusSeeOther, d.asks(http.MethodGet, way+string(d.Write)).StatusCode)
}

func TestAClientAsksSoMuchInASecond(t *testing.T) {
	d := newDesk(func(o *Options) { o.Limits.Burst, o.Limits.PerSecond = 5, 1 })
	writes := d.as(t, d.Write)
	for range 4 {
		assert.Equal(t, http.StatusOK, d.asks(http.MethodGet, "/", writes).StatusCode)
	}
	assert.Equal(t, http.StatusTooManyRequests, d.asks(http.MethodGet, "/", writes).StatusCode)
	d.now = d.now.Add(time.Second)
	assert.Equal(t, http.StatusOK, d.asks(http.MethodGet, "/", writes).StatusCode)
}

func TestClientsAreToldApartInBoundedRoom(t *testing.T) {
	b := newBuckets(1, 2)
	now := time.Date(2026, 3, 6, 7, 0, 0, 0, time.UTC)
	for i := range 5 * clients {
		b.take(strings.Repeat("x", i%97)+string(rune('a'+i%26))+time.Duration(i).String(), now)
	}
	assert.LessOrEqual(t, len(b.of), clients+1)
	assert.False(t, b.take("one more", now), "whoever is not told apart shares")
	assert.True(t, b.take("one more", now.Add(time.Minute)), "those that did nothing of late are forgotten")
}

func TestWhatIsNoRequestOfAPageIsRefused(t *testing.T) {
	d := newDesk(nil)
	writes := d.as(t, d.Write)
	for _, method := range []string{"PUT", "DELETE", "PATCH", "OPTIONS", "TRACE", "CONNECT", "PROPFIND", "get", "GET\r\nX: y"} {
		answer := d.asks(http.MethodGet, "/", writes, func(r *http.Request) { r.Method = method })
		assert.Equal(t, http.StatusMethodNotAllowed, answer.StatusCode, method)
		assert.Equal(t, "GET, HEAD, POST", answer.Header.Get("Allow"))
	}
	for _, target := range []string{"/batch/../../etc/passwd", "/..", "/batch/%2e%2e/etc", "/batch/%2E%2E%2Fetc", "/batch//1", "//evil.test/", "/batch/1%00.svg", "/batch/1\x00", `/batch/..\..\x`, "/batch/1;x=y", "/.git/config", "/batch/.hidden", "/batch/ä", "/batch/1%0d%0aSet-Cookie:x", "/batch/ 1", "*", "", "http://evil.test/"} {
		d.now = d.now.Add(time.Second)
		assert.Equal(t, http.StatusNotFound, d.asks(http.MethodGet, target, writes).StatusCode, "%q", target)
	}
	assert.Equal(t, http.StatusRequestURITooLong, d.asks(http.MethodGet, "/"+strings.Repeat("a", 9000), writes).StatusCode)
	assert.Equal(t, http.StatusRequestURITooLong, d.asks(http.MethodGet, "/?"+strings.Repeat("a", 9000), writes).StatusCode)
	large := d.asks(http.MethodPost, "/batch/1/reading", writes, func(r *http.Request) { r.ContentLength = Usual.Body + 1 })
	assert.Equal(t, http.StatusRequestEntityTooLarge, large.StatusCode)
	assert.Equal(t, "close", large.Header.Get("Connection"), "what was sent is not read")
	for _, kind := range []string{"", "text/plain", "text/xml", "nonsense", "application/json/x"} {
		assert.Equal(t, http.StatusUnsupportedMediaType, d.asks(http.MethodPost, "/batch/1/reading", writes, header("Content-Type", kind)).StatusCode, kind)
	}
	assert.Empty(t, d.written)
}

// What a log holds of a request can neither end its line nor act on a terminal.
func TestNothingOfARequestForgesALineOfTheLog(t *testing.T) {
	d := newDesk(nil)
	d.asks(http.MethodGet, "/x\r\n401 \"GET\" of 10.0.0.1: all is well\x1b[2J", host("evil\n\x1b]0;x\a"))
	d.asks(http.MethodGet, "/", func(r *http.Request) { r.Method = "GET\n\x1b[31m" + strings.Repeat("x", 5000) })
	assert.Len(t, d.logged, 2)
	for _, line := range d.logged {
		assert.NotContains(t, line, "\n")
		assert.NotContains(t, line, "\x1b")
		assert.Less(t, len(line), 500)
	}
}
