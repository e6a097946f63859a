package guard

import (
	"fmt"
	"html"
	"net/http"
	"strconv"
	"strings"
)

// refusal is an answer without the handler.
type refusal struct {
	status int
	says   string
	again  int  // in how many seconds to come again; 0 says nothing of it
	link   bool // a link to the first page, which a browser may open from here though it could not from elsewhere
}

// refuse answers with a page of one sentence, and logs a line.
func (g *Guard) refuse(w http.ResponseWriter, r *http.Request, no refusal) {
	if no.again > 0 {
		w.Header().Set("Retry-After", strconv.Itoa(no.again))
	}
	if no.status == http.StatusMethodNotAllowed {
		w.Header().Set("Allow", strings.Join(methods, ", "))
	}
	if r.Body != nil && r.ContentLength != 0 {
		w.Header().Set("Connection", "close") // what was sent with it is not read
	}
	if g.Log != nil {
		g.Log(fmt.Sprintf("%d %s of %s: %s", no.status, shown(r.Method, 10), client(r), loggedPath(r)))
	}
	page(w, r, no.status, http.StatusText(no.status), no.says, no.link)
}

// loggedPath is what a request asked for, without tokens, in quotes and short.
func loggedPath(r *http.Request) string {
	if _, isLink := link(r); isLink {
		return strconv.Quote(way) + " (a wrong link)"
	}
	text := shown(r.URL.EscapedPath(), 80)
	if r.Host != "" {
		text += " by " + shown(r.Host, 80)
	}
	return text
}

// shown is a text of a request as a log may hold it: signs that a terminal acts on are written out, and so are ends of lines.
func shown(text string, most int) string {
	if len(text) > most {
		text = text[:most] + "…"
	}
	return strconv.QuoteToASCII(text)
}

// page writes a page of one sentence.
func page(w http.ResponseWriter, r *http.Request, status int, title, says string, link bool) {
	w.Header().Set("Content-Type", "text/html; charset=utf-8")
	w.WriteHeader(status)
	if r.Method == http.MethodHead {
		return
	}
	on := ""
	if link {
		on = "\n<p><a href=\"/\">Open the page</a></p>"
	}
	fmt.Fprintf(w, `<!doctype html>
<html lang="en">
<head><meta charset="utf-8"><meta name="viewport" content="width=device-width"><meta name="color-scheme" content="light dark"><title>%s – maltwright</title></head>
<body><main><h1>%s</h1>
<p>%s</p>%s</main></body>
</html>
`, html.EscapeString(title), html.EscapeString(title), html.EscapeString(says), on)
}
