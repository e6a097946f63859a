package attacks

import (
	"fmt"
	"net/http"
	"net/http/httptest"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/cmd/serve/browsertest"
)

// evil is a name that its owner has lead to this machine.
const evil = "evil.test"

// attacker serves pages of elsewhere: at evil.test, which leads to this machine, and at another port of this machine.
type attacker struct {
	*httptest.Server
	mu   sync.Mutex
	page string
}

func attacking(t testing.TB) *attacker {
	t.Helper()
	a := &attacker{}
	a.Server = httptest.NewServer(http.HandlerFunc(func(w http.ResponseWriter, _ *http.Request) {
		a.mu.Lock()
		defer a.mu.Unlock()
		w.Header().Set("Content-Type", "text/html; charset=utf-8")
		fmt.Fprint(w, `<!doctype html><html lang="en"><head><link rel="icon" href="data:,"><title>Elsewhere</title></head><body>`+a.page+"</body></html>")
	}))
	t.Cleanup(a.Close)
	return a
}

// shows sets the page, and gives its address: at a name of its own, or at another port of this machine.
func (a *attacker) shows(page string) (atName, atPort string) {
	a.mu.Lock()
	defer a.mu.Unlock()
	a.page = page
	return strings.Replace(a.URL, "127.0.0.1", evil, 1), a.URL
}

// inBrowser is a browser in which the page is open.
func inBrowser(t *testing.T, b *browsertest.Browser, s *served) *browsertest.Tab {
	t.Helper()
	tab := b.Tab(t).Phone()
	a := tab.Go(s.page)
	require.Equal(t, http.StatusOK, a.Status)
	require.Equal(t, s.base+"/", tab.URL(), "the token is gone from the address")
	require.Contains(t, tab.HTML(), "26-03")
	return tab
}

func TestInABrowserAPageOfElsewhereDoesNothing(t *testing.T) {
	b := browsertest.Open(t, browsertest.Resolving("MAP "+evil+" 127.0.0.1"))
	s := home(t)
	batch := batch(t, inBrowser(t, b, s))
	before := filesOf(t, s.folder)
	bad := attacking(t)
	form := `<form method="post" action="` + s.base + batch + `/reading"><input name="kind" value="remark"><input name="text" value="from elsewhere"><input name="write" value="sure"><button>win</button></form>`

	t.Run("no link, and a wrong one", func(t *testing.T) {
		tab := b.Tab(t)
		for _, address := range []string{"/", batch, "/K/" + strings.Repeat("A", 26), "/due.ics", "/pulse"} {
			assert.Equal(t, http.StatusUnauthorized, tab.Go(s.base+address).Status, address)
			assert.NotContains(t, tab.HTML(), "26-03", address)
		}
	})
	t.Run("a name that leads here", func(t *testing.T) {
		tab := inBrowser(t, b, s)
		for _, address := range []string{"/", batch, strings.TrimPrefix(s.page, s.base)} {
			answer := tab.Go(strings.Replace(s.base, "127.0.0.1", evil, 1) + address)
			assert.Equal(t, http.StatusMisdirectedRequest, answer.Status, address)
			assert.NotContains(t, tab.HTML(), "26-03")
			assert.Empty(t, tab.Cookies())
		}
	})
	for name, at := range map[string]int{"another site": 0, "another port of this machine": 1} {
		address := func(page string) string {
			atName, atPort := bad.shows(page)
			return [...]string{atName, atPort}[at]
		}
		t.Run(name+" sends a form", func(t *testing.T) {
			tab := inBrowser(t, b, s)
			tab.Go(address(form))
			assert.Equal(t, http.StatusForbidden, tab.Follow("button").Status)
			tab.Go(address(strings.Replace(form, `method="post"`, `method="post" enctype="text/plain"`, 1)))
			assert.Contains(t, []int{http.StatusForbidden, http.StatusUnsupportedMediaType}, tab.Follow("button").Status)
		})
		t.Run(name+" asks by script", func(t *testing.T) {
			tab := inBrowser(t, b, s)
			tab.Go(address(""))
			for _, how := range []string{
				`fetch(%q, {credentials: "include"}).then(r => r.text())`,
				`fetch(%q, {credentials: "include", mode: "no-cors"}).then(r => r.text())`,
				`fetch(%q, {method: "POST", credentials: "include", mode: "no-cors", headers: {"Content-Type": "application/x-www-form-urlencoded"}, body: "kind=remark&text=from+elsewhere&write=sure"}).then(r => r.text())`,
				`fetch(%q, {method: "POST", credentials: "include", headers: {"Content-Type": "application/json"}, body: "{}"}).then(r => r.text())`,
			} {
				got := browsertest.Eval[string](tab, fmt.Sprintf(how, s.base+batch+"/reading")+`.catch(e => "refused")`)
				assert.Contains(t, []string{"refused", ""}, got, how)
			}
			assert.True(t, browsertest.Eval[bool](tab, fmt.Sprintf(`navigator.sendBeacon(%q, new URLSearchParams({kind: "remark", text: "from elsewhere", write: "sure"})) !== null`, s.base+batch+"/reading")))
		})
		t.Run(name+" takes it into itself", func(t *testing.T) {
			tab := inBrowser(t, b, s)
			tab.Go(address(`<iframe src="` + s.base + `/"></iframe><object data="` + s.base + `/"></object><img src="` + s.base + batch + `/chart.svg"><script src="` + s.base + `/page.js"></script><link rel="stylesheet" href="` + s.base + `/style.css">`))
			said := strings.Join(tab.Said(), "\n")
			assert.Contains(t, said, "frame-ancestors 'none'")
			assert.GreaterOrEqual(t, strings.Count(said, "403")+strings.Count(said, "401")+strings.Count(said, "ERR_BLOCKED"), 3, said)
			assert.Zero(t, browsertest.Eval[int](tab, `document.querySelector("img").naturalWidth`))
		})
	}
	t.Run("a link from elsewhere opens it, and a bookmark does not", func(t *testing.T) {
		atName, _ := bad.shows(`<a id="in" href="` + s.page + `">in</a>`)
		tab := b.Tab(t)
		tab.Go(atName)
		tab.Follow("#in")
		tab.Until(`location.pathname === "/"`)
		tab.Until(`document.body && document.body.innerText.includes("26-03")`)
		atName, _ = bad.shows(`<a id="in" href="` + s.base + `/">in</a>`)
		tab.Go(atName)
		assert.Equal(t, http.StatusUnauthorized, tab.Follow("#in").Status, "a strict cookie stays away from what begins elsewhere")
		assert.Equal(t, http.StatusOK, tab.Follow("main a").Status, "and goes along from here")
	})
	assert.Equal(t, before, filesOf(t, s.folder), "no file is otherwise")
}

func TestInABrowserThePageIsItsOwn(t *testing.T) {
	b := browsertest.Open(t, browsertest.AnyCertificate())
	s := home(t)
	t.Run("its cookie is out of reach", func(t *testing.T) {
		tab := inBrowser(t, b, s)
		assert.Empty(t, tab.Said(), "nothing that the page needs is refused to it")
		assert.Empty(t, browsertest.Eval[string](tab, "document.cookie"))
		cookies := tab.Cookies()
		require.Len(t, cookies, 1)
		assert.True(t, cookies[0].HTTPOnly)
		assert.Equal(t, "Strict", string(cookies[0].SameSite))
	})
	t.Run("a chart that is opened by itself has its colours", func(t *testing.T) {
		tab := inBrowser(t, b, s).Dark(true)
		require.Equal(t, http.StatusOK, tab.Go(s.base+batch(t, tab)+"/chart.svg?of=moisture&n=0").Status)
		assert.Empty(t, tab.Said())
	})
	t.Run("what is put into it does not run", func(t *testing.T) {
		tab := inBrowser(t, b, s)
		const put = `(() => { const s = document.createElement("script"); s.textContent = "window.ran = true"; document.body.append(s);
			const i = document.createElement("img"); i.src = "x"; i.setAttribute("onerror", "window.ran = true"); document.body.append(i);
			const f = document.createElement("form"); f.action = "http://127.0.0.1:1/"; f.method = "post"; document.body.append(f); f.submit();
			return new Promise(r => setTimeout(() => r(window.ran === true), 300)); })()`
		assert.False(t, browsertest.Eval[bool](tab, put))
		assert.Equal(t, "refused", browsertest.Eval[string](tab, `fetch("http://127.0.0.1:1/", {mode: "no-cors"}).then(() => "sent", () => "refused")`))
		said := strings.Join(tab.Said(), "\n")
		for _, of := range []string{"script-src", "form-action", "connect-src"} {
			assert.Contains(t, said, of)
		}
		assert.Equal(t, s.base+"/", tab.URL())
	})
	t.Run("two at once keep apart", func(t *testing.T) {
		other := home(t)
		tab := inBrowser(t, b, s)
		assert.Equal(t, http.StatusOK, tab.Go(other.page).Status)
		assert.Equal(t, http.StatusOK, tab.Go(s.base+"/").Status)
		assert.Equal(t, http.StatusOK, tab.Go(other.base+"/").Status)
		assert.Len(t, tab.Cookies(), 2)
	})
	t.Run("its own form over a network", func(t *testing.T) {
		writesByForm(t, b.Tab(t).Phone(), serving(t, browsertest.Folder(t, "home"), ownAddress(t), nil))
	})
	t.Run("its own form over TLS", func(t *testing.T) {
		own := ownAddress(t)
		tab := b.Tab(t).Phone()
		writesByForm(t, tab, serving(t, browsertest.Folder(t, "home"), own, certificate(t, own)))
		require.Len(t, tab.Cookies(), 1)
		assert.True(t, tab.Cookies()[0].Secure)
		assert.True(t, strings.HasPrefix(tab.Cookies()[0].Name, "__Host-maltwright-"))
	})
}

// writesByForm writes a remark by the form of the page, with and without script. On a name that is not loopback a browser sends less along, and a policy that
// is too strict has it send "Origin: null".
func writesByForm(t *testing.T, tab *browsertest.Tab, s *served) {
	t.Helper()
	for _, script := range []bool{true, false} {
		tab.Script(script)
		require.Equal(t, http.StatusOK, tab.Go(s.page).Status)
		link := batch(t, tab)
		require.Equal(t, http.StatusOK, tab.Go(s.base+link+"?kind=remark").Status)
		text := fmt.Sprintf("by the form, script %v.", script)
		sent := browsertest.Eval[bool](tab, fmt.Sprintf(`(() => { const f = document.createElement("form"); f.method = "post"; f.action = %q; f.id = "own";
			for (const [k, v] of [["kind", "remark"], ["text", %q], ["write", "sure"]]) { const i = document.createElement("input"); i.name = k; i.value = v; f.append(i); }
			const b = document.createElement("button"); b.id = "send"; b.textContent = "send"; f.append(b); document.body.prepend(f); return true; })()`, link+"/reading", text))
		require.True(t, sent)
		assert.Equal(t, http.StatusOK, tab.Follow("#send").Status)
		written := ""
		for _, file := range filesOf(t, s.folder) {
			written += file
		}
		assert.Contains(t, written, text)
	}
}

// Names and remarks of a file are the words of people, and may come from elsewhere: a house that somebody sent.
func TestInABrowserWhatStandsInAFileRunsNowhere(t *testing.T) {
	b := browsertest.Open(t)
	folder := browsertest.Folder(t, "home")
	const hostile = `<script>alert(1)</script><img src=x onerror=alert(2)><svg onload=alert(3)>`
	file := filepath.Join(folder, "26-03.malt")
	text, err := os.ReadFile(file)
	require.NoError(t, err)
	spoilt := strings.Replace(string(text), `batch "26-03"`, `batch "26-03`+hostile+`"`, 1)
	at := strings.LastIndex(spoilt, "}")
	spoilt = spoilt[:at] + `  remark "` + hostile + `" at 12:00` + "\n}\n"
	require.NotEqual(t, string(text), spoilt)
	require.NoError(t, os.WriteFile(file, []byte(spoilt), 0o600))
	hostileName := filepath.Join(folder, `x' onmouseover=alert(4) <b>.malt`)
	if err := os.WriteFile(hostileName, []byte("nonsense <script>alert(5)</script>\n"), 0o600); err != nil {
		t.Logf("no such names here: %v", err)
	}
	s := serving(t, folder, loopback, nil)
	tab := inBrowser(t, b, s)
	pages := browsertest.Eval[[]string](tab, `[...new Set([...document.querySelectorAll("a[href^='/']")].map(a => a.getAttribute("href")))]`)
	require.Greater(t, len(pages), 2)
	seen := false
	for _, page := range pages {
		if strings.Contains(page, ".pdf") || strings.Contains(page, ".ics") {
			continue
		}
		tab.Go(s.base + page)
		assert.Empty(t, tab.Dialogs(), page)
		assert.Zero(t, tab.Count("img[src=x], svg[onload], [onmouseover], [onerror]"), page)
		for _, said := range tab.Said() {
			assert.NotContains(t, said, "Content Security Policy", "%s: it is text, and not only kept from running", page)
		}
		seen = seen || strings.Contains(browsertest.Eval[string](tab, "document.body.textContent"), "<script>alert(1)")
	}
	assert.True(t, seen, "the names were on one of the pages")
}
