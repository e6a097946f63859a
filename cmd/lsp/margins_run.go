package lsp

import (
	"context"
	"time"

	"maltwright/cmd/margin"
)

// run finds out what takes longer, until the session ends.
func (m *margins) run() {
	look := time.NewTicker(rereading)
	defer look.Stop()
	for {
		select {
		case <-m.wake:
		case <-look.C:
			m.reread()
		case <-m.s.ctx.Done():
			return
		}
		for m.quiet() && m.round() {
		}
	}
}

// reread has the records read again: time has gone on.
func (m *margins) reread() {
	m.mu.Lock()
	defer m.mu.Unlock()
	for _, is := range m.docs {
		is.read = time.Time{}
	}
}

// quiet waits until nothing has been typed for a while, and tells whether the session goes on.
func (m *margins) quiet() bool {
	for {
		m.s.judge.mu.Lock()
		left := calm*m.s.options.Quiet - time.Since(m.s.judge.when)
		m.s.judge.mu.Unlock()
		if left <= 0 {
			return m.s.ctx.Err() == nil
		}
		select {
		case <-time.After(left):
		case <-m.s.ctx.Done():
			return false
		}
	}
}

// round finds out one thing, and tells whether there may be more. What was ended by a keystroke is begun
// again once its document has been forecast anew.
func (m *margins) round() bool {
	ctx, cancel := context.WithCancel(m.s.ctx)
	defer cancel()
	m.mu.Lock()
	m.cancel = cancel
	is, read := m.next()
	m.under = is
	if is == nil {
		m.mu.Unlock()
		return false
	}
	was := *is
	m.mu.Unlock()
	if read {
		m.records(ctx, is, was)
	} else {
		m.likely(ctx, is, was)
	}
	return ctx.Err() == nil
}

// next is a document of which something is not found out yet, the records first. It has the lock.
func (m *margins) next() (is *margined, read bool) {
	if !m.s.settings().Forecast {
		return nil, false
	}
	for _, x := range m.docs {
		if x.words != nil && x.read.IsZero() && len(x.report.House.Batches) > 0 {
			return x, true
		}
	}
	for _, x := range m.docs {
		if x.words != nil && !x.sure {
			return x, false
		}
	}
	return nil, false
}

// records finds out what the readings of a document come to.
func (m *margins) records(ctx context.Context, is *margined, was margined) {
	defer m.s.judge.recovered("the readings of " + was.doc.Path)
	now := m.s.now()
	m.found(is, was, func() { is.read = now }) // also where it breaks: it would break again
	record, err := margin.Record(ctx, was.doc.Tree(), was.report, now)
	if err != nil {
		m.found(is, was, func() { is.read = time.Time{} })
		return
	}
	m.found(is, was, func() {
		is.record = record
		m.tell(is, margin.Of(was.doc.Tree(), was.report, is.likely, m.start()))
	})
	m.s.refreshMargins()
}

// likely finds out how sure the forecasts of a document are.
func (m *margins) likely(ctx context.Context, is *margined, was margined) {
	defer m.s.judge.recovered("the likely batches of " + was.doc.Path)
	m.found(is, was, func() { is.sure = true })
	likely, err := margin.LikelyOf(ctx, was.report, m.s.options.Members)
	if err != nil {
		m.found(is, was, func() { is.sure = false })
		return
	}
	m.found(is, was, func() {
		if len(m.kept) >= mostKept {
			clear(m.kept)
		}
		is.likely, m.kept[printOf(was.report)] = likely, likely
		m.tell(is, margin.Of(was.doc.Tree(), was.report, likely, m.start()))
	})
	m.s.refreshMargins()
}

// found takes note of something, unless the document has been forecast anew since.
func (m *margins) found(is *margined, was margined, take func()) {
	m.mu.Lock()
	defer m.mu.Unlock()
	if is.words == was.words {
		take()
	}
}
