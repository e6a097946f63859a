package main

import (
	"context"
	"fmt"
	"net"
	"os"
	"os/signal"
	"path/filepath"
	"syscall"
	"time"

	"maltwright/cmd/serve/guard"
	"maltwright/cmd/words"
)

// Serve shows a folder as a page, to this machine or to a phone.
type Serve struct {
	Folder    string  `arg:"" optional:"" default:"." help:"What to show. By default this folder."`
	Port      int     `help:"Port to listen on; otherwise one of its own, the same for a folder whenever it is free." placeholder:"NUMBER"`
	Lan       string  `help:"Be reached from the network of this address of this machine, as from a phone: 192.168.1.20; list shows those there are." placeholder:"ADDRESS"`
	Cert      string  `help:"File of a certificate, so that nobody overhears the page." placeholder:"FILE"`
	Key       string  `help:"File of its key." placeholder:"FILE"`
	Hours     float64 `help:"End after so many hours. With --lan by default 12; otherwise it does not end by itself." placeholder:"NUMBER"`
	Anew      bool    `help:"With --lan: draw new addresses; those of before, and phones that came by them, are let in no more."`
	NoBrowser bool    `help:"Open no browser."`
}

// Help is the longer help of the command.
func (Serve) Help() string {
	return `Shows the batches of a folder on a page: what is due, how a batch stands, its charts;
and takes readings there as note does. It prints the addresses that open it, and nobody
opens the page without one; the second shows everything and writes nothing, and the
third is for a calendar.

By default the page is for this machine alone, a browser is opened on it, and the
addresses hold until the command ends. With --lan it is for the phones of a network
too, and prints a code for the camera of one. Started again before its hours are over
it lets the same phones in, by the same addresses; --anew draws new ones.
Over plain HTTP whoever is in that network can overhear the page and its address, and
so write into your records: use it in a network whose people you trust, or with a
certificate. It ends after 12 hours, or when no batch is under way any more.

Nothing outside of the folder is read or written, and what you edit by hand is seen at
once. Ctrl-C ends it; what was sent is written first. While this machine sleeps it
tells nobody anything.

Examples:

  maltwright serve
  maltwright serve loft --port 8080
  maltwright serve --lan list
  maltwright serve --lan 192.168.1.20 --hours 200
  maltwright serve --lan 192.168.1.20 --cert malt.pem --key malt.key

Exit code: 0 ended; 2 the command line cannot be understood, or this machine has no
such address; 3 the folder, the certificate or the port cannot be used.`
}

// hoursInNetwork is how long the page is open to a network, where nothing else is said.
const hoursInNetwork = 12

// patienceAtEnd is how long what was asked may take when the command is ended.
const patienceAtEnd = 20 * time.Second

// Run serves until it is ended.
func (c Serve) Run(w *World) error {
	if c.Lan == "list" {
		return c.list(w)
	}
	at, err := c.where(w)
	if err != nil {
		return err
	}
	listener, err := at.listen()
	if err != nil {
		return err
	}
	defer listener.Close()
	at.port = listener.Addr().(*net.TCPAddr).Port //nolint:forcetypeassert // it was asked for by TCP
	calendar := w.calendarToken(at.folder)
	k, again := w.keysOf(at, c.Anew)
	held := guard.Options{Hosts: guard.Names(at.address, at.port, at.names...), Secure: at.secure(), Write: k.Write, Read: k.Read, WriteCookie: k.WriteCookie, ReadCookie: k.ReadCookie, Calendar: calendar, Log: w.heard()}
	pages, err := w.pages(at.folder, guard.CalendarLink(at.base(), calendar))
	if err != nil {
		return err
	}
	defer pages.close()
	g := guard.Around(pages, held)
	s := guard.NewServer(g, listener, guard.Room{}, guard.Unhurried, at.certificate, held.Log)
	ctx, release := w.endable() // before anybody is told, and may end it
	defer release()
	ended := make(chan error, 1)
	go func() { ended <- s.Serve() }()
	w.tellServed(at, held, again)
	if !c.NoBrowser && at.loopback() && w.Terminal {
		w.browse(guard.Link(at.base(), g.Ticket()))
	}
	said, err := w.untilOver(ctx, ended, pages, at)
	if err != nil {
		return err
	}
	release() // a second Ctrl-C ends it at once
	w.farewell(s, said)
	return nil
}

// untilOver waits until somebody ends it, its time is over, or no batch is under way any more, and says which.
func (w World) untilOver(ctx context.Context, ended <-chan error, pages pages, at place) (string, error) {
	select {
	case err := <-ended:
		return "", failed("the page cannot be served any more: %v", err)
	case <-ctx.Done():
		return "ended", nil
	case <-w.over(ctx, at.until):
		return "ended: its time is over", nil
	case <-w.noneUnderway(ctx, pages, !at.loopback()):
		w.forgetKeys(at)
		return "ended: no batch is under way any more", nil
	}
}

// farewell lets what was asked be answered, and says how it ended.
func (w World) farewell(s *guard.Server, said string) {
	ctx, cancel := context.WithTimeout(context.Background(), patienceAtEnd)
	defer cancel()
	if s.Stop(ctx) {
		w.say("%s; what was sent is answered", said)
		return
	}
	w.say("%s; something that was asked took longer than %s and was cut off: look whether it is in the record", said, words.Span(patienceAtEnd.Seconds()))
}

// endable gives a context that ends with whatever tells a program to end.
func (w World) endable() (context.Context, func()) {
	ctx := w.Context
	if ctx == nil {
		ctx = context.Background()
	}
	return signal.NotifyContext(ctx, os.Interrupt, syscall.SIGTERM, syscall.SIGHUP)
}

// over is closed when a time has come; never for the zero time. It goes by the clock on the wall as well: a timer stands still while the machine
// sleeps, and the page would be open for longer than was said.
func (w World) over(ctx context.Context, until time.Time) <-chan struct{} {
	if until.IsZero() {
		return nil
	}
	over := make(chan struct{})
	go func() {
		passed, tick := time.NewTimer(until.Sub(w.now())), time.NewTicker(w.lookEvery())
		defer passed.Stop()
		defer tick.Stop()
		for until = until.Round(0); w.now().Before(until); { // rounded it holds the wall's time alone
			select {
			case <-ctx.Done():
				return
			case <-passed.C:
				close(over)
				return
			case <-tick.C:
			}
		}
		close(over)
	}()
	return over
}

// heard takes what is refused and what breaks to standard error, a few lines a minute.
func (w World) heard() func(string) {
	return guard.Sparing(func(line string) { fmt.Fprintln(w.Err, "maltwright: "+safeLines(line)) }, 20, time.Minute, w.now)
}

// shownFolder is the folder as people call it.
func (p place) shownFolder() string { return words.Safe(filepath.Base(p.folder)) }
