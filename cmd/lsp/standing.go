package lsp

import (
	"bytes"

	"maltwright/cmd/lsp/desk"
	"maltwright/lang/finding"
	"maltwright/lang/source"
)

// standing are the findings of the forecast before, whose words stand in the document as they did.
func standing(is *judged, doc *desk.Doc) []finding.Finding {
	ofWords := map[key]bool{}
	for _, f := range is.whole.Findings {
		ofWords[keyOf(f)] = true
	}
	for _, f := range is.words.Findings {
		ofWords[keyOf(f)] = true
	}
	m := moveOf(is.whole.Doc.File, doc.File)
	var list []finding.Finding
	for _, f := range is.found {
		if ofWords[keyOf(f)] {
			continue
		}
		if f, ok := m.finding(f); ok && !ofWords[keyOf(f)] {
			list = append(list, f)
		}
	}
	return list
}

// key tells findings apart.
type key struct {
	rule, file, message string
	at                  source.Span
}

func keyOf(f finding.Finding) key {
	k := key{rule: f.Rule, message: f.Message, at: f.Place.Span}
	if f.Place.Known() {
		k.file = f.Place.File.Name()
	}
	return k
}

// move takes places of a text to the same words of the text after a change.
type move struct {
	from, to    *source.File
	head, tail  int // bytes that are the same at the start, and at the end
	shift, size int // what the tail has moved by; the size of the text before
}

func moveOf(from, to *source.File) move {
	a, b := from.Bytes(), to.Bytes()
	n := min(len(a), len(b))
	head := 0
	for head < n && a[head] == b[head] {
		head++
	}
	tail := 0
	for tail < n-head && a[len(a)-1-tail] == b[len(b)-1-tail] {
		tail++
	}
	return move{from: from, to: to, head: head, tail: tail, shift: len(b) - len(a), size: len(a)}
}

// place gives the place of the same words, where nothing in them or right beside them has changed. A
// place in another file stays.
func (m move) place(p source.Place) (source.Place, bool) {
	switch {
	case !p.Known() || p.File.Name() != m.from.Name():
		return p, true
	case !bytes.Equal(p.File.Bytes(), m.from.Bytes()):
		return p, false
	case p.End < m.head || m.head == m.size && m.shift == 0:
		return source.Place{File: m.to, Span: p.Span}, true
	case p.Start > m.size-m.tail:
		return source.Place{File: m.to, Span: source.Span{Start: p.Start + m.shift, End: p.End + m.shift}}, true
	}
	return p, false
}

// finding gives the finding with its places moved. What of them cannot be is left out, and a repair whole.
func (m move) finding(f finding.Finding) (finding.Finding, bool) {
	var ok bool
	if f.Place, ok = m.place(f.Place); !ok {
		return f, false
	}
	related := f.Related
	f.Related = nil
	for _, r := range related {
		if r.Place, ok = m.place(r.Place); ok {
			f.Related = append(f.Related, r)
		}
	}
	if f.Fixes, ok = m.edits(f.Fixes); !ok {
		f.Fixes = nil
	}
	offers := f.Offers
	f.Offers = nil
	for _, o := range offers {
		if o.Edits, ok = m.edits(o.Edits); ok {
			f.Offers = append(f.Offers, o)
		}
	}
	return f, true
}

func (m move) edits(list []finding.Edit) ([]finding.Edit, bool) {
	var moved []finding.Edit
	for _, e := range list {
		p, ok := m.place(e.Place)
		if !ok {
			return nil, false
		}
		moved = append(moved, finding.Edit{Place: p, New: e.New})
	}
	return moved, true
}
