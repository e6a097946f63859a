package guard

import (
	"context"
	"net/http"
	"strings"
	"time"
)

// role is what somebody may do.
type role int

const (
	nobody role = iota // the request is answered already
	reader
	writer
)

type roleKey struct{}

// MayWrite tells whether a request comes from somebody who may write. Without a guard nobody may.
func MayWrite(ctx context.Context) bool {
	who, _ := ctx.Value(roleKey{}).(role)
	return who == writer
}

// who finds out who asks, by the cookie or by a token. A link is answered with a cookie and the way on.
func (g *Guard) who(w http.ResponseWriter, r *http.Request) (role, *refusal) {
	if said, isLink := link(r); isLink {
		return nobody, g.enter(w, r, said)
	}
	if r.URL.Path == calendarPath && r.URL.Query().Has(keyOf) {
		return g.calendar(r)
	}
	who := g.cookies.who(r)
	switch {
	case who == nobody:
		return nobody, &refusal{status: http.StatusUnauthorized, link: true,
			says: "This page opens by the link that the program printed when it was started. If you opened it before, it was started anew since, and has another link: open that one in this browser, by its code or its address. Readings that wait on this phone stay there, and are sent then."}
	case who == reader && r.Method == http.MethodPost:
		return nobody, &refusal{status: http.StatusForbidden, says: "This link is for reading, and nothing was done."}
	}
	return who, nil
}

// link gives the token of a link.
func link(r *http.Request) (said string, is bool) {
	if r.Method == http.MethodPost || len(r.URL.Path) < len(way) || !strings.EqualFold(r.URL.Path[:len(way)], way) {
		return "", false
	}
	return r.URL.Path[len(way):], true
}

// enter swaps a token for a cookie. Wrong ones are counted, and over the limit none is looked at.
func (g *Guard) enter(w http.ResponseWriter, r *http.Request, said string) *refusal {
	if !g.wrong.has(client(r), g.Clock()) {
		return &refusal{status: http.StatusTooManyRequests, again: 60, says: "Too many wrong links were tried from there. Wait a minute."}
	}
	if who := g.entered(said); who != nobody {
		http.SetCookie(w, g.cookies.of(who))
		goOn(w, r)
		return nil
	}
	g.wrong.take(client(r), g.Clock())
	return &refusal{status: http.StatusUnauthorized, says: "That link is not right, or holds no more: the program was started anew since. Open the link that it shows now."}
}

// entered is what somebody may do who came by a link.
func (g *Guard) entered(said string) role {
	switch {
	case g.Write.is(said) || g.ticket.spend(said, g.Clock()):
		return writer
	case g.Read.is(said):
		return reader
	}
	return nobody
}

// calendar lets the token of the calendar open the calendar. It gives no cookie, and the handler does not see it.
func (g *Guard) calendar(r *http.Request) (role, *refusal) {
	if !g.wrong.has(client(r), g.Clock()) {
		return nobody, &refusal{status: http.StatusTooManyRequests, again: 60, says: "Too many wrong links were tried from there. Wait a minute."}
	}
	query := r.URL.Query()
	if r.Method == http.MethodPost || !g.Calendar.is(query.Get(keyOf)) {
		g.wrong.take(client(r), g.Clock())
		return nobody, &refusal{status: http.StatusUnauthorized, says: "That is not the address of the calendar."}
	}
	query.Del(keyOf)
	r.URL.RawQuery = query.Encode()
	r.RequestURI = r.URL.RequestURI()
	return reader, nil
}

// goOn sends who came by a link to the first page. A browser that followed a link of another site does not send a strict cookie along a
// redirect: there a page of our own asks for it.
func goOn(w http.ResponseWriter, r *http.Request) {
	if elsewhere(r) {
		w.Header().Set("Refresh", "0; url=/")
		page(w, r, http.StatusOK, "Open", `The page opens by itself.`, true)
		return
	}
	http.Redirect(w, r, "/", http.StatusSeeOther)
}

// cookies are those of one server: its port is in their name, for browsers send cookies of a host to all of its ports.
type cookies struct {
	name   string
	secure bool
	known  map[role]Token
}

// lasts is how long a browser keeps a cookie; what it opens ends before, with the program or with the keys of it.
const lasts = 30 * 24 * time.Hour

func cookiesFor(o Options) cookies {
	name := "maltwright"
	if len(o.Hosts) > 0 {
		if i := strings.LastIndexByte(o.Hosts[0], ':'); i >= 0 {
			name += "-" + o.Hosts[0][i+1:]
		}
	}
	if o.Secure {
		name = "__Host-" + name
	}
	known := map[role]Token{writer: o.WriteCookie, reader: o.ReadCookie}
	for who, token := range known {
		if !token.Whole() {
			known[who] = NewToken()
		}
	}
	return cookies{name, o.Secure, known}
}

func (c cookies) of(who role) *http.Cookie {
	return &http.Cookie{Name: c.name, Value: string(c.known[who]), Path: "/", HttpOnly: true, Secure: c.secure, SameSite: http.SameSiteStrictMode, MaxAge: int(lasts / time.Second)}
}

func (c cookies) who(r *http.Request) role {
	for _, cookie := range r.CookiesNamed(c.name) {
		for who, token := range c.known {
			if token.is(cookie.Value) {
				return who
			}
		}
	}
	return nobody
}
