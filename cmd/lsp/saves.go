package lsp

import (
	"context"
	"fmt"
	"path/filepath"
	"strings"
	"sync"

	"maltwright/cmd/lsp/desk"
	"maltwright/cmd/lsp/wire"
	"maltwright/cmd/words"
)

// saves watches that no buffer is saved over what has come to its file since: readings that were noted
// by command or on the page while the record is open and changed.
//
// The text that buffer and file were once is the base; both changes of it are put together. That nothing
// of the file is missing in the buffer makes the file the new base. A buffer that is saved all the same
// has written over something: that is kept, and offered until the buffer has it or is closed.
type saves struct {
	mu   sync.Mutex
	docs map[string]*saved
}

// saved is what is known of a buffer and its file.
type saved struct {
	doc    *desk.Doc // as it was compared
	disk   string    // with what
	is     *desk.Overtaken
	over   bool   // what is missing was written over by a save
	lost   []lost // what saves have written over
	warned string // the text on disk that was warned of
}

// lost is what a save has written over.
type lost struct{ base, theirs []byte }

func newSaves() *saves { return &saves{docs: map[string]*saved{}} }

// of compares a buffer with its file. It gives nil where it can be saved without loss, and tells whether
// what is missing was written over already.
func (w *saves) of(d *desk.Desk, view *desk.View, doc *desk.Doc) (missing *desk.Overtaken, over bool) {
	w.mu.Lock()
	defer w.mu.Unlock()
	is := w.docs[doc.Path]
	if is == nil {
		is = &saved{}
		w.docs[doc.Path] = is
	}
	disk, err := view.OnDisk(doc.Path)
	if err == nil && len(disk) > 0 && doc.Begun != nil && (is.doc != doc || is.disk != string(disk)) {
		is.compare(d, doc, disk) // one that has gone, or is empty, is just being written, or holds nothing to lose
	}
	return is.is, is.over
}

func (is *saved) compare(d *desk.Desk, doc *desk.Doc, disk []byte) {
	base := doc.Begun.Text
	if string(disk) == string(doc.Text()) {
		is.saving(base, doc)
	}
	is.doc, is.disk, is.is, is.over = doc, string(disk), nil, false
	if doc.Begun.Guess || string(base) != string(doc.Text()) { // else an editor reads it anew by itself
		if is.is = desk.Overtaking(base, doc.Text(), disk); is.is == nil && string(base) != string(disk) {
			d.Rebase(doc.Path, disk)
		}
		if is.is != nil && doc.Begun.Guess {
			is.is.Certain = false
		}
	}
	for is.is == nil && len(is.lost) > 0 {
		first := is.lost[0]
		if is.is = desk.Overtaking(first.base, doc.Text(), first.theirs); is.is == nil {
			is.lost = is.lost[1:]
		}
		is.over = is.is != nil
	}
}

// saving takes note of what a save has written over: what was on disk when it was last looked at, as far
// as it is not in the buffer.
func (is *saved) saving(base []byte, doc *desk.Doc) {
	if is.doc == nil || is.disk == string(doc.Text()) {
		return
	}
	if o := desk.Overtaking(base, doc.Text(), []byte(is.disk)); o != nil && len(o.Lines) > 0 {
		is.lost = append(is.lost, lost{base, []byte(is.disk)})
	}
	is.disk = string(doc.Text())
}

// written takes note that a buffer was saved.
func (w *saves) written(d *desk.Desk, uri string) {
	w.mu.Lock()
	defer w.mu.Unlock()
	doc, err := d.Now().At(uri)
	if is := w.docs[desk.Path(uri)]; is != nil && err == nil && doc.Begun != nil {
		is.saving(doc.Begun.Text, doc)
	}
	d.Saved(uri)
}

func (w *saves) closed(path string) {
	w.mu.Lock()
	defer w.mu.Unlock()
	delete(w.docs, path)
}

// news tells whether what is on disk was not warned of yet.
func (w *saves) news(path string) bool {
	w.mu.Lock()
	defer w.mu.Unlock()
	is := w.docs[path]
	if is == nil || is.is == nil || is.warned == is.disk {
		return false
	}
	is.warned = is.disk
	return true
}

// overtaken says that a buffer is overtaken by its file, as a finding at the top; nil where it is not.
func (s *session) overtaken(view *desk.View, doc *desk.Doc) *wire.Diagnostic {
	o, over := s.saves.of(s.desk, view, doc)
	if o == nil {
		return nil
	}
	d := &wire.Diagnostic{Range: view.Range(doc.File, doc.File.Line(1)), Severity: wire.SeverityWarning, Source: "maltwright", Message: overtakenText(o, over)}
	if o.Merged != "" && s.can().TextDocument.PublishDiagnostics.DataSupport {
		says := overtakenTitle(o)
		d.Data, _ = wire.Encode(map[string]any{"repairs": []repair{{says, o.Certain, s.putIn(view, doc, o)}}}) // plain values
	}
	if s.saves.news(doc.Path) {
		s.warn(doc, o, over)
	}
	return d
}

// mostLines is how many lines that came are shown.
const mostLines = 5

func overtakenText(o *desk.Overtaken, over bool) string {
	lines := []string{"the file has changed on disk since it was opened here; saving writes over that"}
	if over {
		lines[0] = "this was saved over what had come to the file on disk meanwhile; it is kept here until the file is closed"
	}
	for i, line := range o.Lines {
		if i == mostLines {
			lines = append(lines, fmt.Sprintf("and %s more", words.Plural(len(o.Lines)-i, "line")))
			break
		}
		lines = append(lines, "came: "+words.Safe(line))
	}
	if o.Gone {
		lines = append(lines, "lines have gone from it too, or are others now")
	}
	do := "do: compare the two before you save; both have changed the same lines"
	if o.Merged != "" {
		do = "do: " + overtakenTitle(o) + ", by the action here"
	}
	return strings.Join(append(lines, do), "\n")
}

func overtakenTitle(o *desk.Overtaken) string {
	switch {
	case o.Gone || len(o.Lines) == 0:
		return "put in what has changed on disk"
	case len(o.Lines) == 1:
		return "put in the line that came on disk"
	}
	return fmt.Sprintf("put in the %d lines that came on disk", len(o.Lines))
}

// overtakenBrief is what an editor shows in one line, before the name of the file. Many cut the middle out of a line that is
// longer than their window, of which their own words take a third.
func overtakenBrief(o *desk.Overtaken, over bool) string {
	switch n := len(o.Lines); {
	case over:
		return "changed on disk, saved over: "
	case n > 0:
		return "changed on disk: " + words.Plural(n, "line") + " came; "
	}
	return "changed on disk: "
}

func (s *session) warn(doc *desk.Doc, o *desk.Overtaken, over bool) {
	s.tell("window/showMessage", wire.ShowMessageParams{Type: wire.MessageWarning, Message: overtakenBrief(o, over) + words.Safe(filepath.Base(doc.Path))})
}

// putIn is the edit that puts into a buffer what came to its file.
func (s *session) putIn(view *desk.View, doc *desk.Doc, o *desk.Overtaken) wire.WorkspaceEdit {
	return wire.WorkspaceEdit{Changes: map[string][]wire.TextEdit{doc.URI: editsTo(view, doc, o.Merged)}}
}

func editsTo(view *desk.View, doc *desk.Doc, text string) []wire.TextEdit {
	list := []wire.TextEdit{}
	for _, e := range desk.Edits(doc.File, text) {
		list = append(list, wire.TextEdit{Range: view.Range(doc.File, e.Span), NewText: e.New})
	}
	return list
}

// putInAction is the action that does it; nil where nothing came, or where it cannot be told how.
func (s *session) putInAction(view *desk.View, doc *desk.Doc) *wire.CodeAction {
	if !doc.Open {
		return nil
	}
	o, _ := s.saves.of(s.desk, view, doc)
	if o == nil || o.Merged == "" {
		return nil
	}
	return &wire.CodeAction{Title: overtakenTitle(o), Kind: wire.ActionQuickFix, IsPreferred: o.Certain, Edit: s.edited(view, doc, editsTo(view, doc, o.Merged))}
}

// willSave warns again, right before a save.
func willSave(s *session, p wire.WillSaveTextDocumentParams) error {
	view := s.desk.Now()
	doc, err := view.At(p.TextDocument.URI)
	if err != nil || !doc.Open {
		return nil // what is not open cannot be saved
	}
	if o, over := s.saves.of(s.desk, view, doc); o != nil && !(o.Certain && s.puts()) {
		s.warn(doc, o, over)
	}
	return nil
}

// puts tells whether the editor takes edits of ours before it saves.
func (s *session) puts() bool { return s.can().TextDocument.Synchronization.WillSaveWaitUntil }

// willSaveWaitUntil answers with what came to the file, where that is certain, so that the save has it.
func willSaveWaitUntil(_ context.Context, s *session, v *desk.View, p wire.WillSaveTextDocumentParams) ([]wire.TextEdit, error) {
	doc, err := v.At(p.TextDocument.URI)
	if err != nil || !doc.Open {
		return []wire.TextEdit{}, nil
	}
	o, over := s.saves.of(s.desk, v, doc)
	if o == nil || over || !o.Certain { // what was written over once is put in again only when somebody says so
		return []wire.TextEdit{}, nil
	}
	s.tell("window/showMessage", wire.ShowMessageParams{Type: wire.MessageInfo,
		Message: fmt.Sprintf("%s: what came to the file on disk was put in before it was saved (%s)", words.Safe(filepath.Base(doc.Path)), words.Plural(len(o.Lines), "line"))})
	return editsTo(v, doc, o.Merged), nil
}
