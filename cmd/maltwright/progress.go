package main

import (
	"fmt"
	"sync"
	"time"
)

// patience is how long a command may run before it says what it is doing.
const patience = 400 * time.Millisecond

// progress says on a terminal what is being done, once it takes a while, and
// wipes the line when the returned function is called.
func (w World) progress(what string) (stop func()) {
	if !w.ErrTerm {
		return func() {}
	}
	quit, ended := make(chan struct{}), make(chan struct{})
	go func() {
		defer close(ended)
		began, tick := time.Now(), time.NewTicker(patience)
		defer tick.Stop()
		shown := false
		for {
			select {
			case <-quit:
				if shown {
					fmt.Fprint(w.Err, "\r\x1b[K")
				}
				return
			case <-tick.C:
				shown = true
				fmt.Fprintf(w.Err, "\r%s, %.0f s", what, time.Since(began).Seconds())
			}
		}
	}()
	var once sync.Once
	return func() { once.Do(func() { close(quit); <-ended }) }
}

// counter says on a terminal how many of how many are done.
type counter struct {
	w     World
	what  string
	began time.Time
	last  time.Time // when a part was told
	shown bool
}

func (w World) counter(what string) *counter {
	return &counter{w: w, what: what, began: time.Now()}
}

func (c *counter) say(done, total int) {
	if c.w.ErrTerm && time.Since(c.began) > patience && done%10 == 0 {
		c.shown = true
		fmt.Fprintf(c.w.Err, "\r%s %d of %d", c.what, done, total)
	}
}

// part says the same of a part of what is done, which is as quick or slow as it may be.
func (c *counter) part(what string, done, total int) {
	if c.w.ErrTerm && time.Since(c.last) > patience/2 && time.Since(c.began) > patience {
		c.shown, c.last = true, time.Now()
		fmt.Fprintf(c.w.Err, "\r%s: %s %d of %d\x1b[K", c.what, what, done, total)
	}
}

func (c *counter) wipe() {
	if c.shown {
		fmt.Fprint(c.w.Err, "\r\x1b[K")
	}
}
