package lsp

import (
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"runtime/debug"
	"time"

	"maltwright/cmd/lsp/desk"
	"maltwright/cmd/lsp/wire"
)

// mostAtOnce is how many requests are answered at once; more wait.
const mostAtOnce = 8

// leaving is how long the end waits for what is under way: an editor that hangs may take nothing any more of what is
// written to it, and the server must not hang with it.
const leaving = 2 * time.Second

// serve takes messages until there is a reason to end.
func (s *session) serve(ctx context.Context, in io.Reader) int {
	s.ctx, s.leave = context.WithCancel(ctx)
	defer s.leave()
	ended := make(chan int, 1)
	go func() { ended <- s.talk(in) }()
	select {
	case code := <-ended:
		return code
	case <-s.ctx.Done():
	}
	select {
	case code := <-ended:
		return code
	case <-time.After(leaving):
	}
	return s.code()
}

// code is the exit code as things stand: whether the editor has said that it ends.
func (s *session) code() int {
	if at := s.at(); at == shut || at == left && s.wasShut() {
		return ExitClean
	}
	return ExitBroken
}

// talk is serve, but that it ends only when all that is under way does.
func (s *session) talk(in io.Reader) int {
	s.work.Go(s.judge.run)
	s.work.Go(s.margins.run)
	frames, failed := make(chan []byte), make(chan error, 1)
	go s.take(in, frames, failed) // ends with the stream, which may be later
	room := make(chan struct{}, mostAtOnce)
	var err error
	for err == nil && s.at() != left {
		select {
		case content := <-frames:
			s.trace("->", content)
			s.message(content, room)
		case err = <-failed:
		case <-s.ctx.Done():
			err = s.ctx.Err()
		}
	}
	code := s.code()
	s.leave()
	s.work.Wait()
	s.folders.close()
	s.drawn.clear()
	return code
}

// take reads frames. One that cannot be used is answered by an error.
func (s *session) take(in io.Reader, frames chan<- []byte, failed chan<- error) {
	r := wire.NewReader(in)
	for {
		content, err := r.Read()
		var fault *wire.Fault
		switch {
		case errors.As(err, &fault):
			s.say("%s", fault)
			s.send(wire.Message{ID: new(wire.ID), Error: &wire.Error{Code: wire.ParseError, Message: fault.Error()}})
			continue
		case err != nil:
			failed <- err
			return
		}
		select {
		case frames <- content:
		case <-s.ctx.Done():
			return
		}
	}
}

// message takes one message.
func (s *session) message(content []byte, room chan struct{}) {
	m, err := wire.Parse(content)
	var bad *wire.Error
	if errors.As(err, &bad) {
		id := m.ID
		if id == nil {
			id = new(wire.ID)
		}
		s.send(wire.Message{ID: id, Error: bad})
		return
	}
	switch {
	case m.Method == "":
		s.answered(m)
	case m.ID == nil:
		s.notified(m)
	default:
		s.requested(m, room)
	}
}

// notified takes a notification, in its turn.
func (s *session) notified(m wire.Message) {
	take := notifications[m.Method]
	switch at := s.at(); {
	case take == nil, at != running && m.Method != "exit":
		return // what is not known is passed over, and what comes too early or too late too
	}
	defer func() {
		if r := recover(); r != nil {
			s.broke(m.Method, r)
		}
	}()
	if err := take(s, m.Params); err != nil {
		s.say("%s: %v", m.Method, err)
	}
}

// requested answers a request: those that begin and end the talk in their turn, the others each on
// a goroutine of its own, on a view of the desk as it is now.
func (s *session) requested(m wire.Message, room chan struct{}) {
	id := *m.ID
	refuse := func(code int, format string, args ...any) {
		s.send(wire.Message{ID: &id, Error: &wire.Error{Code: code, Message: fmt.Sprintf(format, args...)}})
	}
	method, known := methods()[m.Method]
	at := s.at()
	switch {
	case at == fresh && m.Method != "initialize":
		refuse(wire.ServerNotInitialized, "the first request must be initialize")
	case at != fresh && m.Method == "initialize":
		refuse(wire.InvalidRequest, "initialize was asked already")
	case at == shut:
		refuse(wire.InvalidRequest, "the server was told to shut down")
	case !known:
		refuse(wire.MethodNotFound, "%s is not answered here", m.Method)
	case method.inTurn:
		s.answer(s.ctx, m, method.run, s.desk.Now())
	default:
		ctx, cancel := context.WithCancel(s.ctx)
		view := s.desk.Now()
		s.mu.Lock()
		s.running[id] = cancel
		s.mu.Unlock()
		s.work.Go(func() {
			defer s.finished(id, cancel)
			select {
			case room <- struct{}{}:
				defer func() { <-room }()
			case <-ctx.Done():
			}
			s.answer(ctx, m, method.run, view)
		})
	}
}

func (s *session) finished(id wire.ID, cancel context.CancelFunc) {
	cancel()
	s.mu.Lock()
	defer s.mu.Unlock()
	delete(s.running, id)
}

// answer runs a handler and sends what it gives.
func (s *session) answer(ctx context.Context, m wire.Message, run handler, view *desk.View) {
	reply := wire.Message{ID: m.ID}
	result, err := s.guarded(ctx, m, run, view)
	if err == nil {
		if reply.Result, err = wire.Encode(result); err != nil {
			s.say("%s: %v", m.Method, err)
		}
	}
	var known *wire.Error
	switch {
	case err == nil:
	case ctx.Err() != nil:
		reply.Error = &wire.Error{Code: wire.RequestCancelled, Message: "cancelled"}
	case errors.As(err, &known):
		reply.Error = known
	default:
		reply.Error = &wire.Error{Code: wire.RequestFailed, Message: err.Error()}
	}
	s.send(reply)
}

// guarded runs a handler; a panic in it is an error.
func (s *session) guarded(ctx context.Context, m wire.Message, run handler, view *desk.View) (result any, err error) {
	defer func() {
		if r := recover(); r != nil {
			s.broke(m.Method, r)
			err = &wire.Error{Code: wire.InternalError, Message: fmt.Sprintf("%s broke: %v; the server goes on", m.Method, r)}
		}
	}()
	if ctx.Err() != nil {
		return nil, ctx.Err()
	}
	return run(ctx, s, view, m.Params)
}

// broke tells of a panic.
func (s *session) broke(what string, r any) {
	s.say("%s broke: %v; the server goes on\n%s", what, r, debug.Stack())
}

// handler answers a request on a view of the desk as it was when the request came.
type handler func(ctx context.Context, s *session, v *desk.View, params json.RawMessage) (any, error)

// on makes a handler of a function that takes the parameters as what they are. An answer that is nil is null.
func on[P, R any](run func(ctx context.Context, s *session, v *desk.View, params P) (R, error)) handler {
	return func(ctx context.Context, s *session, v *desk.View, raw json.RawMessage) (any, error) {
		var params P
		if err := wire.Decode(raw, &params); err != nil {
			return nil, err
		}
		return run(ctx, s, v, params)
	}
}

// notice takes a notification.
type notice func(s *session, params json.RawMessage) error

// when makes a notice of a function that takes the parameters as what they are.
func when[P any](take func(s *session, params P) error) notice {
	return func(s *session, raw json.RawMessage) error {
		var params P
		if err := wire.Decode(raw, &params); err != nil {
			return err
		}
		return take(s, params)
	}
}
