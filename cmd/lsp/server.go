// Package lsp is the editor server: the Language Server Protocol 3.17 over a pair of streams.
//
// # How it works
//
// Messages are taken one after the other (serve.go). What an editor tells of documents and
// folders changes the desk at once, in the order in which it came. A request takes a View of
// the desk as it arrives and is answered on a goroutine of its own, so that a slow one holds
// nobody up. Whoever is called stands in the one table of methods.go, and what the server says
// of itself is made of that table: a capability is there where its handler is.
//
// Findings go to the editor by themselves, or are asked for where it asks (judge.go): those of
// the words at once, those that need a forecast after a short quiet. Nothing is reckoned or put
// into words here: that is done by check, by the packages of lang, and by cmd/answer and cmd/words.
//
// What a forecast has to say in the margin goes by the same forecast as the findings (margins.go), and
// how sure it is follows in the background.
//
// A panic in a request is an answer with an error, and a line in the log; the server goes on.
package lsp

import (
	"context"
	"io"
	"time"
)

// Options are what a server is run with. The zero value is what most want.
type Options struct {
	Version string           // of the program
	Err     io.Writer        // takes a line for what breaks; nil for nobody
	Log     io.Writer        // takes every message that comes and goes; nil for nobody
	Cache   string           // the folder of what is kept from one run to the next; "" keeps nothing
	Clock   func() time.Time // nil for that of this computer
	Quiet   time.Duration    // without a keystroke, before a forecast begins; 0 for what is usual
	Look    time.Duration    // between looks at the files on disk; 0 for what is usual
	Wait    time.Duration    // that hints and actions wait for a forecast; 0 for what is usual
	Members int              // how many likely batches tell how sure a forecast is; 0 for as many as is usual
}

const (
	usualQuiet = 100 * time.Millisecond
	usualLook  = time.Second
	usualWait  = 400 * time.Millisecond
)

func (o Options) whole() Options {
	if o.Err == nil {
		o.Err = io.Discard
	}
	if o.Clock == nil {
		o.Clock = time.Now
	}
	if o.Quiet == 0 {
		o.Quiet = usualQuiet
	}
	if o.Look == 0 {
		o.Look = usualLook
	}
	if o.Wait == 0 {
		o.Wait = usualWait
	}
	return o
}

// Exit codes of the protocol.
const (
	ExitClean  = 0 // the editor has said that it ends
	ExitBroken = 1 // it has not
)

// Serve serves an editor until it ends, its stream does, the process that it named is gone, or the
// context is, and gives the exit code.
func Serve(ctx context.Context, in io.Reader, out io.Writer, o Options) int {
	s := newSession(out, o.whole())
	return s.serve(ctx, in)
}
