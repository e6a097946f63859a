// Package guard stands around the pages of cmd/serve: it decides who may ask, what, how much and how often.
//
// # How it works
//
// A request goes through the checks in this order, and the first that fails answers it:
//
//  1. Its form: method, length, characters of its path, and how many its client sent in a second.
//  2. The name it was asked by. A page of elsewhere can have its own name lead to this
//     machine and then read answers as its own (DNS rebinding): a name that is not listed is answered with 421.
//  3. Where it comes from. A page of another origin, be it another port of this machine, can neither send a form nor embed
//     anything: 403.
//  4. What it knows. The token of a link, 128 random bits, is swapped for a cookie that scripts cannot read and other sites
//     cannot have sent; without either it is 401. There are three tokens: to write, to read, and of the calendar.
//
// A token of the calendar opens the calendar and nothing else. What a reader sends is refused with 403. A handler asks
// MayWrite of its context and leaves the forms out.
//
// Every answer, a refusal too, has the headers of headers.go. What breaks in a handler is answered with 500 and logged.
// Listen and Server, in listen.go and server.go, bound what happens before there is a request: connections and slowness.
package guard

import (
	"cmp"
	"net"
	"net/http"
	"slices"
	"strings"
	"time"
)

// Options are what a guard goes by. Hosts and the tokens must be set; the zero value of the rest is what most want.
type Options struct {
	Hosts  []string // by which it may be asked, with their port: localhost:8080, [::1]:8080
	Secure bool     // it is asked over TLS

	Write, Read, Calendar Token

	// What a browser holds that came by the link to write, and by that to read. Empty ones are drawn, and open nothing once the program has ended;
	// who keeps them lets browsers that came before in after a new start.
	WriteCookie, ReadCookie Token

	Log    func(string)     // takes a line about what was refused or broke; nil forgets it. It holds no token, and text of a request in quotes
	Clock  func() time.Time // nil: that of this computer
	Limits Limits           // zero fields are those of Usual
}

// Limits bound what clients may ask for.
type Limits struct {
	Body      int64         // bytes of a request
	Address   int           // bytes of a path with its query
	PerSecond float64       // requests of a client, over a while
	Burst     float64       // requests of a client at once
	Wrong     float64       // wrong links of a client in a minute
	AtOnce    int           // requests being answered
	Wait      time.Duration // for one of those to end, before a client is told to come again
}

// Usual are the limits for a household: a page asks for some ten things at once, and a phone that was away sends a day of readings.
var Usual = Limits{Body: 64 << 10, Address: 8 << 10, PerSecond: 20, Burst: 100, Wrong: 10, AtOnce: 32, Wait: 5 * time.Second}

// Guard is a handler with the checks around it.
type Guard struct {
	Options
	inner   http.Handler
	hosts   map[string]bool
	cookies cookies
	asked   *buckets // requests by client
	wrong   *buckets // wrong links by client
	room    chan struct{}
	cross   http.CrossOriginProtection
	ticket  ticket
}

// Around puts a guard around a handler.
func Around(h http.Handler, o Options) *Guard {
	o.Limits = o.Limits.orUsual()
	if o.Clock == nil {
		o.Clock = time.Now
	}
	g := &Guard{Options: o, inner: h, hosts: map[string]bool{}, room: make(chan struct{}, o.Limits.AtOnce),
		asked: newBuckets(o.Limits.PerSecond, o.Limits.Burst), wrong: newBuckets(o.Limits.Wrong/60, o.Limits.Wrong)}
	for _, host := range o.Hosts {
		g.hosts[strings.ToLower(host)] = true
	}
	g.cookies = cookiesFor(o)
	return g
}

// ServeHTTP answers a request, or refuses it.
func (g *Guard) ServeHTTP(w http.ResponseWriter, r *http.Request) {
	setHeaders(w.Header())
	for _, check := range []func(*http.Request) *refusal{g.form, g.name, g.origin} {
		if no := check(r); no != nil {
			g.refuse(w, r, *no)
			return
		}
	}
	switch who, no := g.who(w, r); {
	case no != nil:
		g.refuse(w, r, *no)
	case who != nobody:
		g.answer(w, r, who)
	}
}

// name asks that the request was made by a name that is listed.
func (g *Guard) name(r *http.Request) *refusal {
	if g.hosts[strings.ToLower(r.Host)] {
		return nil
	}
	return &refusal{status: http.StatusMisdirectedRequest, says: "This page is not asked by that name. Open it by the address that the program printed."}
}

// origin asks that no page of elsewhere makes the request: none may send anything, and none may embed it. A link to it is well.
func (g *Guard) origin(r *http.Request) *refusal {
	if err := g.cross.Check(r); err != nil {
		return &refusal{status: http.StatusForbidden, says: "That was sent by a page of elsewhere, and nothing was done."}
	}
	if !elsewhere(r) {
		return nil
	}
	if r.Header.Get("Sec-Fetch-Mode") == "navigate" && r.Header.Get("Sec-Fetch-Dest") == "document" {
		return nil
	}
	return &refusal{status: http.StatusForbidden, says: "A page of elsewhere may not take this into itself."}
}

// elsewhere tells whether a browser says that a page of another origin makes the request. One that says nothing is none that says so.
func elsewhere(r *http.Request) bool {
	return slices.Contains([]string{"cross-site", "same-site"}, r.Header.Get("Sec-Fetch-Site"))
}

// client is the machine that a request comes from; of IPv6 the network that a machine chooses its addresses from.
func client(r *http.Request) string {
	host, _, err := net.SplitHostPort(r.RemoteAddr)
	if err != nil {
		return r.RemoteAddr
	}
	return clientOf(net.ParseIP(host), host)
}

func clientOf(ip net.IP, otherwise string) string {
	switch {
	case ip == nil:
		return otherwise
	case ip.To4() != nil:
		return ip.To4().String()
	}
	return ip.Mask(net.CIDRMask(64, 128)).String()
}

func (l Limits) orUsual() Limits {
	return Limits{
		Body: cmp.Or(l.Body, Usual.Body), Address: cmp.Or(l.Address, Usual.Address),
		PerSecond: cmp.Or(l.PerSecond, Usual.PerSecond), Burst: cmp.Or(l.Burst, Usual.Burst), Wrong: cmp.Or(l.Wrong, Usual.Wrong),
		AtOnce: cmp.Or(l.AtOnce, Usual.AtOnce), Wait: cmp.Or(l.Wait, Usual.Wait),
	}
}
