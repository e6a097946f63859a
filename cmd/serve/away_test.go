package serve

import (
	"net/http"
	"net/http/httptest"
	"strings"
	"sync/atomic"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/cmd/serve/browsertest"
	"maltwright/cmd/serve/guard"
)

// restarted serves a growing batch, behind a guard that can be set up anew on the same port.
func restarted(t *testing.T) (s *site, base, batch string, anew func(k guard.Options) (link string)) {
	t.Helper()
	s, batch = growing(t)
	var at atomic.Pointer[guard.Guard]
	server := httptest.NewServer(http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) { at.Load().ServeHTTP(w, r) }))
	t.Cleanup(server.Close)
	base = server.URL
	return s, base, base + batch, func(k guard.Options) string {
		k.Hosts, k.Limits = []string{server.Listener.Addr().String()}, guard.Limits{PerSecond: 1000, Burst: 1000}
		if k.Write == "" {
			k.Write = guard.NewToken()
		}
		k.Read, k.Calendar = guard.NewToken(), guard.NewToken()
		at.Store(guard.Around(s, k))
		return guard.Link(base, k.Write)
	}
}

// reads fills in a form and sends it.
func reads(tab *browsertest.Tab, kind, value string) {
	browsertest.Eval[bool](tab, `document.querySelector("#kind-`+kind+`").open = true`)
	if value != "" {
		tab.Fill("#"+kind+"-value", value)
	}
	tab.Click("#kind-" + kind + " button[type=submit]")
}

const (
	keptNow = `JSON.parse(localStorage.getItem("maltwright.kept." + document.body.dataset.folder) || "[]").length`
	beats   = `dispatchEvent(new Event("online")) || true`
)

// What is read while the machine is away is kept, each beside the other: of one kind or of several.
func TestInABrowserNoReadingTakesThePlaceOfAnother(t *testing.T) {
	b := browsertest.Open(t)
	s, _, batch, tab := opened(t, b)
	tab.Go(batch)
	tab.Away(true)
	for i, x := range [][2]string{{"weighed", "9.12"}, {"temperature", "16.1"}, {"turned", ""}, {"temperature", "16.4"}, {"remark", ""}} {
		if x[0] == "remark" {
			browsertest.Eval[bool](tab, `document.querySelector("#kind-remark").open = true`)
			tab.Fill("#remark-text", "cucumber")
		}
		reads(tab, x[0], x[1])
		tab.Until(keptNow + ` === ` + string(rune('1'+i)))
	}
	said := tab.Text("#waiting")
	for _, want := range []string{"Weighed 9.12 kg", "Temperature 16.1", "Temperature 16.4", "Turned", "Remark cucumber"} {
		assert.Contains(t, said, want)
	}
	shot(t, tab, "kept-phone")
	tab.Away(false)
	browsertest.Eval[bool](tab, beats)
	tab.Until(keptNow + ` === 0`)
	text := s.squeezed("26-05.malt")
	for _, want := range []string{"weighed 9.12 kg at 2026-04-14 12:00", "read bed 16.1 °C at 2026-04-14 12:00", "read bed 16.4 °C at 2026-04-14 12:00", "turned at 2026-04-14 12:00", `remark "cucumber" at 2026-04-14 12:00`} {
		assert.Equal(t, 1, strings.Count(text, want), want)
	}
}

// A phone whose clock goes by another zone keeps a reading by the time of the machine; and one that is too long to be sent holds no other back.
func TestInABrowserWhatIsKeptIsSentWithItsTime(t *testing.T) {
	b := browsertest.Open(t)
	s, _, batch, tab := opened(t, b)
	tab.Zone("Asia/Kathmandu")
	tab.Go(batch)
	tab.Away(true)
	browsertest.Eval[bool](tab, `(document.querySelector("#kind-remark").open = true, document.querySelector("#remark-text").value = "ü".repeat(20000), true)`)
	tab.Click("#kind-remark button[type=submit]")
	tab.Until(keptNow + ` === 1`)
	reads(tab, "temperature", "16.1")
	tab.Until(keptNow + ` === 2`)
	tab.Away(false)
	for range 2 {
		browsertest.Eval[bool](tab, beats)
		tab.Until(`document.querySelector("#waiting").textContent.includes("it is too long")`)
	}
	tab.Until(keptNow + ` === 1`)
	assert.Equal(t, 1, strings.Count(s.squeezed("26-05.malt"), "read bed 16.1 °C at 2026-04-14 12:00"))
}

// A page that was started anew lets no old one in, and the old one says what to do and loses nothing.
func TestInABrowserAPageThatIsShutOutSaysWhatToDo(t *testing.T) {
	b := browsertest.Open(t)
	s, _, batch, anew := restarted(t)
	tab := b.Tab(t).Phone()
	tab.Go(anew(guard.Options{}))
	tab.Go(batch)
	tab.Away(true)
	reads(tab, "temperature", "16.1")
	tab.Until(keptNow + ` === 1`)
	link := anew(guard.Options{})
	tab.Away(false)
	browsertest.Eval[bool](tab, beats)
	tab.Until(`document.querySelector("#waiting").textContent.includes("started anew")`)
	assert.Contains(t, tab.Text("#waiting"), "new link needed")
	assert.NotContains(t, tab.Text("#waiting"), "not been reached")
	reads(tab, "temperature", "16.4")
	tab.Until(keptNow + ` === 2`)
	shot(t, tab, "shut-out-phone")
	assert.NotContains(t, s.squeezed("26-05.malt"), "2026-04-14 12:00")

	other := tab.Beside(t)
	other.Go(link)
	other.Go(batch)
	other.Until(keptNow + ` === 0`)
	browsertest.Eval[bool](tab, beats)
	tab.Until(`!document.querySelector("#waiting").textContent.includes("started anew")`)
	text := s.squeezed("26-05.malt")
	for _, want := range []string{"read bed 16.1 °C at 2026-04-14 12:00", "read bed 16.4 °C at 2026-04-14 12:00"} {
		assert.Equal(t, 1, strings.Count(text, want), want)
	}
}

// Where the keys are kept the open page goes on by itself.
func TestInABrowserAPageComesThroughANewStart(t *testing.T) {
	b := browsertest.Open(t)
	s, _, batch, anew := restarted(t)
	k := guard.Options{Write: guard.NewToken(), WriteCookie: guard.NewToken(), ReadCookie: guard.NewToken()}
	tab := b.Tab(t).Phone()
	tab.Go(anew(k))
	tab.Go(batch)
	tab.Away(true)
	reads(tab, "temperature", "16.1")
	tab.Until(keptNow + ` === 1`)
	anew(k)
	tab.Away(false)
	browsertest.Eval[bool](tab, beats)
	tab.Until(keptNow + ` === 0`)
	assert.Equal(t, 1, strings.Count(s.squeezed("26-05.malt"), "read bed 16.1 °C at 2026-04-14 12:00"))
	require.Equal(t, http.StatusOK, tab.Go(batch).Status)
}

// One pad is for both fields of a weight in pounds and ounces.
func TestInABrowserPoundsAndOuncesByThumbs(t *testing.T) {
	b := browsertest.Open(t)
	s, path := porch(t)
	token := guard.NewToken()
	server := httptest.NewUnstartedServer(nil)
	server.Config.Handler = guard.Around(s, guard.Options{Hosts: []string{server.Listener.Addr().String()}, Write: token})
	server.Start()
	t.Cleanup(server.Close)
	tab := b.Tab(t).Phone()
	tab.Go(guard.Link(server.URL, token))
	tab.Go(server.URL + path)
	browsertest.Eval[bool](tab, `document.querySelector("#kind-weighed").open = true`)
	require.Equal(t, 1, tab.Count("#kind-weighed .pad"))
	keys := func(list ...string) {
		for _, key := range list {
			browsertest.Eval[bool](tab, `[...document.querySelectorAll("#kind-weighed .pad button")].find(b => b.textContent === "`+key+`").click() || true`)
		}
	}
	keys("1", "4")
	tab.Click("#weighed-ounces")
	keys("9", ".", "5")
	assert.Equal(t, "14", tab.Value("#weighed-value"))
	assert.Equal(t, "9.5", tab.Value("#weighed-ounces"))
	tab.Until(`document.querySelector("#kind-weighed .judge").textContent.includes("moisture")`)
	shot(t, tab, "ounces-phone")
	tab.Follow("#kind-weighed button[type=submit]")
	assert.Contains(t, tab.Text("#answer"), "weighed 14 lb 9.5 oz")
	assert.Zero(t, tab.Sideways())
	assert.Empty(t, tab.Said())
}
