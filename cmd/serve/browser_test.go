package serve

import (
	"net/http/httptest"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/cmd/serve/browsertest"
	"maltwright/cmd/serve/guard"
)

// opened serves a growing batch behind its guard, and opens it in a tab by its link.
func opened(t *testing.T, b *browsertest.Browser) (s *site, base, batch string, tab *browsertest.Tab) {
	t.Helper()
	return openedBy(t, b, false)
}

func openedBy(t *testing.T, b *browsertest.Browser, secure bool) (s *site, base, batch string, tab *browsertest.Tab) {
	t.Helper()
	s, batch = growing(t)
	base, link := guarded(t, s, secure)
	tab = b.Tab(t).Phone()
	tab.Go(link)
	return s, base, base + batch, tab
}

// guarded serves a site behind its guard, and gives its address and the link that opens it.
func guarded(t *testing.T, s *site, secure bool) (base, link string) {
	t.Helper()
	server := httptest.NewUnstartedServer(nil)
	token := guard.NewToken()
	server.Config.Handler = guard.Around(s, guard.Options{Hosts: []string{server.Listener.Addr().String()}, Secure: secure, Write: token, Read: guard.NewToken(), Calendar: guard.NewToken(), Limits: guard.Limits{PerSecond: 1000, Burst: 1000}})
	if secure {
		server.StartTLS()
	} else {
		server.Start()
	}
	t.Cleanup(server.Close)
	return server.URL, guard.Link(server.URL, token)
}

// shot keeps a picture where somebody wants to look at it.
func shot(t *testing.T, tab *browsertest.Tab, name string) {
	t.Helper()
	if folder := os.Getenv("SHOTS_TO"); folder != "" {
		require.NoError(t, os.WriteFile(filepath.Join(folder, name+".png"), tab.Screenshot(), 0o600))
	}
}

func TestInABrowser(t *testing.T) {
	b := browsertest.Open(t)

	t.Run("a reading by thumbs, judged while it is typed", func(t *testing.T) {
		s, _, batch, tab := opened(t, b)
		tab.Go(batch)
		tab.Click("#kind-weighed summary")
		for _, key := range []string{"9", ".", "1", "2"} {
			browsertest.Eval[bool](tab, `[...document.querySelectorAll("#kind-weighed .pad button")].find(b => b.textContent === "`+key+`").click() || true`)
		}
		assert.Equal(t, "9.12", tab.Value("#weighed-value"))
		tab.Until(`document.querySelector("#kind-weighed .judge").textContent.includes("moisture")`)
		assert.Contains(t, tab.Text("#kind-weighed .judge"), "forecast")
		shot(t, tab, "entry-phone")
		tab.Follow("#kind-weighed button[type=submit]")
		assert.Contains(t, tab.Text("#answer"), "weighed 9.12 kg at 2026-04-14 12:00")
		shot(t, tab, "answer-phone")
		tab.Follow("#answer button")
		assert.Contains(t, tab.Text("#said"), "weighed 9.12 kg")
		assert.Contains(t, s.squeezed("26-05.malt"), "weighed 9.12 kg at 2026-04-14 12:00")
		shot(t, tab, "written-phone")
		assert.Empty(t, tab.Said())
	})

	t.Run("without a script", func(t *testing.T) {
		s, _, batch, tab := opened(t, b)
		tab.Script(false)
		tab.Go(batch)
		tab.Click("#kind-temperature summary")
		tab.Fill("#temperature-value", "16.4")
		tab.Follow("#kind-temperature button[type=submit]")
		assert.Contains(t, tab.Text("#answer"), "within the setting")
		tab.Follow("#answer button")
		assert.Contains(t, tab.Text("#said"), "read bed 16.4 °C")
		tab.Follow("#said button")
		assert.Contains(t, tab.Text("#said"), "taken back: read bed 16.4 °C")
		assert.NotContains(t, s.squeezed("26-05.malt"), "16.4 °C at 2026-04-14")
	})

	t.Run("while the machine is out of reach", func(t *testing.T) {
		s, _, batch, tab := opened(t, b)
		tab.Go(batch)
		tab.Until(`document.body.dataset.version !== undefined`)
		tab.Away(true)
		tab.Click("#kind-temperature summary")
		tab.Fill("#temperature-value", "16.3")
		tab.Click("#kind-temperature button[type=submit]")
		tab.Wait("#waiting")
		tab.Until(`document.querySelector("#waiting").textContent.includes("Temperature 16.3")`)
		assert.Contains(t, tab.Text("#waiting"), "has not been reached since")
		assert.Contains(t, tab.Text("#waiting"), "taken 2026-04-14 12:00")
		shot(t, tab, "away-phone")
		assert.NotContains(t, s.squeezed("26-05.malt"), "16.3 °C at 2026-04-14")
		s.later(90 * time.Minute)
		tab.Away(false)
		tab.Until(`Object.keys(localStorage).filter((k) => k.startsWith("maltwright.kept.")).every((k) => localStorage.getItem(k) === "[]")`)
		text := s.squeezed("26-05.malt")
		assert.Equal(t, 1, strings.Count(text, "read bed 16.3 °C at 2026-04-14 12:00"), "with the time at which it was taken")
		tab.Reload()
		assert.Equal(t, text, s.squeezed("26-05.malt"))
	})

	t.Run("the report carries its style", func(t *testing.T) {
		_, _, batch, tab := opened(t, b)
		tab.Go(batch + "/report")
		assert.Empty(t, tab.Said())
		assert.Zero(t, tab.Sideways())
		assert.Positive(t, browsertest.Eval[int](tab, `document.styleSheets[0].cssRules.length`), "it is let in")
		assert.NotContains(t, browsertest.Eval[string](tab, `getComputedStyle(document.body).fontFamily`), "Times", "and shown")
		shot(t, tab, "report-phone")
	})

	t.Run("an edit by hand is seen", func(t *testing.T) {
		s, _, batch, tab := opened(t, b)
		tab.Go(batch)
		s.put("26-05.malt", strings.TrimSuffix(strings.TrimSpace(s.read("26-05.malt")), "}")+"  remark \"by hand\" at 2026-04-14 11:59\n}\n")
		browsertest.Eval[bool](tab, `dispatchEvent(new Event("online")) || true`)
		tab.Until(`document.body.textContent.includes("by hand")`)
	})
}

// Over TLS a page is opened again while the machine is away, and what is read then is written later.
func TestInABrowserAPageIsOpenedAgainWhileTheMachineIsAway(t *testing.T) {
	b := browsertest.Open(t, browsertest.AnyCertificate())
	s, _, batch, tab := openedBy(t, b, true)
	tab.Go(batch)
	is := func(promised string) {
		t.Helper()
		require.Eventually(t, func() bool { return browsertest.Eval[bool](tab, promised) }, 20*time.Second, 200*time.Millisecond, promised)
	}
	is(`navigator.serviceWorker.getRegistration().then(r => !!(r && r.active && r.active.state === "activated"))`)
	tab.Go(batch) // from now on the worker stands between
	is(`caches.open("maltwright").then(c => c.match(location.href)).then(x => !!x)`)
	tab.Away(true)
	tab.Reload()
	tab.Until(`document.querySelector("#waiting") && document.querySelector("#waiting").textContent.includes("has not been reached")`)
	tab.Click("#kind-temperature summary")
	tab.Fill("#temperature-value", "16.3")
	tab.Click("#kind-temperature button[type=submit]")
	tab.Until(`document.querySelector("#waiting").textContent.includes("Temperature 16.3")`)
	tab.Away(false)
	browsertest.Eval[bool](tab, `dispatchEvent(new Event("online")) || true`)
	tab.Until(`Object.keys(localStorage).filter((k) => k.startsWith("maltwright.kept.")).every((k) => localStorage.getItem(k) === "[]")`)
	assert.Equal(t, 1, strings.Count(s.squeezed("26-05.malt"), "read bed 16.3 °C at 2026-04-14 12:00"))
}

// wide lists what is wider than the window.
func wide(tab *browsertest.Tab) []string {
	return browsertest.Eval[[]string](tab, `[...document.body.querySelectorAll("*")].filter(e => e.getBoundingClientRect().right > screen.width + 1 && !e.closest(".skip, thead")).map(e => e.outerHTML.slice(0, 90) + " " + Math.round(e.getBoundingClientRect().right))`)
}
