package lsp

import (
	"context"
	"crypto/sha256"
	"sync"
	"time"

	"maltwright/check"
	"maltwright/cmd/lsp/desk"
	"maltwright/cmd/margin"
	"maltwright/lang/calendar"
)

// margins keep what a forecast has to say beside the lines of what is open.
//
// The forecast is that of the judge, which hands over its report. How sure it is, and what the readings of a record
// come to, takes longer: a goroutine finds it out once nobody has typed for a while, and is ended when something
// changes. How sure a forecast is is kept by the texts that it was made of.
type margins struct {
	s    *session
	wake chan struct{} // there is something to find out

	mu     sync.Mutex
	docs   map[string]*margined
	came   chan struct{} // closed when something has come, and then another one
	cancel context.CancelFunc
	under  *margined // what the run that it ends is about
	kept   map[print][]*margin.Likely
}

type print [sha256.Size]byte

// margined is what is known of a document.
type margined struct {
	view   *desk.View
	doc    *desk.Doc
	words  *desk.Checked // what the report is of
	report check.Report
	likely []*margin.Likely
	sure   bool // it is known how sure the forecasts are
	record margin.Margin
	read   time.Time // as of when the record was read; the zero time where it was not
	told   margin.Margin
	held   margin.Memory
	late   bool // the editor was given less than that
}

const (
	mostKept  = 64 // texts of which it is kept how sure they are
	minute    = time.Minute
	rereading = 5 * minute // between looks at a record: what is next moves on with the clock
	calm      = 4          // times as quiet as for a forecast must it be before many are made
)

func newMargins(s *session) *margins {
	return &margins{s: s, wake: make(chan struct{}, 1), docs: map[string]*margined{}, came: make(chan struct{}), kept: map[print][]*margin.Likely{}}
}

// start are the options of a margin: when the first soak begins, where that is set and reads.
func (m *margins) start() (o margin.Options) {
	said := m.s.settings().Start
	if said == "" {
		return o
	}
	meant, err := calendar.Reader{Now: m.s.now()}.One(said)
	if err != nil {
		return o
	}
	return margin.Options{Start: meant.At}
}

// changed takes note that something was typed. What is ended by that is begun again once it is quiet. Whoever
// waits for a forecast of what stood there before looks again whether it will come.
func (m *margins) changed() {
	m.mu.Lock()
	defer m.mu.Unlock()
	m.come()
	if m.cancel != nil {
		m.cancel()
		m.cancel = nil
		signal(m.wake)
	}
}

// reset tells what is known as it is set now.
func (m *margins) reset() {
	m.mu.Lock()
	defer m.mu.Unlock()
	for _, is := range m.docs {
		if is.words != nil {
			m.tell(is, margin.Of(is.doc.Tree(), is.report, is.likely, m.start()))
		}
	}
}

func (m *margins) closed(path string) {
	m.mu.Lock()
	defer m.mu.Unlock()
	delete(m.docs, path)
}

// take takes the report of a document.
func (m *margins) take(view *desk.View, doc *desk.Doc, words *desk.Checked, r check.Report) {
	defer m.s.judge.recovered("the margin of " + doc.Path)
	plain := margin.Of(doc.Tree(), r, nil, m.start())
	if m.takes(view, doc, words, r, plain) {
		m.s.refreshMargins()
	}
	signal(m.wake)
}

// takes takes it in, with its margin without how sure it is, and tells whether the editor waits for it.
func (m *margins) takes(view *desk.View, doc *desk.Doc, words *desk.Checked, r check.Report, plain margin.Margin) (late bool) {
	m.mu.Lock()
	defer m.mu.Unlock()
	if !m.s.desk.IsOpen(doc) { // it was closed meanwhile, and nothing of it is kept
		return false
	}
	is := m.docs[doc.Path]
	if is == nil {
		is = &margined{}
		m.docs[doc.Path] = is
	}
	if is == m.under && m.cancel != nil {
		m.cancel() // of words that are no more
	}
	is.view, is.doc, is.words, is.report, is.read = view, doc, words, r, time.Time{}
	is.likely, is.sure = m.kept[printOf(r)], false
	if is.likely != nil {
		is.sure = true
		plain = margin.Of(doc.Tree(), r, is.likely, m.start())
	}
	is.record = margin.Margin{}
	return m.tell(is, plain)
}

// tell makes what is told of what is known, and tells whether the editor waits for it. It has the lock.
func (m *margins) tell(is *margined, plain margin.Margin) (late bool) {
	plain.Join(is.record)
	is.held.Keep(plain)
	is.told = is.held.Beside(plain)
	m.come()
	late, is.late = is.late, false
	return late
}

// come wakes whoever waits. It has the lock.
func (m *margins) come() {
	close(m.came)
	m.came = make(chan struct{})
}

// printOf is the texts that a report is of.
func printOf(r check.Report) print {
	h := sha256.New()
	for _, f := range r.House.Files {
		h.Write([]byte(f.Name()))
		h.Write([]byte{0})
		h.Write(f.Bytes())
		h.Write([]byte{0})
	}
	return print(h.Sum(nil))
}

// of is what stands in the margin of a document as it is in a view. Where a forecast of it is under way it is
// waited for, but not for long: then it is what still stands of the one before. Where nothing is forecast it is empty.
func (m *margins) of(ctx context.Context, v *desk.View, doc *desk.Doc) margin.Margin {
	if is := m.await(ctx, v, doc); is != nil {
		return is.told
	}
	if !m.s.settings().Forecast {
		return margin.Margin{File: doc.File}
	}
	m.mu.Lock()
	defer m.mu.Unlock()
	if last := m.docs[doc.Path]; last != nil {
		last.late = true
		return last.held.On(doc.Tree())
	}
	return margin.Margin{File: doc.File}
}

// now is what is known of a document as it is in a view, as it is known now; nil where it is not forecast yet.
func (m *margins) now(v *desk.View, doc *desk.Doc) *margined {
	words, err := v.Checked(doc.Path)
	if err != nil || !m.s.settings().Forecast {
		return nil
	}
	m.mu.Lock()
	defer m.mu.Unlock()
	return m.known(doc, words)
}

// known is a copy of what is known of a document in which such words are found; nil where it is not forecast. What it
// is a copy of is of other words as soon as these are forecast. It has the lock.
func (m *margins) known(doc *desk.Doc, words *desk.Checked) *margined {
	is := m.docs[doc.Path]
	if is == nil || is.words != words {
		return nil
	}
	known := *is
	return &known
}

// await waits for the forecast of a document as it is in a view; nil where it does not come soon, or none is made: also
// where somebody has typed in it since.
func (m *margins) await(ctx context.Context, v *desk.View, doc *desk.Doc) *margined {
	words, err := v.Checked(doc.Path)
	if err != nil || !doc.Open || !m.s.settings().Forecast {
		return nil
	}
	end := time.After(m.s.options.Wait)
	for {
		m.mu.Lock()
		is, came := m.known(doc, words), m.came
		m.mu.Unlock()
		if is != nil || !m.s.desk.IsLast(doc) {
			return is
		}
		select {
		case <-came:
		case <-end:
			m.mu.Lock()
			if is := m.docs[doc.Path]; is == nil && m.s.desk.IsOpen(doc) {
				m.docs[doc.Path] = &margined{late: true}
			}
			m.mu.Unlock()
			return nil
		case <-ctx.Done():
			return nil
		case <-m.s.ctx.Done():
			return nil
		}
	}
}
