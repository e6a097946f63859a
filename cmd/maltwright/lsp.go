package main

import (
	"context"
	"errors"
	"os"
	"os/signal"
	"syscall"

	"maltwright/cmd/lsp"
)

// Lsp serves an editor.
type Lsp struct {
	Log string `help:"Write every message that comes and goes to the end of this file." placeholder:"FILE"`
}

// Help is the longer help of the command.
func (Lsp) Help() string {
	return `Serves an editor over standard input and output, by the Language Server Protocol.
An editor starts it: how to set one up stands in docs/editors, and what it does in
docs/lsp.md. Nobody needs to type it.

It writes nothing to your files but what the editor is asked to. With --log the file
holds the text of what you edit, too.

Exit code: 0 the editor ended it, 1 the editor ended without saying so, 2 the command
line cannot be understood, 3 the log cannot be written.`
}

// Run serves until the editor ends.
func (c Lsp) Run(w *World) error {
	o := lsp.Options{Version: version(), Err: w.Err, Cache: w.Cache, Clock: w.clock}
	if c.Log != "" {
		f, err := os.OpenFile(w.at(c.Log), os.O_APPEND|os.O_CREATE|os.O_WRONLY, 0o600)
		if err != nil {
			return failed("%s: %s", c.Log, plainError(err))
		}
		defer f.Close()
		o.Log = f
	}
	if w.InTerm {
		w.aside("this serves an editor, which starts it by itself; to look at a file type: maltwright check pale.malt; to leave, press Ctrl-C")
	}
	ctx := w.Context
	if ctx == nil {
		ctx = context.Background()
	}
	ctx, release := signal.NotifyContext(ctx, os.Interrupt, syscall.SIGTERM)
	defer release()
	if code := lsp.Serve(ctx, w.In, w.Out, o); code != lsp.ExitClean {
		return failure{code, errors.New("")}
	}
	return nil
}
