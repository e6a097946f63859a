package serve

import (
	"bytes"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"maltwright/cmd/serve/browsertest"
	"maltwright/lang/source/golden"
)

// screen is a page in a state that people see.
type screen struct {
	name   string
	sheets int // of paper that it takes at most, whatever the font
	at     func(t *testing.T, b *browsertest.Browser) *browsertest.Tab
}

// screens are those that are kept.
var screens = []screen{
	{"list", 2, func(t *testing.T, b *browsertest.Browser) *browsertest.Tab {
		_, base, _, tab := opened(t, b)
		tab.Go(base + "/")
		return tab
	}},
	{"list-empty", 1, func(t *testing.T, b *browsertest.Browser) *browsertest.Tab {
		_, link := guarded(t, siteOf(t, "", "2026-04-14 12:00"), false)
		tab := b.Tab(t)
		tab.Go(link)
		return tab
	}},
	{"batch", 4, func(t *testing.T, b *browsertest.Browser) *browsertest.Tab {
		_, _, batch, tab := opened(t, b)
		tab.Go(batch)
		return tab
	}},
	{"batch-over", 8, func(t *testing.T, b *browsertest.Browser) *browsertest.Tab {
		_, base, _, tab := opened(t, b)
		tab.Go(base + "/")
		tab.Follow("section[aria-labelledby=over] tbody a")
		return tab
	}},
	{"process", 4, func(t *testing.T, b *browsertest.Browser) *browsertest.Tab {
		_, base, _, tab := opened(t, b)
		tab.Go(base + "/")
		tab.Follow(tab.Named(browsertest.Link, "Loft pale"))
		return tab
	}},
	{"answer", 2, func(t *testing.T, b *browsertest.Browser) *browsertest.Tab {
		_, _, batch, tab := opened(t, b)
		weighedAs(tab, batch, "9.12")
		return tab
	}},
	{"answer-doubtful", 2, func(t *testing.T, b *browsertest.Browser) *browsertest.Tab {
		_, _, batch, tab := opened(t, b)
		weighedAs(tab, batch, "10.10")
		return tab
	}},
}

// weighedAs sends a weight, to see what it comes to.
func weighedAs(tab *browsertest.Tab, batch, weight string) {
	const form = `form[data-entry="weighed"]`
	tab.Go(batch)
	tab.Click("details:has(" + form + ") > summary")
	tab.Fill(form+` [name="value"]`, weight)
	tab.Follow(form + " button[type=submit]")
}

// What a screen holds and in what order is kept, at each size and on paper; colours change nothing of it. What may
// not be on any screen is asked of each: a page that is wider than its window, text over text, and a target that a thumb misses.
func TestInABrowserScreensAreAsTheyAreKept(t *testing.T) {
	b := browsertest.Open(t)
	for _, x := range screens {
		t.Run(x.name, func(t *testing.T) {
			tab := x.at(t, b)
			kept, last := "", ""
			section := func(name string) {
				if now := tab.Outline(); now == last {
					kept += "== " + name + ": the same\n"
				} else {
					kept, last = kept+"== "+name+"\n"+now, now
				}
			}
			for _, size := range []struct {
				name string
				set  func() *browsertest.Tab
			}{{"phone", tab.Phone}, {"desk", tab.Desk}} {
				size.set()
				for _, dark := range []bool{false, true} {
					tab.Dark(dark)
					name := size.name + map[bool]string{true: ", dark"}[dark]
					section(name)
					fits(t, tab, name)
					shot(t, tab, x.name+"-"+strings.ReplaceAll(name, ", ", "-"))
					assert.Equal(t, dark, tab.OnDark(), "%s: dark", name)
				}
			}
			tab.Phone().Dark(false)
			browsertest.Eval[bool](tab, `(document.documentElement.style.fontSize = "200%") && true`) // text twice as large
			assert.Zero(t, tab.Sideways(), "large text is wider than its window: %s", wide(tab))
			shot(t, tab, x.name+"-large")
			browsertest.Eval[bool](tab, `(document.documentElement.style.fontSize = "") || true`)
			tab.Desk().Print(true)
			shot(t, tab, x.name+"-print")
			section("paper")
			assert.Empty(t, tab.Overlaps(), "paper")
			assert.False(t, tab.OnDark(), "paper is light")
			for _, tall := range browsertest.Eval[[]float64](tab, `[...document.querySelectorAll(".chart img")].map(e => e.getBoundingClientRect().height)`) {
				assert.Less(t, tall, 330., "two or three charts stand on a sheet of paper")
			}
			tab.Print(false)
			pages := bytes.Count(tab.PDF(), []byte("/Type /Page\n"))
			assert.Positive(t, pages)
			assert.LessOrEqual(t, pages, x.sheets, "sheets of paper")
			assert.Empty(t, tab.Said())
			golden.File(t, filepath.Join("testdata/screens", x.name+".txt"), kept)
		})
	}
}

// fits asks of a screen what is asked of each.
func fits(t *testing.T, tab *browsertest.Tab, name string) {
	t.Helper()
	assert.Zero(t, tab.Sideways(), "%s is wider than its window: %s", name, wide(tab))
	assert.Empty(t, tab.Overlaps(), "%s: text over text", name)
	assert.Empty(t, tab.Small(48), "%s: small", name)
}
