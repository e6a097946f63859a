package main

import (
	"encoding/json"
	"time"

	"maltwright/cmd/serve/guard"
	"maltwright/cmd/shelf"
)

// keys open a page: its links, and what browsers hold that came by them.
type keys struct {
	Drawn, Until                         time.Time
	Write, Read, WriteCookie, ReadCookie guard.Token
}

// oldest is how long after they were drawn keys are taken again.
const oldest = 30 * 24 * time.Hour

func newKeys(now time.Time) keys {
	return keys{Drawn: now, Write: guard.NewToken(), Read: guard.NewToken(), WriteCookie: guard.NewToken(), ReadCookie: guard.NewToken()}
}

// hold tells whether keys of before are whole and still open at a time.
func (k keys) hold(now time.Time) bool {
	for _, t := range []guard.Token{k.Write, k.Read, k.WriteCookie, k.ReadCookie} {
		if !t.Whole() {
			return false
		}
	}
	return now.Before(k.Until) && !now.Before(k.Drawn) && now.Sub(k.Drawn) < oldest
}

// keysOf gives the keys of a page, and whether they are those of before: of a page that is for a network, by the same address, where it would
// not have ended by itself yet. So a phone goes on when it is started anew. On this machine alone a browser is opened with the new link, and keys
// that outlive the command would be worth something to whoever listens on its port meanwhile: there they are always new.
func (w World) keysOf(p place, anew bool) (keys, bool) {
	now := w.now()
	if p.loopback() || w.Cache == "" {
		return newKeys(now), false
	}
	var k keys
	was := json.Unmarshal(w.keptKeys().Get(p.keyed()), &k) == nil && k.hold(now) && !anew
	if !was {
		k = newKeys(now)
	}
	k.Until = p.until
	w.keepKeys(p, k)
	return k, was
}

func (w World) keepKeys(p place, k keys) {
	if data, err := json.Marshal(k); err == nil {
		w.keptKeys().Put(p.keyed(), data)
	}
}

// forgetKeys has the keys of a page open nothing any more.
func (w World) forgetKeys(p place) {
	if !p.loopback() {
		w.keepKeys(p, keys{})
	}
}

func (w World) keptKeys() *shelf.Shelf { return shelf.In(w.Cache, "page") }

// keyed is what the keys of a page are kept under: another address, or plain HTTP in the place of TLS, has others.
func (p place) keyed() string { return p.folder + "\n" + p.base() }
