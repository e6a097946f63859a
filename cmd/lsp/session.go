package lsp

import (
	"context"
	"encoding/json"
	"fmt"
	"io"
	"strconv"
	"sync"
	"time"

	"maltwright/cmd/lsp/desk"
	"maltwright/cmd/lsp/wire"
)

// session is one editor that is served.
type session struct {
	options Options
	out     *wire.Writer
	desk    *desk.Desk
	judge   *judge
	margins *margins
	pages   *pages
	saves   *saves

	mu      sync.Mutex
	stage   stage
	clean   bool // shutdown came before exit
	client  wire.ClientCapabilities
	set     settings
	running map[wire.ID]context.CancelFunc  // requests of the editor
	asked   map[wire.ID]chan<- wire.Message // requests of ours
	last    int                             // the number of the last of them
	logging sync.Mutex

	folders   folders
	drawn     drawn
	recent    recent
	refreshes refreshes
	asking    sync.Mutex // for settings: what was asked for last is taken last

	work  sync.WaitGroup // what runs on goroutines of its own
	ctx   context.Context
	leave context.CancelFunc
}

// stage is how far the talk has come.
type stage int

const (
	fresh   stage = iota // not initialized
	running              // initialized
	shut                 // told to end; only exit is to come
	left                 // told to leave
)

func newSession(out io.Writer, o Options) *session {
	s := &session{options: o, out: wire.NewWriter(out), desk: desk.New(), running: map[wire.ID]context.CancelFunc{}, asked: map[wire.ID]chan<- wire.Message{}, set: usualSettings}
	s.judge, s.margins, s.pages, s.saves = newJudge(s), newMargins(s), newPages(o.Cache), newSaves()
	s.drawn.cache = o.Cache
	return s
}

func (s *session) now() time.Time { return s.options.Clock() }

func (s *session) at() stage {
	s.mu.Lock()
	defer s.mu.Unlock()
	return s.stage
}

func (s *session) goTo(at stage) {
	s.mu.Lock()
	defer s.mu.Unlock()
	s.stage = at
}

func (s *session) wasShut() bool {
	s.mu.Lock()
	defer s.mu.Unlock()
	return s.clean
}

// can is what the editor can do.
func (s *session) can() wire.ClientCapabilities {
	s.mu.Lock()
	defer s.mu.Unlock()
	return s.client
}

// settings are what is set now.
func (s *session) settings() settings {
	s.mu.Lock()
	defer s.mu.Unlock()
	return s.set
}

// send writes a message. What cannot be written is lost with the editor that would have read it.
func (s *session) send(m wire.Message) {
	m.Version = wire.Version
	content, err := wire.Encode(m)
	if err != nil {
		s.say("a message cannot be written: %v", err)
		return
	}
	s.trace("<-", content)
	if err := s.out.Write(content); err != nil {
		s.leave() // nobody hears it any more
	}
}

// tell sends a notification.
func (s *session) tell(method string, params any) {
	raw, err := wire.Encode(params)
	if err != nil {
		s.say("%s cannot be written: %v", method, err)
		return
	}
	s.send(wire.Message{Method: method, Params: raw})
}

// ask sends a request to the editor and waits for its answer, which it reads into the result; nil for
// none. Errors: that of the editor, and that of the context.
func (s *session) ask(ctx context.Context, method string, params, result any) error {
	raw, err := wire.Encode(params)
	if err != nil {
		return err
	}
	s.mu.Lock()
	s.last++
	id := wire.ID(strconv.Itoa(s.last))
	came := make(chan wire.Message, 1)
	s.asked[id] = came
	s.mu.Unlock()
	defer func() {
		s.mu.Lock()
		defer s.mu.Unlock()
		delete(s.asked, id)
	}()
	m := wire.Message{ID: &id, Method: method}
	if params != nil {
		m.Params = raw
	}
	s.send(m)
	select {
	case m := <-came:
		if m.Error != nil {
			return m.Error
		}
		if result == nil {
			return nil
		}
		return json.Unmarshal(m.Result, result)
	case <-ctx.Done():
		return ctx.Err()
	case <-s.ctx.Done():
		return s.ctx.Err()
	}
}

// answered hands an answer of the editor to who waits for it.
func (s *session) answered(m wire.Message) {
	s.mu.Lock()
	came := s.asked[*m.ID]
	delete(s.asked, *m.ID)
	s.mu.Unlock()
	if came != nil {
		came <- m
	}
}

// say takes a line to the log of the editor and to standard error.
func (s *session) say(format string, args ...any) {
	line := fmt.Sprintf(format, args...)
	s.logging.Lock()
	fmt.Fprintln(s.options.Err, "maltwright: "+line)
	s.logging.Unlock()
	if at := s.at(); at == running {
		s.tell("window/logMessage", wire.LogMessageParams{Type: wire.MessageError, Message: line})
	}
}

// trace takes a message to the log of all messages.
func (s *session) trace(way string, content []byte) {
	if s.options.Log == nil {
		return
	}
	s.logging.Lock()
	defer s.logging.Unlock()
	fmt.Fprintf(s.options.Log, "%s %s\n", way, content)
}
