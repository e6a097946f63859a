package folder

import (
	"bytes"
	"crypto/sha256"
	"encoding/json"
	"fmt"
	"math"
	"path/filepath"
	"strings"
	"sync"
	"time"

	"maltwright/cmd/journal"
	"maltwright/cmd/shelf"
	"maltwright/cmd/words"
	"maltwright/lang/model"
)

// A reading that is sent is written once, however often it is sent: whoever sends it has no answer where
// the answer was lost on its way, and sends it again. What its sender calls it is kept for some days.
// Under the lock of the record it is put down first how many lines like it stand there, and once it
// is written, that it is. So one that was ended in between is told by the text that it found or would have
// left, or where that is another by now, by one line more.
//
// Two readings that are alike and were both taken have two names, and both are written.

const (
	sentFor = 21 * 24 * time.Hour // how long it is kept what a reading was called
	mostOwn = 200                 // bytes of what it is called
)

// keeper keeps small results under keys; nil is none.
type keeper interface {
	Get(key string) []byte
	Put(key string, data []byte)
}

// memory keeps them for as long as the program runs.
type memory struct{ sync.Map }

func (m *memory) Get(key string) []byte {
	data, _ := m.Load(key)
	text, _ := data.([]byte)
	return text
}

func (m *memory) Put(key string, data []byte) {
	if data == nil {
		m.Delete(key)
		return
	}
	m.Store(key, data)
}

// twofold keeps results on a shelf, and in memory what that does not take: a disk that is full keeps nothing, and says nothing
// of it.
type twofold struct{ lasting, own keeper }

func (t twofold) Get(key string) []byte {
	if data := t.own.Get(key); data != nil {
		return data
	}
	return t.lasting.Get(key)
}

func (t twofold) Put(key string, data []byte) {
	t.lasting.Put(key, data)
	if bytes.Equal(t.lasting.Get(key), data) {
		data = nil
	}
	t.own.Put(key, data)
}

// sendings is where it is kept what was sent, nil where nothing is.
func (c Clerk) sendings() keeper {
	if c.Cache == "" {
		return c.own
	}
	kept := shelf.In(filepath.Join(c.Cache, "sent"), "sent, 1").For(sentFor)
	if c.own == nil {
		return kept
	}
	return twofold{kept, c.own}
}

// sending is a reading that was sent.
type sending struct {
	Alike         int    // lines like it in the record before it was written
	Before, After string // sums of the text without it and with it
	Done          bool
	Answer        Answer
}

func sentKey(r Record, own string) string { return r.Path + "\n" + r.Batch + "\n" + own }

// sent gives what is kept of a reading, nil where nothing is.
func (c Clerk) sent(r Record, x Reading) *sending {
	if x.Own == "" || c.sendings() == nil {
		return nil
	}
	var s sending
	if data := c.sendings().Get(sentKey(r, x.Own)); data == nil || json.Unmarshal(data, &s) != nil {
		return nil
	}
	return &s
}

// keepSent keeps what is known of a reading that is being written.
func (c Clerk) keepSent(r Record, x Reading, s sending) {
	if x.Own == "" || c.sendings() == nil {
		return
	}
	if data, err := json.Marshal(s); err == nil {
		c.sendings().Put(sentKey(r, x.Own), data)
	}
}

// there tells, before it is judged, of a reading that is in the record already: by what its sender calls
// it or, where nothing does and nobody is sure that it was taken twice, by its words and its time.
func (c Clerk) there(r Record, x Reading, sure bool) (Answer, bool) {
	if s := c.sent(r, x); s != nil && s.Done {
		return s.again(), true
	}
	if x.Own != "" || sure || x.Fix != 0 {
		return Answer{}, false
	}
	e, err := c.entry(r, x, r.Text)
	if err != nil || alike(e) < len(e.All()) {
		return Answer{}, false
	}
	a := Answer{There: true}
	a.stands(e)
	return a, true
}

// again is the answer of a reading that was written before.
func (s sending) again() Answer {
	a := s.Answer
	a.There, a.Written = true, false
	return a
}

// written tells, under the lock, whether a reading was written before, and puts down that it will be.
func (c Clerk) written(r Record, x Reading, text []byte, e journal.Entry) bool {
	c.settle(r, text)
	if x.Own == "" || c.sendings() == nil {
		return false
	}
	n := alike(e)
	if s := c.sent(r, x); s != nil && (s.Done || n > s.Alike) {
		return true
	}
	c.keepSent(r, x, sending{Alike: n, Before: sumOf(text), After: sumOf(e.Text)})
	c.sendings().Put(pending(r), []byte(x.Own))
	return false
}

// settle finds out of the reading that was to be written last whether it was, while the text still
// tells: a reading like it may be the next.
func (c Clerk) settle(r Record, text []byte) {
	if c.sendings() == nil {
		return
	}
	x := Reading{Own: string(c.sendings().Get(pending(r)))}
	s := c.sent(r, x)
	if s == nil || s.Done {
		return
	}
	switch sumOf(text) {
	case s.After:
		s.Done = true
	case s.Before:
		*s = sending{Alike: math.MaxInt} // it was not: no line is it
	default:
		return
	}
	c.keepSent(r, x, *s)
}

func pending(r Record) string { return r.Path + "\npending" }

func sumOf(text []byte) string { return fmt.Sprintf("%x", sha256.Sum256(text)) }

// alike counts the lines of the batch, other than the new ones, that say the same of the same time as a new
// one.
func alike(e journal.Entry) (n int) {
	b, _ := e.Model()
	if b == nil {
		return 0
	}
	fresh := map[string]bool{}
	for _, x := range e.News(b) {
		fresh[said(x)] = true
	}
	for _, x := range b.Lines() {
		if fresh[said(x)] {
			n++
		}
	}
	return n - len(e.News(b))
}

// said is what a line says, with its time whole, however that is written.
func said(x model.Dated) string {
	at, text := x.Place(), x.Place().Text()
	when := x.When()
	if p := when.Place; p.Known() && p.File == at.File && at.Start <= p.Start && p.End <= at.End {
		text = text[:p.Start-at.Start] + text[p.End-at.Start:]
	}
	return fmt.Sprintf("%s\x00%d", strings.TrimSpace(words.OneLine(text)), when.Unix())
}
