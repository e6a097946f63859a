package browsertest_test

import (
	"html"
	"net/http"
	"net/http/httptest"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/cmd/serve/browsertest"
)

const first = `<!doctype html><html lang="en"><head><title>First</title><meta name="viewport" content="width=device-width">
<style>body { color: black } @media (prefers-color-scheme: dark) { body { color: white } } @media print { form { display: none } }</style></head>
<body><main><h1>First</h1><form method="post" action="/said"><label>What <input name="what" id="what"></label> <button>Send</button></form>
<p id="by"></p><script>document.getElementById("by").textContent = "script"</script></main></body></html>`

func pages() http.Handler {
	mux := http.NewServeMux()
	show := func(w http.ResponseWriter, page string) {
		w.Header().Set("Content-Type", "text/html; charset=utf-8")
		_, _ = w.Write([]byte(page))
	}
	mux.HandleFunc("GET /favicon.ico", func(w http.ResponseWriter, _ *http.Request) { w.WriteHeader(http.StatusNoContent) })
	mux.HandleFunc("GET /{$}", func(w http.ResponseWriter, _ *http.Request) { show(w, first) })
	mux.HandleFunc("POST /said", func(w http.ResponseWriter, r *http.Request) {
		http.SetCookie(w, &http.Cookie{Name: "said", Value: "once"})
		w.WriteHeader(http.StatusAccepted)
		show(w, `<title>Said</title><p id="said">`+html.EscapeString(r.FormValue("what"))+`</p>`)
	})
	mux.HandleFunc("GET /strict", func(w http.ResponseWriter, _ *http.Request) {
		w.Header().Set("Content-Security-Policy", "default-src 'none'")
		show(w, first)
	})
	mux.HandleFunc("GET /crowded", func(w http.ResponseWriter, _ *http.Request) {
		show(w, `<!doctype html><html lang="en"><title>Crowded</title><style>body { background: white } button { width: 90px; height: 20px } .large { height: 48px }</style>
<h2>At 7.48 kg on Tuesday</h2><p>below</p><p style="margin-top: -40px">above</p><button>small</button><button class="large">large</button>`)
	})
	mux.HandleFunc("GET /bad", func(w http.ResponseWriter, _ *http.Request) {
		show(w, `<!doctype html><html><title>Bad</title><body><img src="data:,"><input><script>alert("here"); nothing()</script></body></html>`)
	})
	return mux
}

func TestABrowserDoesWhatATestSays(t *testing.T) {
	b := browsertest.Open(t)
	s := httptest.NewServer(pages())
	t.Cleanup(s.Close)

	t.Run("fills a form and sends it", func(t *testing.T) {
		tab := b.Tab(t).Phone()
		assert.Equal(t, http.StatusOK, tab.Go(s.URL).Status)
		assert.Equal(t, "script", tab.Text("#by"))
		assert.Zero(t, tab.Sideways())
		assert.Equal(t, 390, browsertest.Eval[int](tab, "innerWidth"))
		tab.Fill("#what", `<b>7.48 kg`)
		a := tab.Follow("button")
		assert.Equal(t, http.StatusAccepted, a.Status)
		assert.Equal(t, `<b>7.48 kg`, tab.Text("#said"))
		assert.Equal(t, s.URL+"/said", tab.URL())
		require.Len(t, tab.Cookies(), 1)
		assert.Empty(t, tab.Said())

		beside, other := tab.Beside(t), b.Tab(t)
		beside.Go(s.URL)
		other.Go(s.URL)
		assert.Len(t, beside.Cookies(), 1, "the same person")
		assert.Empty(t, other.Cookies(), "another one")
	})
	t.Run("by keys alone", func(t *testing.T) {
		tab := b.Tab(t)
		tab.Go(s.URL)
		tab.Press(browsertest.TabKey)
		tab.Press("8.33 kg")
		assert.Equal(t, "8.33 kg", tab.Value("#what"))
		tab.Send("#what")
		assert.Equal(t, "8.33 kg", tab.Text("#said"))
	})
	t.Run("without script", func(t *testing.T) {
		tab := b.Tab(t).Script(false)
		tab.Go(s.URL)
		assert.Empty(t, browsertest.Eval[string](tab, `document.querySelector("#by").textContent`))
		tab.Fill("#what", "17 °C")
		tab.Follow("button")
		assert.Equal(t, "17 °C", tab.Text("#said"))
	})
	t.Run("dark, and as printed", func(t *testing.T) {
		tab := b.Tab(t).Dark(true)
		tab.Go(s.URL)
		colour := "getComputedStyle(document.body).color"
		assert.Equal(t, "rgb(255, 255, 255)", browsertest.Eval[string](tab, colour))
		tab.Dark(false)
		assert.Equal(t, "rgb(0, 0, 0)", browsertest.Eval[string](tab, colour))
		assert.NotZero(t, browsertest.Eval[int](tab, `document.querySelector("form").offsetHeight`))
		tab.Print(true)
		assert.Zero(t, browsertest.Eval[int](tab, `document.querySelector("form").offsetHeight`))
		assert.True(t, strings.HasPrefix(string(tab.Screenshot()), "\x89PNG"))
	})
	t.Run("away", func(t *testing.T) {
		tab := b.Tab(t)
		tab.Go(s.URL)
		tab.Away(true)
		const there = `fetch("/").then(r => r.ok, () => false)`
		assert.False(t, browsertest.Eval[bool](tab, there))
		assert.False(t, browsertest.Eval[bool](tab, "navigator.onLine"))
		tab.Away(false)
		assert.True(t, browsertest.Eval[bool](tab, there))
	})
	t.Run("hears what is refused and what breaks", func(t *testing.T) {
		tab := b.Tab(t)
		tab.Go(s.URL + "/strict")
		assert.Contains(t, strings.Join(tab.Said(), "\n"), "Content Security Policy")
		assert.Empty(t, tab.Said(), "said once")
		tab.Go(s.URL + "/bad")
		assert.Equal(t, []string{"here"}, tab.Dialogs())
		assert.Contains(t, strings.Join(tab.Said(), "\n"), "nothing is not defined")
	})
	t.Run("sees what lies over another, what is small, and what is told", func(t *testing.T) {
		tab := b.Tab(t)
		tab.Go(s.URL + "/crowded")
		assert.Equal(t, []string{"above over below"}, tab.Overlaps())
		require.Len(t, tab.Small(48), 1)
		assert.Contains(t, tab.Small(48)[0], "small")
		assert.Equal(t, "page \"Crowded\"\n  heading 2 \"At 0 kg on Day\"\n  text \"below\"\n  text \"above\"\n  button \"small\"\n  button \"large\"\n", tab.Outline())
		assert.False(t, tab.OnDark())
	})
	t.Run("nobody is there", func(t *testing.T) {
		_, err := b.Tab(t).TryGo("http://127.0.0.1:1/")
		assert.Error(t, err)
	})
	t.Run("axe", func(t *testing.T) {
		tab := b.Tab(t)
		tab.Go(s.URL)
		assert.Empty(t, tab.Axe())
		tab.Go(s.URL + "/bad")
		found := strings.Join(tab.Axe(), "\n")
		assert.Contains(t, found, "html-has-lang (serious)")
		assert.Contains(t, found, "image-alt (critical)")
	})
}

func TestANameLeadsWhereItIsTold(t *testing.T) {
	b := browsertest.Open(t, browsertest.Resolving("MAP evil.test 127.0.0.1"))
	s := httptest.NewServer(pages())
	t.Cleanup(s.Close)
	tab := b.Tab(t)
	tab.Go(strings.Replace(s.URL, "127.0.0.1", "evil.test", 1))
	assert.Equal(t, "First", tab.Title())
}

func TestTheCopyOfTheExamplesIsWhole(t *testing.T) {
	assert.FileExists(t, filepath.Join(browsertest.Folder(t, ""), "batches/26-03.malt"))
	folder := browsertest.Folder(t, "home")
	assert.NoError(t, os.Remove(filepath.Join(folder, "porch.malt")), "it may be written")
}

// However tests end, no browser and no profile of theirs stays: here by a panic, by a signal and by force.
func TestNothingIsLeftBehind(t *testing.T) {
	if how := os.Getenv("BROWSERTEST_ENDS"); how != "" {
		b := browsertest.Open(t)
		b.Tab(t).Go("about:blank")
		endBy(how)
	}
	browsertest.Open(t) // skips where there is none
	if _, err := exec.LookPath("sh"); err != nil {
		t.Skip("there is no shell: NOT TESTED")
	}
	for _, how := range []string{"panic", "interrupt", "kill"} {
		t.Run(how, func(t *testing.T) {
			t.Parallel()
			tmp := t.TempDir()
			c := exec.Command(os.Args[0], "-test.run=^TestNothingIsLeftBehind$")
			c.Env = append(os.Environ(), "TMPDIR="+tmp, "BROWSERTEST_ENDS="+how)
			require.Error(t, c.Run())
			require.Eventually(t, func() bool {
				left, err := filepath.Glob(filepath.Join(tmp, "browsertest*"))
				return err == nil && len(left) == 0 && !runs(tmp)
			}, time.Minute, 50*time.Millisecond)
		})
	}
}

func endBy(how string) {
	self, err := os.FindProcess(os.Getpid())
	switch {
	case err != nil || how == "panic":
		panic("as a test that goes wrong")
	case how == "interrupt":
		_ = self.Signal(os.Interrupt)
	default:
		_ = self.Kill()
	}
	select {}
}

// runs tells whether a process has a path in its command line. Where processes are not listed it is taken that none has.
func runs(path string) bool {
	out, err := exec.Command("ps", "-eo", "args=").Output()
	return err == nil && strings.Contains(string(out), "--user-data-dir="+path)
}
