package guard

import (
	"sync"
	"time"
)

// ticket is a token that opens the page once, and soon. It is for the browser that the program opens: what a program is started with is seen
// by everybody on the machine, and a ticket that was used is of no use to them.
type ticket struct {
	mu    sync.Mutex
	token Token
	until time.Time
}

// soon is how long a ticket holds.
const soon = 2 * time.Minute

// Ticket gives a token that opens the page once, to write, within two minutes. One that was given before opens nothing any more.
func (g *Guard) Ticket() Token {
	g.ticket.mu.Lock()
	defer g.ticket.mu.Unlock()
	g.ticket.token, g.ticket.until = NewToken(), g.Clock().Add(soon)
	return g.ticket.token
}

// spend tells whether somebody has the ticket, and takes it.
func (t *ticket) spend(said string, now time.Time) bool {
	t.mu.Lock()
	defer t.mu.Unlock()
	if !t.token.is(said) || !now.Before(t.until) {
		return false
	}
	t.token = ""
	return true
}
