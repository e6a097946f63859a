package lsp

import (
	"context"
	"fmt"
	"reflect"
	"slices"
	"sync"
	"time"

	"maltwright/cmd/lsp/desk"
	"maltwright/cmd/lsp/wire"
	"maltwright/lang/finding"
)

// judge finds what is wrong with what is open, and tells the editor.
//
// Two goroutines do it. The first looks at the words of every open document as soon as something has
// changed; what it found before is kept, so that this costs what has changed. The second waits for a
// short quiet, then checks with forecasts; it is ended when something changes. Meanwhile the findings
// of the forecast before stay where their words do.
type judge struct {
	s    *session
	wake chan struct{} // something has changed
	calm chan struct{} // the words have been looked at

	mu     sync.Mutex
	last   string    // what was changed last: it is looked at first
	when   time.Time // and when
	cancel context.CancelFunc
	docs   map[string]*judged
	broke  map[string]string // what has broken last, and how: it is looked at again and again
	stale  bool              // what is shown beside a document may be otherwise, though nobody has typed in it
}

// judged is what is known of a document that is open.
type judged struct {
	words    *desk.Checked     // without a forecast
	whole    *desk.Checked     // what the following are of; nil where no forecast was made yet
	found    []finding.Finding // with a forecast
	foresaw  []finding.Finding // the same of the last words that were forecast in fact
	top      *wire.Diagnostic  // that its file has changed on disk; nil where it has not
	shown    []wire.Diagnostic // as it was told last
	version  int32
	told     bool
	resultID int
}

func newJudge(s *session) *judge {
	return &judge{s: s, wake: make(chan struct{}, 1), calm: make(chan struct{}, 1), docs: map[string]*judged{}}
}

// changed takes note that something has changed: a document, or for "" something else.
func (j *judge) changed(path string) {
	j.mu.Lock()
	defer j.mu.Unlock()
	if path != "" {
		j.last = path
	}
	j.when = time.Now()
	if j.cancel != nil {
		j.cancel()
	}
	j.s.margins.changed()
	signal(j.wake)
}

// unforesee drops what forecasts have found, since none are made any more.
func (j *judge) unforesee() {
	j.mu.Lock()
	defer j.mu.Unlock()
	for _, is := range j.docs {
		if is.whole != nil {
			is.words, is.whole, is.found = nil, nil, nil // the words are looked at, and told, anew
		}
	}
}

// closed takes back what was told of a document.
func (j *judge) closed(path, uri string) {
	j.mu.Lock()
	delete(j.docs, path)
	j.mu.Unlock()
	j.s.margins.closed(path)
	if !j.s.pulls() {
		j.s.tell("textDocument/publishDiagnostics", wire.PublishDiagnosticsParams{URI: uri, Diagnostics: []wire.Diagnostic{}})
	}
	j.changed("")
}

func signal(c chan<- struct{}) {
	select {
	case c <- struct{}{}:
	default: // it is said already
	}
}

// run judges until the session ends.
func (j *judge) run() {
	j.s.work.Go(j.forecasts)
	look := time.NewTicker(j.s.options.Look)
	defer look.Stop()
	for {
		select {
		case <-j.wake:
		case <-look.C: // a file that is used may have changed
		case <-j.s.ctx.Done():
			return
		}
		j.pass()
	}
}

// pass looks at the words of every open document. It begins again where something changes meanwhile.
func (j *judge) pass() {
	view := j.s.desk.Now()
	for _, doc := range j.order(view) {
		if len(j.wake) > 0 {
			return
		}
		j.words(view, doc)
	}
	j.mu.Lock()
	stale := j.stale
	j.mu.Unlock()
	if stale || j.unforecast(view) != nil {
		signal(j.calm)
	}
}

// order lists what is open, what was changed last in front.
func (j *judge) order(view *desk.View) []*desk.Doc {
	list := view.Opened()
	j.mu.Lock()
	defer j.mu.Unlock()
	if i := slices.IndexFunc(list, func(d *desk.Doc) bool { return d.Path == j.last }); i > 0 {
		list[0], list[i] = list[i], list[0]
	}
	return list
}

// words finds what is wrong with the words of a document, and tells it.
func (j *judge) words(view *desk.View, doc *desk.Doc) {
	defer j.recovered("what is told of " + doc.Path)
	checked := j.checked(view, doc)
	if checked == nil {
		return
	}
	top := j.s.overtaken(view, doc)
	j.mu.Lock()
	defer j.mu.Unlock()
	if !j.s.desk.IsOpen(doc) {
		return
	}
	is := j.docs[doc.Path]
	if is == nil {
		is = &judged{}
		j.docs[doc.Path] = is
	}
	if is.told && is.version > doc.Version {
		return // what was typed since was looked at already
	}
	if is.told && is.words == checked && is.version == doc.Version && reflect.DeepEqual(is.top, top) {
		// it was looked at already; but of a used file is told as long as that does not tell it itself
		if is.tellsOfOthers(doc) && j.publish(view, doc, is) {
			j.stale = true
		}
		return
	}
	j.stale = j.stale || is.told && is.version == doc.Version
	is.words, is.top = checked, top
	j.publish(view, doc, is)
}

func (j *judge) checked(view *desk.View, doc *desk.Doc) (c *desk.Checked) {
	defer j.recovered("the check of " + doc.Path)
	c, err := view.Checked(doc.Path)
	if err != nil {
		return nil
	}
	return c
}

// recovered takes a panic for what it is of. What is looked at each second is told of once, as long as it breaks in
// the same way. It is not called with the lock.
func (j *judge) recovered(what string) {
	r := recover()
	if r == nil {
		return
	}
	how := fmt.Sprint(r)
	j.mu.Lock()
	again := j.broke[what] == how
	if len(j.broke) >= mostKept || j.broke == nil {
		j.broke = map[string]string{}
	}
	j.broke[what] = how
	j.mu.Unlock()
	if !again {
		j.s.broke(what, r)
	}
}

// publish tells the editor the findings of a document, where they or its version are others than
// before, and tells whether the findings are. It has the lock.
func (j *judge) publish(view *desk.View, doc *desk.Doc, is *judged) bool {
	list := j.s.diagnostics(view, doc, is.now(doc))
	if is.top != nil {
		list = slices.Insert(list, 0, *is.top)
	}
	same := is.told && reflect.DeepEqual(list, is.shown)
	if !same {
		is.resultID++
	}
	if same && is.version == doc.Version {
		return false
	}
	is.shown, is.version, is.told = list, doc.Version, true
	if !j.s.pulls() {
		version := doc.Version
		j.s.tell("textDocument/publishDiagnostics", wire.PublishDiagnosticsParams{URI: doc.URI, Version: &version, Diagnostics: list})
	}
	return !same
}

// tellsOfOthers tells whether something was found in a file that a document uses.
func (is *judged) tellsOfOthers(doc *desk.Doc) bool {
	return slices.ContainsFunc(is.now(doc), func(f finding.Finding) bool { return f.Place.Known() && !inFile(f, doc.File) })
}

// now are the findings of a document as it stands: with a forecast where there is one of just these
// words, and else those of the words with those of the forecast before whose words still stand.
func (is *judged) now(doc *desk.Doc) []finding.Finding {
	switch {
	case is.whole == nil || is.found == nil:
		return is.words.Findings
	case is.words == is.whole:
		return is.found
	}
	return finding.Sort(append(slices.Clone(is.words.Findings), standing(is, doc)...))
}
