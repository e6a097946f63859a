package lsp

import (
	"fmt"
	"iter"
	"maps"
	"os"
	"strings"
	"unicode/utf8"

	"maltwright/cmd/lsp/wire"
	"maltwright/lang/source"
	"maltwright/lang/source/spoil"
)

func mapsKeys(m map[string]string) iter.Seq[string] { return maps.Keys(m) }

// placeIn counts the position of an offset by hand, as an editor does that holds its text in lines.
func placeIn(text string, offset int, enc source.Encoding) wire.Position {
	var p wire.Position
	for i, r := range text {
		if i >= offset {
			break
		}
		switch {
		case r == '\r' && strings.HasPrefix(text[i+1:], "\n"):
			p.Character++
		case r == '\n', r == '\r':
			p.Line, p.Character = p.Line+1, 0
		case enc == source.Bytes:
			p.Character += uint32(utf8.RuneLen(r))
		case enc == source.UTF16 && r > 0xffff:
			p.Character += 2
		default:
			p.Character++
		}
	}
	return p
}

// edge moves an offset so that it splits no character and no line end.
func edge(text string, at int) int {
	for at > 0 && at < len(text) && (!utf8.RuneStart(text[at]) || text[at] == '\n' && text[at-1] == '\r') {
		at--
	}
	return at
}

// pieces are what may come into a text.
var pieces = []string{"{", "}", "\"", "#", ";", "\n", " ", "\r\n", "\r", "\t", "°", "é", "🌾", "👩‍🌾", "\x00", "\ufeff", "at", "to", "at least", "7", "7 h", "%", "soak", "until", "“", "2026-03", "in", "µ",
	"\n  # 🌾 of the field\n", "use \"loft.malt\"\n", "process \"x\" {\n", "soak 6 h in water at 14 °C\n", "batch \"26\" of \"Loft pale\" {\n", "\n}\n", "accept unused-definition because \"it is kept\"\n"}

// step does one thing: mostly it types.
func (h *hunt) step() {
	name := h.names[h.rnd.IntN(len(h.names))]
	_, is := h.open[name]
	switch n := h.rnd.IntN(100); {
	case !is && n < 50:
		h.openAs(name, h.disk[name])
	case !is && n < 60:
		h.openAs(name, h.spoilt(h.first[name]))
	case !is:
		h.typeInto(h.anyOpen())
	case n < 4 && len(h.open) > 1:
		h.note("close " + name)
		h.Close(name)
		delete(h.open, name)
	case n < 7:
		h.note("save " + name)
		h.Save(name)
		h.disk[name] = h.open[name]
	case n < 9:
		h.vanish(name)
	case n < 11:
		h.comes(name)
	default:
		h.typeInto(name)
	}
}

func (h *hunt) anyOpen() string {
	for _, name := range h.names {
		if _, is := h.open[name]; is && h.rnd.IntN(2) == 0 {
			return name
		}
	}
	for name := range h.open {
		return name
	}
	h.openAs("pale.malt", h.first["pale.malt"])
	return "pale.malt"
}

func (h *hunt) openAs(name, text string) {
	text = told(text)
	h.note("open " + name)
	h.OpenWith(name, text)
	h.open[name] = text
}

// told is a text as it comes over the wire, where bytes that are no text cannot.
func told(text string) string { return string([]rune(text)) }

// vanish deletes a file, and comes writes another one in its place.
func (h *hunt) vanish(name string) {
	h.note("delete " + name)
	_ = os.Remove(h.Path(name))
	delete(h.disk, name)
	h.Tell("workspace/didChangeWatchedFiles", wire.DidChangeWatchedFilesParams{})
}

func (h *hunt) comes(name string) {
	h.note("write " + name)
	h.disk[name] = h.spoilt(h.first[name])
	if h.rnd.IntN(2) == 0 {
		h.disk[name] = h.first[name]
	}
	h.Write(name, h.disk[name])
	h.Tell("workspace/didChangeWatchedFiles", wire.DidChangeWatchedFilesParams{})
}

func (h *hunt) spoilt(text string) string {
	return spoil.Text(h.rnd, text, append(spoil.Words(h.first["loft.malt"]), pieces...))
}

// typeInto sends one to four changes in one notification.
func (h *hunt) typeInto(name string) {
	text := h.open[name]
	var changes []wire.TextDocumentContentChangeEvent
	many := 1
	if h.rnd.IntN(4) == 0 {
		many = 2 + h.rnd.IntN(3)
	}
	for range many {
		var c wire.TextDocumentContentChangeEvent
		text, c = h.changeOf(name, text)
		changes, h.typed = append(changes, c), h.typed+1
	}
	h.open[name] = text
	h.note(fmt.Sprintf("type into %s: %s", name, shown(changes)))
	h.Change(name, text, changes...)
}

func shown(changes []wire.TextDocumentContentChangeEvent) string {
	var list []string
	for _, c := range changes {
		at := "all"
		if c.Range != nil {
			at = fmt.Sprintf("%v", *c.Range)
		}
		list = append(list, fmt.Sprintf("%s %.60q", at, c.Text))
	}
	return strings.Join(list, ", ")
}

func (h *hunt) changeOf(name, text string) (string, wire.TextDocumentContentChangeEvent) {
	n := h.rnd.IntN(100)
	switch {
	case n < 6 || len(text) > 2*len(h.first[name])+200: // all is as it was again
		return h.first[name], wire.TextDocumentContentChangeEvent{Text: h.first[name]}
	case n < 8:
		text = told(h.spoilt(text))
		return text, wire.TextDocumentContentChangeEvent{Text: text}
	case n < 40:
		return h.between(text, told(h.spoilt(text)))
	case n < 55:
		return h.between(text, h.nearer(text, h.first[name]))
	}
	at := edge(text, h.rnd.IntN(len(text)+1))
	end := at
	if h.rnd.IntN(2) == 0 {
		end = edge(text, min(len(text), at+h.rnd.IntN(3+h.rnd.IntN(40))))
	}
	with := ""
	if end == at || h.rnd.IntN(2) == 0 {
		with = pieces[h.rnd.IntN(len(pieces))]
	}
	return h.replaced(text, at, max(at, end), with)
}

// nearer mends a line of a text that has been spoilt.
func (h *hunt) nearer(text, first string) string {
	lines, whole := strings.SplitAfter(text, "\n"), strings.SplitAfter(first, "\n")
	for i := range min(len(lines), len(whole)) {
		if lines[i] != whole[i] {
			lines[i] = whole[i]
			break
		}
	}
	return strings.Join(lines, "")
}

// between is the one change that makes one text of another.
func (h *hunt) between(from, to string) (string, wire.TextDocumentContentChangeEvent) {
	head := 0
	for head < min(len(from), len(to)) && from[head] == to[head] {
		head++
	}
	for head > 0 && (edge(from, head) != head || edge(to, head) != head) {
		head--
	}
	tail := 0
	for tail < min(len(from), len(to))-head && from[len(from)-1-tail] == to[len(to)-1-tail] {
		tail++
	}
	for tail > 0 && (edge(from, len(from)-tail) != len(from)-tail || edge(to, len(to)-tail) != len(to)-tail) {
		tail--
	}
	return h.replaced(from, head, len(from)-tail, to[head:len(to)-tail])
}

func (h *hunt) replaced(text string, from, to int, with string) (string, wire.TextDocumentContentChangeEvent) {
	r := wire.Range{Start: placeIn(text, from, h.enc), End: placeIn(text, to, h.enc)}
	return text[:from] + with + text[to:], wire.TextDocumentContentChangeEvent{Range: &r, Text: with}
}
