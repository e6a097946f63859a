package main

import (
	"context"
	"errors"
	"net/http"
	"time"

	"maltwright/cmd/folder"
	"maltwright/cmd/serve"
	"maltwright/cmd/serve/guard"
	"maltwright/lang/calendar"
)

// pages are the pages of a folder.
type pages struct {
	http.Handler
	underway func(context.Context) (int, error) // how many batches are
	close    func() error
}

// pages opens a folder.
func (w World) pages(path, calendarAt string) (pages, error) {
	f, err := folder.Open(path, folder.Options{Clock: w.clock, Cache: w.Cache, Order: calendar.OrderOf(w.Env), Writing: w.writing, Follow: true})
	var cannot *folder.Failed
	if errors.As(err, &cannot) {
		return pages{}, failed("%v", cannot)
	}
	if err != nil {
		return pages{}, err
	}
	underway := func(ctx context.Context) (int, error) {
		state, err := f.Look(ctx, w.now())
		return len(state.Underway), err
	}
	return pages{serve.New(f, serve.Options{Clock: w.clock, MayWrite: guard.MayWrite, Calendar: calendarAt}), underway, f.Close}, nil
}

// noneUnderway sends when no batch is under way any more, a while after the last one was; it is asked for where the page is open to others.
func (w World) noneUnderway(ctx context.Context, p pages, asked bool) <-chan struct{} {
	over := make(chan struct{})
	if !asked {
		return over
	}
	go func() {
		tick := time.NewTicker(w.lookEvery())
		defer tick.Stop()
		for was, none := false, 0; none < looksWithout; {
			n, err := p.underway(ctx)
			switch {
			case err != nil: // the folder may be there again later
			case n > 0:
				was, none = true, 0
			case was:
				none++
			}
			select {
			case <-ctx.Done():
				return
			case <-tick.C:
			}
		}
		close(over)
	}()
	return over
}

// looksWithout is how many looks in a row find no batch under way before the page ends: one may be put right by hand at the moment.
const looksWithout = 10

func (w World) lookEvery() time.Duration {
	if w.looking != 0 {
		return w.looking
	}
	return time.Minute
}
