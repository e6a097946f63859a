package serve

import (
	"fmt"
	"net/http"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/cmd/serve/browsertest"
)

// The whole job is done on a phone by taps and keys, and the record is the one that the command would have written.
func TestInABrowserTheWholeJobIsDoneOnAPhone(t *testing.T) {
	b := browsertest.Open(t)
	for _, script := range []bool{true, false} {
		t.Run(fmt.Sprintf("script %v", script), func(t *testing.T) {
			s := siteOf(t, "batches", begun)
			base, link := guarded(t, s, false)
			tab := b.Tab(t).Phone().Script(script)
			tab.Go(link)
			tab.TapOn(tab.Named(browsertest.Link, "Loft pale"))
			tab.Fill("#begin-name", "26-09")
			tab.Set("#begin-at", "2026-11-06T14:00")
			tab.TapOn(tab.Named(browsertest.Button, "Start the batch"))
			require.Contains(t, tab.Text("#said"), "26-09")
			require.True(t, strings.HasPrefix(tab.URL(), base+"/batch/"), tab.URL())
			record := s.read("26-09.malt")
			byCommand := typedAll(t, s.folder, record)
			for i, x := range job {
				s.at(x.at)
				thumbed(t, tab, x, script)
				require.Equal(t, byCommand[i], s.read("26-09.malt"), x.typed)
				if x.undone {
					tab.TapOn("#said form button")
					require.Equal(t, record, s.read("26-09.malt"), "%s: taken back", x.typed)
				}
				record = s.read("26-09.malt")
			}
			assert.Contains(t, tab.Text("main"), "It is over")
			assert.Zero(t, tab.Sideways())
			assert.Empty(t, tab.Said())
			tab.TapOn(tab.Named(browsertest.Link, "Batches"))
			assert.Equal(t, 1, browsertest.Eval[int](tab, `[...document.querySelectorAll("section[aria-labelledby=over] a")].filter(a => a.textContent.includes("26-09")).length`))
		})
	}
}

// thumbed fills in the form of a reading, looks at what it comes to and writes it.
func thumbed(t *testing.T, tab *browsertest.Tab, x step, script bool) {
	t.Helper()
	form := `form[data-entry="` + x.form[1] + `"]`
	if !browsertest.Eval[bool](tab, fmt.Sprintf("document.querySelector(%q).closest('details').open", form)) {
		tab.Tap("details:has(" + form + ") > summary")
	}
	for i := 2; i < len(x.form); i += 2 {
		filled(t, tab, form, x.form[i], x.form[i+1], script)
	}
	for _, name := range []string{nameIn, nameAfter, nameClean} { // what the form chose by itself, and is not said
		if !slices.Contains(x.form, name) && tab.Count(form+` [name="`+name+`"]`) > 0 {
			filled(t, tab, form, name, "", script)
		}
	}
	a := tab.TapOn(form + " button[type=submit]")
	require.Equal(t, http.StatusOK, a.Status, tab.Text("main"))
	require.Equal(t, x.doubted, strings.Contains(tab.Text("#answer"), "doubtful"), "%s: %s", x.typed, tab.Text("#answer"))
	write := `#answer button[name="write"][value="yes"]`
	if x.doubted {
		write = `#answer button[name="write"][value="sure"]`
	}
	a = tab.TapOn(write)
	require.Equal(t, http.StatusOK, a.Status, tab.Text("main"))
	require.Equal(t, 1, tab.Count("#said"), "%s: %s", x.typed, tab.Text("main"))
}

// filled puts one value into a form by what its field is: what it holds already stays.
func filled(t *testing.T, tab *browsertest.Tab, form, name, value string, script bool) {
	t.Helper()
	named := form + ` [name="` + name + `"]`
	value = strings.Join(strings.Fields(value), " ") // a field of one line
	switch kind := browsertest.Eval[string](tab, fmt.Sprintf("document.querySelector(%q).type", named)); kind {
	case "hidden":
		require.Equal(t, value, browsertest.Eval[string](tab, fmt.Sprintf("document.querySelector(%q).value", named)), named)
	case "radio":
		tab.Tap(form + ` label:has([name="` + name + `"][value="` + value + `"])`)
		require.True(t, browsertest.Eval[bool](tab, fmt.Sprintf("document.querySelector(%q).checked", named+`[value="`+value+`"]`)), named)
	case "select-one":
		tab.Set(named, value)
	default:
		pad := form + " .pad"
		if !script || name != "value" || tab.Count(pad) == 0 || strings.Contains(value, ",") {
			tab.Fill(named, value)
			break
		}
		for _, key := range value {
			tab.Tap(tab.Named(pad+" button", map[rune]string{'.': "point"}[key]+strings.Trim(string(key), ".")))
		}
	}
	require.Equal(t, value, browsertest.Eval[string](tab, fmt.Sprintf(`new FormData(document.querySelector(%q)).get(%q)`, form, name)), named)
}
