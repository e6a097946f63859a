package guard

import (
	"mime"
	"net/http"
	"slices"
	"strings"
)

// methods are all that are answered.
var methods = []string{http.MethodGet, http.MethodHead, http.MethodPost}

// sent are the kinds of body that are read: those of a form, and what the script of the page keeps. A page of elsewhere cannot send the
// last without asking first, and is not answered then.
var sent = []string{"application/x-www-form-urlencoded", "multipart/form-data", "application/json"}

// form asks that a request looks like one of the page.
func (g *Guard) form(r *http.Request) *refusal {
	if !g.asked.take(client(r), g.Clock()) {
		return &refusal{status: http.StatusTooManyRequests, says: "That is more in a second than a page asks for. Come again in a moment.", again: 2}
	}
	switch {
	case !slices.Contains(methods, r.Method):
		return &refusal{status: http.StatusMethodNotAllowed, says: "Pages are read, and forms are sent; nothing else is answered."}
	case len(r.RequestURI) > g.Limits.Address:
		return &refusal{status: http.StatusRequestURITooLong, says: "That address is too long."}
	case !plain(r.URL.EscapedPath()):
		return &refusal{status: http.StatusNotFound, says: "There is no such page."}
	case r.ContentLength > g.Limits.Body:
		return &refusal{status: http.StatusRequestEntityTooLarge, says: "That is more than a form holds, and nothing was done."}
	case r.Method == http.MethodPost && !slices.Contains(sent, kind(r)):
		return &refusal{status: http.StatusUnsupportedMediaType, says: "That is not sent as a form is, and nothing was done."}
	}
	return nil
}

func kind(r *http.Request) string {
	of, _, err := mime.ParseMediaType(r.Header.Get("Content-Type"))
	if err != nil {
		return ""
	}
	return of
}

// plain tells whether a path as it was sent holds nothing but names of letters, digits, points and hyphens. No page has another, so that none is decoded,
// cleaned or looked for.
func plain(path string) bool {
	rest, rooted := strings.CutPrefix(path, "/")
	if !rooted {
		return false
	}
	for name := range strings.SplitSeq(rest, "/") {
		if name == "" && rest != "" || strings.HasPrefix(name, ".") || strings.ContainsFunc(name, notOfName) {
			return false
		}
	}
	return true
}

func notOfName(c rune) bool {
	return !(c >= 'a' && c <= 'z' || c >= 'A' && c <= 'Z' || c >= '0' && c <= '9' || c == '.' || c == '-' || c == '_')
}
