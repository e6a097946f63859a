package main

import (
	"crypto/sha256"
	"crypto/tls"
	"encoding/binary"
	"errors"
	"fmt"
	"io"
	"math"
	"net"
	"net/netip"
	"os"
	"path/filepath"
	"strconv"
	"syscall"
	"time"

	"maltwright/cmd/serve/guard"
	"maltwright/cmd/shelf"
	"maltwright/cmd/words"
	"maltwright/lang/regular"
)

// place is where a page is served: for whom, by which address, and until when.
type place struct {
	folder      string // absolute
	address     netip.Addr
	host        string // as the page is opened, without the port
	names       []string
	port        int // 0 where none is asked for
	certificate *tls.Certificate
	certEnds    time.Time
	until       time.Time // zero where it does not end by itself
}

var loopback = netip.MustParseAddr("127.0.0.1")

func (p place) loopback() bool { return p.address.IsLoopback() }
func (p place) secure() bool   { return p.certificate != nil }

// base is the address without a path.
func (p place) base() string {
	scheme := "http://"
	if p.secure() {
		scheme = "https://"
	}
	return fmt.Sprintf("%s%s:%d", scheme, p.host, p.port)
}

// where makes a place of the flags.
func (c Serve) where(w *World) (place, error) {
	p := place{folder: w.at(c.Folder), address: loopback, host: loopback.String(), port: c.Port}
	switch info, err := os.Stat(p.folder); {
	case err != nil:
		return p, failed("%s: %s", c.Folder, plainError(err))
	case !info.IsDir():
		return p, usage("%s is no folder; say the one that it is in: maltwright serve %s", c.Folder, quotedForShell(filepath.Dir(c.Folder)))
	case c.Port < 0 || c.Port > math.MaxUint16:
		return p, usage("--port %d: a port is a number from 1 to %d", c.Port, math.MaxUint16)
	case (c.Cert == "") != (c.Key == ""):
		return p, usage("--cert and --key go together: the file of a certificate, and that of its key")
	}
	if c.Lan != "" {
		there, err := w.interfaces()
		if err != nil {
			return p, failed("the networks of this machine cannot be listed: %v", err)
		}
		if p.address, err = guard.Reached(c.Lan, there); err != nil {
			return p, usage("--lan: %v", err)
		}
		p.host = guard.Host(p.address)
	}
	if err := c.certified(w, &p); err != nil {
		return p, err
	}
	return p, c.ends(w, &p)
}

// ends says when it ends.
func (c Serve) ends(w *World, p *place) error {
	hours := c.Hours
	switch {
	case hours < 0 || hours > 24*366 || math.IsNaN(hours):
		return usage("--hours %s: a number of hours, up to a year", strconv.FormatFloat(hours, 'g', -1, 64))
	case hours == 0 && p.loopback():
		return nil
	case hours == 0:
		hours = hoursInNetwork
	}
	p.until = w.now().Add(time.Duration(hours * float64(time.Hour)))
	return nil
}

// certified reads the certificate.
func (c Serve) certified(w *World, p *place) error {
	if c.Cert == "" {
		return nil
	}
	var text [2][]byte
	for i, name := range []string{c.Cert, c.Key} {
		f, err := regular.Open(w.at(name))
		if err != nil {
			return failed("%s: %s", name, plainError(err))
		}
		text[i], err = io.ReadAll(io.LimitReader(f, 1<<20))
		if f.Close(); err != nil {
			return failed("%s: %s", name, plainError(err))
		}
	}
	made, err := guard.Certify(text[0], text[1], p.address, w.now(), lookup)
	if err != nil {
		return failed("%s: %v", c.Cert, err)
	}
	p.certificate, p.certEnds, p.host, p.names = made.Certificate, made.Ends, made.Host, made.Names
	return nil
}

// lookup asks where a name leads.
func lookup(name string) ([]netip.Addr, error) {
	found, err := net.LookupIP(name)
	if err != nil {
		return nil, err
	}
	var list []netip.Addr
	for _, ip := range found {
		if a, ok := netip.AddrFromSlice(ip); ok {
			list = append(list, a.Unmap())
		}
	}
	return list, nil
}

// listen opens the port: the one that is asked for, or else that of the folder, or else any that is free.
func (p place) listen() (net.Listener, error) {
	ports := []int{p.port}
	if p.port == 0 {
		ports = []int{portOf(p.folder), 0}
	}
	var err error
	for _, port := range ports {
		var l net.Listener
		if l, err = net.Listen("tcp", netip.AddrPortFrom(p.address, uint16(port)).String()); err == nil { //nolint:gosec // within its range
			return l, nil
		}
	}
	switch {
	case errors.Is(err, syscall.EADDRINUSE):
		return nil, failed("port %d is taken, by another program or by maltwright serve itself; leave --port out, and it finds a free one", p.port)
	case errors.Is(err, os.ErrPermission):
		return nil, failed("port %d is not for you on this machine; take one above 1023, or leave --port out", p.port)
	}
	return nil, failed("%s cannot be listened on: %v", p.address, err)
}

// portOf is the port of a folder, from the range that is for nobody in particular (RFC 6335), so that what knows the page still
// finds it when it is served anew.
func portOf(folder string) int {
	sum := sha256.Sum256([]byte(folder))
	return 49152 + int(binary.BigEndian.Uint16(sum[:]))%16384
}

// calendarToken is the token of the calendar of a folder, the same from one run to the next where there is a cache, so that a
// calendar that was given its address once goes on. It opens the calendar alone.
func (w World) calendarToken(folder string) guard.Token {
	kept := shelf.In(w.Cache, "calendar")
	if w.Cache == "" {
		return guard.NewToken()
	}
	if t := guard.Token(kept.Get(folder)); t.Whole() {
		return t
	}
	t := guard.NewToken()
	kept.Put(folder, []byte(t))
	return t
}

// interfaces are the addresses of this machine.
func (w World) interfaces() ([]guard.Interface, error) {
	if w.networks != nil {
		return w.networks()
	}
	return guard.Interfaces()
}

// list shows the addresses by which this machine can be reached.
func (c Serve) list(w *World) error {
	there, err := w.interfaces()
	if err != nil {
		return failed("the networks of this machine cannot be listed: %v", err)
	}
	if len(there) == 0 {
		w.say("This machine is in no network now.")
	}
	for _, i := range there {
		fmt.Fprintf(w.Out, "%-15s  %s\n", i.Address, words.Safe(i.Name))
	}
	return nil
}
