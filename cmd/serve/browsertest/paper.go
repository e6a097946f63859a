package browsertest

import "github.com/chromedp/cdproto/page"

// PDF is the page as the browser prints it, on the paper that the page asks for.
func (tab *Tab) PDF() []byte {
	tab.t.Helper()
	return send(tab, page.PrintToPDF, page.PrintToPDFParams{PreferCSSPageSize: new(true)}).Data
}
