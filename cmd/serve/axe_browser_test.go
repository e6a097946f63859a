package serve

import (
	"net/http"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/cmd/serve/browsertest"
)

// further are states of the pages beside the screens that are kept.
var further = []screen{
	{name: "danger on the batch", at: func(t *testing.T, b *browsertest.Browser) *browsertest.Tab {
		tab, batch := inDanger(t, b)
		tab.Go(batch)
		require.Contains(t, tab.Text(".wrong"), "danger")
		return tab
	}},
	{name: "danger on the list", at: func(t *testing.T, b *browsertest.Browser) *browsertest.Tab {
		tab, _ := inDanger(t, b)
		tab.Follow(tab.Named(browsertest.Link, "Batches"))
		require.Contains(t, tab.Text(".wrong"), "danger")
		return tab
	}},
	{name: "written", at: func(t *testing.T, b *browsertest.Browser) *browsertest.Tab {
		_, _, batch, tab := opened(t, b)
		weighedAs(tab, batch, "9.12")
		tab.Follow("#answer button")
		require.Equal(t, 1, tab.Count("#said"))
		return tab
	}},
	{name: "refused", at: func(t *testing.T, b *browsertest.Browser) *browsertest.Tab {
		_, _, batch, tab := opened(t, b)
		weighedAs(tab, batch, "heavy")
		require.Contains(t, tab.Text("#answer"), "not written")
		return tab
	}},
	{name: "not begun", at: func(t *testing.T, b *browsertest.Browser) *browsertest.Tab {
		_, base, _, tab := opened(t, b)
		tab.Go(base + "/")
		tab.Follow(tab.Named(browsertest.Link, "Loft pale"))
		tab.Fill("#begin-name", "../out")
		tab.Follow(tab.Named(browsertest.Button, "Start the batch"))
		require.Contains(t, tab.Text("main"), "not begun")
		return tab
	}},
	{name: "what if", at: func(t *testing.T, b *browsertest.Browser) *browsertest.Tab {
		_, base, _, tab := opened(t, b)
		tab.Go(base + "/")
		tab.Follow(tab.Named(browsertest.Link, "Loft pale"))
		tab.Set("#lines", browsertest.Eval[string](tab, `document.querySelector("#lines-help code").textContent`))
		tab.Follow("form:has(#lines) button")
		require.Equal(t, 1, tab.Count("#supposed table"), tab.Text("main"))
		return tab
	}},
	{name: "away", at: func(t *testing.T, b *browsertest.Browser) *browsertest.Tab {
		_, _, batch, tab := opened(t, b)
		tab.Go(batch)
		tab.Until(`localStorage.length > 0`)
		tab.Away(true)
		tab.Click(`details:has(form[data-entry="temperature"]) > summary`)
		tab.Fill(`form[data-entry="temperature"] [name="value"]`, "16.3")
		tab.Click(`form[data-entry="temperature"] button[type=submit]`)
		tab.Wait("#waiting")
		return tab
	}},
	{name: "nowhere", at: func(t *testing.T, b *browsertest.Browser) *browsertest.Tab {
		_, base, _, tab := opened(t, b)
		require.Equal(t, http.StatusNotFound, tab.Go(base+"/nowhere").Status)
		return tab
	}},
	{name: "report", at: func(t *testing.T, b *browsertest.Browser) *browsertest.Tab {
		_, _, batch, tab := opened(t, b)
		tab.Go(batch + "/report")
		return tab
	}},
}

// inDanger is a batch of which a remark tells something that can hurt.
func inDanger(t *testing.T, b *browsertest.Browser) (tab *browsertest.Tab, batch string) {
	t.Helper()
	s, base, batch, tab := opened(t, b)
	s.wrote(batch[len(base):], "kind", "remark", "danger", "mould")
	return tab, batch
}

// No page in any state keeps somebody from using it, with all of it folded out, light and dark.
func TestInABrowserNoStateShutsAnybodyOut(t *testing.T) {
	b := browsertest.Open(t)
	for _, x := range append(append([]screen{}, screens...), further...) {
		t.Run(x.name, func(t *testing.T) {
			browsertest.NeedsAxe(t)
			tab := x.at(t, b).Phone()
			browsertest.Eval[bool](tab, `document.querySelectorAll("details").forEach(d => { d.removeAttribute("name"); d.open = true }) || true`)
			assert.Empty(t, tab.Axe())
			assert.Empty(t, tab.Dark(true).Contrast(), "dark")
		})
	}
}
