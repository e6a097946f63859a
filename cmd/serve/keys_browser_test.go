package serve

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/cmd/serve/browsertest"
)

// order are the things of a page that can be reached by keys, in the order in which they are read; of radio buttons that
// belong together the one that is chosen. The value of each is its place among all elements.
const order = `[...document.querySelectorAll("a[href],button,summary,input:not([type=hidden]),select,textarea")].filter(e => e.checkVisibility() && !e.disabled && e.tabIndex >= 0 && !(e.type === "radio" && !e.checked)).map(e => [...document.querySelectorAll("*")].indexOf(e))`

// focused tells where the focus is, and whether it is seen to be there. Of a time the browser marks the part that is meant.
const focused = `(() => {
	const e = document.activeElement, style = getComputedStyle(e), box = e.getBoundingClientRect();
	return {
		at: e === document.body ? -1 : [...document.querySelectorAll("*")].indexOf(e),
		name: (e.labels && e.labels.length ? e.labels[0] : e).textContent.replace(/\s+/g, " ").trim().slice(0, 60),
		seen: e.type === "datetime-local" || style.outlineStyle !== "none" && parseFloat(style.outlineWidth) >= 2 && style.outlineColor !== getComputedStyle(document.body).backgroundColor,
		inside: box.width > 0 && box.bottom > 0 && box.top < innerHeight && box.right > 0 && box.left < innerWidth,
	};
})()`

type focus struct {
	At           int
	Name         string
	Seen, Inside bool
}

// toByKeys presses Tab until the focus is on something of a name, and asks of each step on the way that it is seen and in its order.
func toByKeys(t *testing.T, tab *browsertest.Tab, name string) {
	t.Helper()
	before := browsertest.Eval[focus](tab, focused).At
	for range 150 {
		f := nextByKeys(t, tab)
		require.GreaterOrEqual(t, f.At, before, "%q stands before what was reached before it", f.Name)
		if before = f.At; strings.Contains(f.Name, name) {
			return
		}
	}
	require.Fail(t, "not reached by keys", name)
}

func nextByKeys(t *testing.T, tab *browsertest.Tab) focus {
	t.Helper()
	tab.Press(browsertest.TabKey)
	f := browsertest.Eval[focus](tab, focused)
	require.True(t, f.Seen, "the focus is not seen on %q", f.Name)
	require.True(t, f.Inside, "the focus is out of the window on %q", f.Name)
	return f
}

// The first reading is begun, typed and written by Tab, Enter and what is typed alone.
func TestInABrowserAReadingIsWrittenByKeysAlone(t *testing.T) {
	s := siteOf(t, "batches", begun)
	_, link := guarded(t, s, false)
	tab := browsertest.Open(t).Tab(t)
	tab.Go(link)
	toByKeys(t, tab, "Loft pale")
	tab.PressOn(browsertest.Enter)
	toByKeys(t, tab, "Name of the batch")
	tab.Press("26-09") // in the place of what the field holds
	toByKeys(t, tab, "Start the batch")
	tab.PressOn(browsertest.Enter)
	record := s.read("26-09.malt")
	s.at("2026-11-06 21:05")
	batch, _, _ := strings.Cut(tab.URL(), "?")
	tab.Go(batch)

	want := browsertest.Eval[[]int](tab, order)
	went := []int{nextByKeys(t, tab).At}
	for range 10 * len(want) {
		if len(went) == len(want) {
			break
		}
		if at := nextByKeys(t, tab).At; at != went[len(went)-1] { // a time has a stop for each of its parts
			went = append(went, at)
		}
	}
	assert.Equal(t, want, went, "each thing is reached, in the order in which it is read")

	tab.Go(batch)
	toByKeys(t, tab, "Skip to the page")
	tab.Press(browsertest.Enter)
	toByKeys(t, tab, "Add a reading")
	tab.Press(browsertest.Enter)
	toByKeys(t, tab, "Weighed")
	if !browsertest.Eval[bool](tab, `document.activeElement.closest("details").open`) {
		tab.Press(browsertest.Enter)
	}
	toByKeys(t, tab, "What the scale shows")
	tab.Press("8.39")
	toByKeys(t, tab, "See what it comes to")
	tab.PressOn(browsertest.Enter)
	toByKeys(t, tab, "Write it")
	tab.PressOn(browsertest.Enter)
	assert.Contains(t, tab.Text("#said"), "8.39 kg")
	assert.Equal(t, typed(t, s.folder, record, `weighed 8.39 kg in "blue tub" after soak 1`, s.now()), s.read("26-09.malt"))
	assert.Empty(t, tab.Said())
}
