package guard

import (
	"net/http"
	"time"
)

// Pace is how slow a client may be, and how long a connection is kept.
type Pace struct{ Headers, Request, Answer, Idle time.Duration }

// Unhurried is the pace for a phone in a cellar.
var Unhurried = Pace{Headers: 10 * time.Second, Request: 30 * time.Second, Answer: 2 * time.Minute, Idle: time.Minute}

// headersAtMost is how many bytes the headers of a request may have; the server lets some 4 KiB more through.
const headersAtMost = 16 << 10

// serverFor makes the server of a guard.
func serverFor(h http.Handler, pace Pace) *http.Server {
	plain := new(http.Protocols)
	plain.SetHTTP1(true) // the second version has more ways to ask for much at little cost, and a page of this size gains nothing by it
	return &http.Server{Handler: h, Protocols: plain, MaxHeaderBytes: headersAtMost,
		ReadHeaderTimeout: pace.Headers, ReadTimeout: pace.Request, WriteTimeout: pace.Answer, IdleTimeout: pace.Idle}
}
