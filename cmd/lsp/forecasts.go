package lsp

import (
	"context"
	"slices"
	"time"

	"maltwright/check"
	"maltwright/cmd/lsp/desk"
	"maltwright/lang/finding"
	"maltwright/sim/forecast"
)

// forecasts waits for quiet, and then checks with forecasts what has changed.
func (j *judge) forecasts() {
	for {
		select {
		case <-j.calm:
		case <-j.s.ctx.Done():
			return
		}
		if !j.quiet() {
			return
		}
		if len(j.wake) > 0 {
			continue // the words are looked at first, and then it is called again
		}
		j.round()
	}
}

// quiet waits until nothing has changed for a while, and tells whether the session goes on.
func (j *judge) quiet() bool {
	for {
		j.mu.Lock()
		left := j.s.options.Quiet - time.Since(j.when)
		j.mu.Unlock()
		if left <= 0 {
			return true
		}
		select {
		case <-time.After(left):
		case <-j.s.ctx.Done():
			return false
		}
	}
}

// round checks with forecasts until there is nothing left to, or something changes.
func (j *judge) round() {
	ctx, cancel := context.WithCancel(j.s.ctx)
	defer cancel()
	j.mu.Lock()
	if len(j.wake) > 0 {
		j.mu.Unlock()
		return
	}
	j.cancel = cancel
	changed := j.stale
	j.stale = false
	j.mu.Unlock()
	if changed {
		j.s.refresh()
	}
	view := j.s.desk.Now()
	for ctx.Err() == nil {
		doc := j.unforecast(view)
		if doc == nil {
			break
		}
		other, on := j.forecast(ctx, view, doc)
		if changed = changed || other; !on {
			break
		}
	}
	if changed {
		j.s.refreshFindings()
	}
}

// unforecast gives a document whose words have been looked at and are not forecast yet; nil where there is none.
func (j *judge) unforecast(view *desk.View) *desk.Doc {
	if !j.s.settings().Forecast {
		return nil
	}
	list := j.order(view)
	j.mu.Lock()
	defer j.mu.Unlock()
	for _, doc := range list {
		if is := j.docs[doc.Path]; is != nil && is.words != is.whole {
			return doc
		}
	}
	return nil
}

// forecast checks a document with forecasts, and tells whether other findings came of it, and whether to
// go on: not where something has changed.
func (j *judge) forecast(ctx context.Context, view *desk.View, doc *desk.Doc) (changed, on bool) {
	defer j.recovered("what is told of the forecast of " + doc.Path)
	words := j.checked(view, doc)
	report, done := j.full(ctx, view, doc)
	if done && ctx.Err() == nil {
		j.s.margins.take(view, doc, words, report)
	}
	j.mu.Lock()
	defer j.mu.Unlock()
	is := j.docs[doc.Path]
	if is == nil || ctx.Err() != nil || words != is.words || !j.s.settings().Forecast {
		return false, false
	}
	is.whole, is.found = words, nil
	if done {
		is.found = append([]finding.Finding{}, report.Findings...)
		if slices.ContainsFunc(report.Forecasts, func(f *forecast.Forecast) bool { return f != nil }) {
			is.foresaw = is.found
		}
	}
	return j.publish(view, doc, is), true
}

// full is not done where the check broke: it would break again, and the findings of the words are told alone.
func (j *judge) full(ctx context.Context, view *desk.View, doc *desk.Doc) (r check.Report, done bool) {
	defer j.recovered("the forecast of " + doc.Path)
	return view.Check(doc, check.Options{Context: ctx}), true
}
