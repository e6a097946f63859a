package guard

import (
	"bytes"
	"context"
	"crypto/tls"
	"errors"
	"log"
	"net"
	"net/http"
	"sync"
	"time"
)

// Server serves a handler until it is told to stop. Stopping loses nothing: what the handler was asked is answered, and what comes later is
// refused before the handler sees it. The server of the standard library alone does not promise that: it takes a connection for idle until a
// request on it is read to the end, and may close it when the handler is at work already.
type Server struct {
	server  *http.Server
	handler http.Handler
	l       net.Listener
	secure  bool

	mu       sync.Mutex
	fresh    map[net.Conn]bool // connections on which nothing was asked yet
	under    int               // requests that the handler is at
	stopping bool
	idle     chan struct{} // closed when the last of them ends while stopping
}

// NewServer serves a handler on a listener, within its room and at its pace. With a certificate it speaks TLS.
func NewServer(h http.Handler, l net.Listener, room Room, pace Pace, cert *tls.Certificate, logged func(string)) *Server {
	s := &Server{handler: h, l: Listen(l, room, cert != nil), secure: cert != nil, fresh: map[net.Conn]bool{}, idle: make(chan struct{})}
	s.server = serverFor(http.HandlerFunc(s.serve), pace)
	s.server.ConnState = s.watch
	s.server.ErrorLog = log.New(logLines{logged}, "", 0)
	if cert != nil {
		s.server.TLSConfig = &tls.Config{MinVersion: tls.VersionTLS12, Certificates: []tls.Certificate{*cert}}
	}
	return s
}

// Serve answers until Stop is called or the listener fails; then nothing is asked of the handler any more.
func (s *Server) Serve() error {
	var err error
	if s.secure {
		err = s.server.ServeTLS(s.l, "", "")
	} else {
		err = s.server.Serve(s.l)
	}
	if errors.Is(err, http.ErrServerClosed) || s.isStopping() {
		return nil
	}
	return err
}

// Stop takes nothing new, lets what was asked be answered, and cuts what is left when the context ends. It tells whether all was answered.
func (s *Server) Stop(ctx context.Context) bool {
	s.refuseFromNow()
	_ = s.l.Close()
	if !s.drained(ctx) {
		_ = s.server.Close()
		return false
	}
	stopped := make(chan struct{})
	go func() {
		defer close(stopped)
		_ = s.server.Shutdown(ctx)
	}()
	tick := time.NewTicker(20 * time.Millisecond)
	defer tick.Stop()
	for {
		s.hurry()
		select {
		case <-stopped: // its error may also be that the listener is closed already
			_ = s.server.Close()
			return ctx.Err() == nil
		case <-tick.C:
		}
	}
}

func (s *Server) refuseFromNow() {
	s.mu.Lock()
	defer s.mu.Unlock()
	if s.stopping {
		return
	}
	s.stopping = true
	if s.under == 0 {
		close(s.idle)
	}
}

// drained waits until the handler is at nothing.
func (s *Server) drained(ctx context.Context) bool {
	select {
	case <-s.idle:
		return true
	case <-ctx.Done():
		return false
	}
}

// serve hands a request to the handler, but when stopping.
func (s *Server) serve(w http.ResponseWriter, r *http.Request) {
	if !s.begin() {
		setHeaders(w.Header())
		w.Header().Set("Connection", "close")
		page(w, r, http.StatusServiceUnavailable, "Stopped", "The program is being stopped, and nothing was done.", false)
		return
	}
	defer s.end()
	s.handler.ServeHTTP(w, r)
}

func (s *Server) isStopping() bool {
	s.mu.Lock()
	defer s.mu.Unlock()
	return s.stopping
}

func (s *Server) begin() bool {
	s.mu.Lock()
	defer s.mu.Unlock()
	if s.stopping {
		return false
	}
	s.under++
	return true
}

func (s *Server) end() {
	s.mu.Lock()
	defer s.mu.Unlock()
	if s.under--; s.under == 0 && s.stopping {
		close(s.idle)
	}
}

// watch keeps a list of connections on which nothing was asked: browsers open some in advance, and the server would wait for them.
func (s *Server) watch(c net.Conn, state http.ConnState) {
	s.mu.Lock()
	defer s.mu.Unlock()
	if state == http.StateNew {
		s.fresh[c] = true
		return
	}
	delete(s.fresh, c)
}

// hurry ends the wait for a first request. One whose headers were read is on none of these, and is answered.
func (s *Server) hurry() {
	s.mu.Lock()
	defer s.mu.Unlock()
	for c := range s.fresh {
		_ = c.SetReadDeadline(time.Now())
	}
}

// logLines takes what the server itself has to say. Slow and broken clients are no news.
type logLines struct{ to func(string) }

func (l logLines) Write(p []byte) (int, error) {
	if l.to != nil && !bytes.Contains(p, []byte("TLS handshake error")) {
		l.to(shown(string(bytes.TrimSpace(p)), 500))
	}
	return len(p), nil
}
