package browsertest

import (
	"context"
	"slices"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/chromedp/cdproto/cdp"
	"github.com/chromedp/cdproto/log"
	"github.com/chromedp/cdproto/network"
	"github.com/chromedp/cdproto/page"
	"github.com/chromedp/cdproto/runtime"
	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
	"github.com/stretchr/testify/require"
)

// Keys for Press.
const (
	Enter  = kb.Enter
	TabKey = kb.Tab
	Escape = kb.Escape
	Space  = " "
)

// Tab is a tab of a browser.
type Tab struct {
	ctx context.Context
	t   testing.TB

	mu      sync.Mutex
	said    []string
	dialogs []string
}

// Tab opens a tab with cookies and a store of its own.
func (b *Browser) Tab(t testing.TB) *Tab {
	t.Helper()
	return open(t, b.ctx, chromedp.WithNewBrowserContext())
}

// Beside opens another tab of the same person, with the same cookies.
func (tab *Tab) Beside(t testing.TB) *Tab {
	t.Helper()
	return open(t, tab.ctx)
}

func open(t testing.TB, parent context.Context, options ...chromedp.ContextOption) *Tab {
	t.Helper()
	tab := &Tab{t: t}
	ctx, cancel := chromedp.NewContext(parent, append(options, chromedp.WithListener(tab.listen))...)
	tab.ctx = ctx
	t.Cleanup(cancel)
	require.NoError(t, chromedp.Do(ctx)) // the tab lives as long as the context of the first that is done with it
	return tab.Desk()
}

// listen keeps what the page says on its console, what the browser says of the page, and dialogs,
// which are dismissed.
func (tab *Tab) listen(event any) {
	tab.mu.Lock()
	defer tab.mu.Unlock()
	switch e := event.(type) {
	case *runtime.EventExceptionThrown:
		text := e.ExceptionDetails.Text
		if x := e.ExceptionDetails.Exception; x != nil {
			text += " " + x.Description
		}
		tab.said = append(tab.said, "exception: "+text)
	case *runtime.EventConsoleAPICalled:
		if e.Type == runtime.ConsoleAPICalledTypeError {
			tab.said = append(tab.said, "console.error")
		}
	case *log.EventEntryAdded:
		if e.Entry.Level == log.EntryLevelError {
			tab.said = append(tab.said, e.Entry.Text+" "+e.Entry.URL)
		}
	case *page.EventJavascriptDialogOpening:
		tab.dialogs = append(tab.dialogs, e.Message)
		go func() { // not from here: the answer to the call comes by the same way
			_, _ = chromedp.Call(tab.ctx, page.HandleJavaScriptDialog, page.HandleJavaScriptDialogParams{Accept: false})
		}()
	}
}

// Said gives what went wrong in the page by its console and the browser, such as what the
// content security policy refused or a script that broke, and forgets it.
func (tab *Tab) Said() []string {
	tab.mu.Lock()
	defer tab.mu.Unlock()
	said := tab.said
	tab.said = nil
	return said
}

// Dialogs gives the texts of alerts and questions that the page opened.
func (tab *Tab) Dialogs() []string {
	tab.mu.Lock()
	defer tab.mu.Unlock()
	return slices.Clone(tab.dialogs)
}

func (tab *Tab) do(steps ...chromedp.Action[chromedp.Void]) {
	tab.t.Helper()
	ctx, cancel := context.WithTimeout(tab.ctx, patience)
	defer cancel()
	require.NoError(tab.t, chromedp.Do(ctx, steps...))
}

func ask[T any](tab *Tab, a chromedp.Action[T]) T {
	tab.t.Helper()
	ctx, cancel := context.WithTimeout(tab.ctx, patience)
	defer cancel()
	v, err := chromedp.Run(ctx, a)
	require.NoError(tab.t, err)
	return v
}

func send[P, R any](tab *Tab, c cdp.Command[P, R], params P) R {
	tab.t.Helper()
	return ask(tab, func(ctx context.Context, target *chromedp.Target) (R, error) { return cdp.Call(ctx, target, c, params) })
}

// Answer is how a page was answered.
type Answer struct {
	Status int
	URL    string // behind all redirects
	Header map[string]string
}

func answered(r *network.Response) Answer {
	a := Answer{Status: int(r.Status), URL: r.URL, Header: map[string]string{}}
	for name, value := range r.Headers {
		if text, is := value.(string); is {
			a.Header[strings.ToLower(name)] = text
		}
	}
	return a
}

// Go goes to an address.
func (tab *Tab) Go(url string) Answer {
	tab.t.Helper()
	return answered(ask(tab, chromedp.NavigateResponse(url)))
}

// TryGo goes to an address that may not be answered at all.
func (tab *Tab) TryGo(url string) (Answer, error) {
	ctx, cancel := context.WithTimeout(tab.ctx, patience)
	defer cancel()
	r, err := chromedp.Run(ctx, chromedp.NavigateResponse(url))
	if err != nil {
		return Answer{}, err
	}
	return answered(r), nil
}

// Follow clicks on what a selector of CSS finds, and waits for the page that comes.
func (tab *Tab) Follow(css string) Answer {
	tab.t.Helper()
	return tab.await(chromedp.Click(chromedp.CSS(css)))
}

// Send presses Enter in a field, and waits for the page that comes.
func (tab *Tab) Send(css string) Answer {
	tab.t.Helper()
	return tab.await(chromedp.SendKeys(chromedp.CSS(css), kb.Enter))
}

func (tab *Tab) await(step chromedp.Action[chromedp.Void]) Answer {
	tab.t.Helper()
	ctx, cancel := context.WithTimeout(tab.ctx, patience)
	defer cancel()
	r, err := chromedp.RunResponse(ctx, step)
	require.NoError(tab.t, err)
	return answered(r)
}

// Reload loads the page again.
func (tab *Tab) Reload() { tab.t.Helper(); tab.do(chromedp.Reload()) }

// Click clicks on what a selector of CSS finds, where no page comes of it.
func (tab *Tab) Click(css string) { tab.t.Helper(); tab.do(chromedp.Click(chromedp.CSS(css))) }

// Tap does the same by a finger.
func (tab *Tab) Tap(css string) { tab.t.Helper(); tab.do(chromedp.Tap(chromedp.CSS(css))) }

// Fill writes a text into a field in the place of what was there.
func (tab *Tab) Fill(css, text string) {
	tab.t.Helper()
	tab.do(chromedp.Clear(chromedp.CSS(css)), chromedp.SendKeys(chromedp.CSS(css), text))
}

// Press presses keys wherever the focus is.
func (tab *Tab) Press(keys string) { tab.t.Helper(); tab.do(chromedp.KeyEvent(keys)) }

// Wait waits until what a selector of CSS finds is seen.
func (tab *Tab) Wait(css string) { tab.t.Helper(); tab.do(chromedp.WaitVisible(chromedp.CSS(css))) }

// Until waits until an expression of the page is true, be it another page by then.
func (tab *Tab) Until(expression string) {
	tab.t.Helper()
	ctx, cancel := context.WithTimeout(tab.ctx, patience)
	defer cancel()
	for {
		is, err := chromedp.Run(ctx, chromedp.Evaluate[bool](expression)) // a page that goes away in the meantime gives an error
		if is && err == nil {
			return
		}
		require.NoError(tab.t, ctx.Err(), "never: %s", expression)
		time.Sleep(10 * time.Millisecond)
	}
}

// Text is the text of what a selector of CSS finds, as it is seen.
func (tab *Tab) Text(css string) string {
	tab.t.Helper()
	return ask(tab, chromedp.Text(chromedp.CSS(css)))
}

// Value is what stands in a field.
func (tab *Tab) Value(css string) string {
	tab.t.Helper()
	return ask(tab, chromedp.Value(chromedp.CSS(css)))
}

// Count is how many a selector of CSS finds.
func (tab *Tab) Count(css string) int {
	tab.t.Helper()
	return Eval[int](tab, "document.querySelectorAll("+quoted(css)+").length")
}

// HTML is the page as it stands.
func (tab *Tab) HTML() string {
	tab.t.Helper()
	return Eval[string](tab, "document.documentElement.outerHTML")
}

// URL is the address that the tab shows.
func (tab *Tab) URL() string { tab.t.Helper(); return Eval[string](tab, "location.href") }

// Title is the title of the page.
func (tab *Tab) Title() string { tab.t.Helper(); return Eval[string](tab, "document.title") }

// Eval is what an expression comes to in the page; a promise is waited for. It works in a page without
// script too, and past its content security policy.
func Eval[T any](tab *Tab, expression string) T {
	tab.t.Helper()
	return ask(tab, chromedp.Evaluate[T](expression, chromedp.EvalAwaitPromise))
}

// Cookies gives the cookies of the page.
func (tab *Tab) Cookies() []*network.Cookie {
	tab.t.Helper()
	return send(tab, network.GetCookies, network.GetCookiesParams{}).Cookies
}
