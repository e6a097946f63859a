package browsertest

import (
	"fmt"

	"github.com/chromedp/cdproto/page"
	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/require"
)

// The roles that Named looks for.
const (
	Link   = "a[href]"
	Button = "button"
	Fold   = "summary" // what folds something out
)

// Named gives a selector of CSS for the first that is seen of a role and has the text in its name.
func (tab *Tab) Named(role, name string) string {
	tab.t.Helper()
	const look = `(() => {
		const named = e => (e.getAttribute("aria-label") || e.textContent).replace(/\s+/g, " ").trim();
		const found = [...document.querySelectorAll(%s)].find(e => e.getClientRects().length && named(e).includes(%s));
		if (!found) return false;
		document.querySelectorAll("[data-named]").forEach(e => e.removeAttribute("data-named"));
		found.setAttribute("data-named", "");
		return true;
	})()`
	require.True(tab.t, Eval[bool](tab, fmt.Sprintf(look, quoted(role), quoted(name))), "no %s with %q in its name", role, name)
	return "[data-named]"
}

// TapOn taps with a finger on what a selector of CSS finds, and waits for the page that comes.
func (tab *Tab) TapOn(css string) Answer {
	tab.t.Helper()
	return tab.await(chromedp.Tap(chromedp.CSS(css)))
}

// Set gives a field a value that is chosen and not typed, such as a time or one of a list, and tells its page.
func (tab *Tab) Set(css, value string) {
	tab.t.Helper()
	const set = `(() => {
		const e = document.querySelector(%s);
		e.value = %s;
		for (const told of ["input", "change"]) e.dispatchEvent(new Event(told, { bubbles: true }));
		return e.value;
	})()`
	require.Equal(tab.t, value, Eval[string](tab, fmt.Sprintf(set, quoted(css), quoted(value))), css)
}

// PressOn presses keys wherever the focus is, and waits for the page that comes.
func (tab *Tab) PressOn(keys string) Answer {
	tab.t.Helper()
	return tab.await(chromedp.KeyEvent(keys))
}

// Before runs a script ahead of those of each page that comes.
func (tab *Tab) Before(script string) *Tab {
	tab.t.Helper()
	send(tab, page.AddScriptToEvaluateOnNewDocument, page.AddScriptToEvaluateOnNewDocumentParams{Source: script})
	return tab
}
