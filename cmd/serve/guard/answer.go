package guard

import (
	"context"
	"fmt"
	"net/http"
	"runtime/debug"
	"time"
)

// answer has the handler answer, once there is room, and takes what breaks in it.
func (g *Guard) answer(w http.ResponseWriter, r *http.Request, who role) {
	if !g.enterRoom(r.Context()) {
		g.refuse(w, r, refusal{status: http.StatusServiceUnavailable, again: 2, says: "Too much is asked at once. Come again in a moment; nothing was done."})
		return
	}
	defer func() { <-g.room }()
	out := &watched{ResponseWriter: w}
	defer g.recovered(out, r)
	r = r.WithContext(context.WithValue(r.Context(), roleKey{}, who))
	r.Body = http.MaxBytesReader(w, r.Body, g.Limits.Body)
	g.inner.ServeHTTP(out, r)
}

// enterRoom waits for one of those that are being answered to end.
func (g *Guard) enterRoom(ctx context.Context) bool {
	select {
	case g.room <- struct{}{}:
		return true
	default:
	}
	wait := time.NewTimer(g.Limits.Wait)
	defer wait.Stop()
	select {
	case g.room <- struct{}{}:
		return true
	case <-wait.C:
	case <-ctx.Done():
	}
	return false
}

// recovered answers for a handler that broke. Where it had begun to answer, the connection is cut, so that half a page is not taken for a whole one.
func (g *Guard) recovered(w *watched, r *http.Request) {
	broke := recover()
	if broke == nil {
		return
	}
	if broke == http.ErrAbortHandler { //nolint:errorlint // it is the value itself
		panic(broke)
	}
	if g.Log != nil {
		g.Log(fmt.Sprintf("500 %s %s: %s\n%s", shown(r.Method, 10), shown(r.URL.EscapedPath(), 80), shown(fmt.Sprint(broke), 500), debug.Stack()))
	}
	if w.begun {
		panic(http.ErrAbortHandler)
	}
	setHeaders(w.Header())
	w.Header().Del("Content-Length")
	w.Header().Del("Content-Encoding")
	page(w, r, http.StatusInternalServerError, "Something broke", "This is a mistake of the program. What was noted before is kept. Open the page anew, and look whether what you sent is there.", true)
}

// watched knows whether an answer was begun.
type watched struct {
	http.ResponseWriter
	begun bool
}

// WriteHeader begins the answer.
func (w *watched) WriteHeader(status int) {
	w.begun = w.begun || status >= 200
	w.ResponseWriter.WriteHeader(status)
}

// Write writes a part of it.
func (w *watched) Write(p []byte) (int, error) {
	w.begun = true
	return w.ResponseWriter.Write(p)
}

// Unwrap lets http.ResponseController reach what is below.
func (w *watched) Unwrap() http.ResponseWriter { return w.ResponseWriter }
