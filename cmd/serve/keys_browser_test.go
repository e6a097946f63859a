package serve

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"maltwright/cmd/serve/browsertest"
)

// order are the things of a page that can be reached by keys, in the order in which they are read; of radio buttons that
// belong together the one that is chosen. The value of each is its place among all elements.
const order = `[...document.querySelectorAll("a[href],button,summary,input:not([type=hidden]),select,textarea")].filter(e => e.checkVisibility() && !e.disabled && e.tabIndex >= 0 && !(e.type === "radio" && !e.checked)).map(e => [...document.querySelectorAll("*")].indexOf(e))`

// focused tells where the focus is, and how it is seen to be there.
const focused = `(() => {
	const e = document.activeElement, style = getComputedStyle(e), box = e.getBoundingClientRect();
	return {
		at: e === document.body ? -1 : [...document.querySelectorAll("*")].indexOf(e),
		name: (e.labels && e.labels.length ? e.labels[0] : e).textContent.replace(/\s+/g, " ").trim().slice(0, 60),
		seen: style.outlineStyle !== "none" && parseFloat(style.outlineWidth) >= 2 && style.outlineColor !== getComputedStyle(document.body).backgroundColor,
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
	for range 120 {
		tab.Press(browsertest.TabKey)
		f := browsertest.Eval[focus](tab, focused)
		require.True(t, f.Seen, "the focus is not seen on %q", f.Name)
		require.True(t, f.Inside, "the focus is out of the window on %q", f.Name)
		require.Greater(t, f.At, before, "%q stands before what was reached before it", f.Name)
		if before = f.At; strings.Contains(f.Name, name) {
			return
		}
	}
	require.Fail(t, "not reached by keys", name)
}

// The first reading of the job is begun, typed and written by the keyboard alone.
func TestInABrowserAReadingIsWrittenByKeysAlone(t *testing.T) {
	s := siteOf(t, "batches", begun)
	_, link := guarded(t, s, false)
	tab := browsertest.Open(t).Tab(t)
	tab.Go(link)
	toByKeys(t, tab, "Loft pale")
	enter(tab)
	toByKeys(t, tab, "Name of the batch")
	tab.Press("26-09") // in the place of what is chosen in the field
	toByKeys(t, tab, "Start the batch")
	enter(tab)
	record := s.read("26-09.malt")
	x := job[0]
	s.at(x.at)
	tab.Reload()

	t.Run("each thing once and in order", func(t *testing.T) {
		tab := tab.Beside(t)
		tab.Go(browsertest.Eval[string](tab, `""`) + batchOf(t, s, link))
		var went []int
		for range browsertest.Eval[[]int](tab, order) {
			tab.Press(browsertest.TabKey)
			went = append(went, browsertest.Eval[focus](tab, focused).At)
		}
		assert.Equal(t, browsertest.Eval[[]int](tab, order), went)
	})

	toByKeys(t, tab, "Skip to the page")
	enter(tab)
	toByKeys(t, tab, "Add a reading")
	enter(tab)
	kind := "Weighed"
	toByKeys(t, tab, kind)
	if !browsertest.Eval[bool](tab, `document.activeElement.parentElement.open`) {
		tab.Press(browsertest.Enter)
	}
	toByKeys(t, tab, "What the scale shows")
	tab.Press("7.40")
	toByKeys(t, tab, "in “blue tub”")
	_ = fmt.Sprint
	toByKeys(t, tab, "See what it comes to")
	enter(tab)
	toByKeys(t, tab, "Write it")
	enter(tab)
	require.Equal(t, typed(t, s.folder, record, x.typed, s.now()), s.read("26-09.malt"))
	assert.Contains(t, tab.Text("#said"), "7.40 kg")
}
