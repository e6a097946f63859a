package mend

import (
	"cmp"
	"slices"
	"unicode/utf8"

	"maltwright/lang/finding"
	"maltwright/lang/read"
	"maltwright/lang/sorted"
	"maltwright/lang/source"
	"maltwright/lang/syntax"
)

type mender struct{ check Checker }

// look is a text with what was found in it.
type look struct {
	file   *source.File
	found  []finding.Finding
	mended []finding.Finding // on the way to it
	owed   []finding.Finding // faults that came of that, and are still to be mended
}

func (m mender) look(text []byte) look {
	file, found := m.check(text)
	return look{file: file, found: found}
}

func (l look) text() string { return string(l.file.Bytes()) }

// round makes the repairs of one round. It gives false where none can be made.
func (m mender) round(before look) (after look, ok bool) {
	refused := map[int]bool{}
	for {
		todo := before.repairs(refused)
		if len(todo) == 0 {
			return before, false
		}
		after, blamed := m.try(before, todo)
		if len(blamed) == 0 {
			return after, true
		}
		if len(blamed) == len(todo) && len(todo) > 1 {
			for _, i := range todo { // they may have been in each other's way
				if after, blamed := m.try(before, []int{i}); len(blamed) == 0 {
					return after, true
				}
			}
		}
		for _, i := range blamed {
			refused[i] = true
		}
	}
}

// readable makes a text read by the repairs of all that keeps it from that, at once. It gives false
// where one has none or is to blame for another finding, and where it then does not read.
func (m mender) readable(before look) (after look, ok bool) {
	if len(read.Conflicts(before.file)) > 0 {
		return before, false
	}
	todo := before.fitting(nil, func(f finding.Finding) bool { return of(syntax.Rules(), f) })
	for i, f := range before.found {
		if f.Place.File == before.file && f.Severity >= finding.Fault && !slices.Contains(todo, i) {
			return before, false
		}
	}
	if len(todo) == 0 {
		return before, false
	}
	after, blamed := m.try(before, todo)
	return after, len(blamed) == 0 && !after.unread()
}

// try makes the repairs of some findings and tells which are to blame where that is
// no gain.
func (m mender) try(before look, todo []int) (after look, blamed []int) {
	var edits []finding.Edit
	for _, i := range todo {
		edits = append(edits, before.found[i].Fixes...)
	}
	sorted.Stable(edits, func(a, b finding.Edit) int { return cmp.Compare(a.Place.Start, b.Place.Start) })
	after = m.look(apply(before.file, edits))
	j := &judgement{before: before, after: after, todo: todo, edits: edits}
	after.owed, blamed = j.judge()
	after.mended = slices.Clone(before.mended)
	for _, i := range todo {
		after.mended = append(after.mended, before.found[i])
	}
	return after, blamed
}

// repairs gives the findings to mend in one round, by their numbers.
func (l look) repairs(refused map[int]bool) []int {
	faults := slices.ContainsFunc(l.found, func(f finding.Finding) bool { return f.Severity >= finding.Fault })
	list := l.fitting(refused, func(f finding.Finding) bool { return f.Severity >= finding.Fault == faults })
	if len(list) == 0 && faults {
		list = l.fitting(refused, func(f finding.Finding) bool { return f.Severity < finding.Fault })
	}
	return list
}

func (l look) fitting(refused map[int]bool, wanted func(finding.Finding) bool) (list []int) {
	var taken []finding.Edit
	for i, f := range l.found {
		if len(f.Fixes) > 0 && !refused[i] && wanted(f) && l.fits(taken, f) {
			taken, list = append(taken, f.Fixes...), append(list, i)
		}
	}
	return list
}

// fits tells whether all edits of a finding are about its words, and none touches
// another or what is taken already.
func (l look) fits(taken []finding.Edit, f finding.Finding) bool {
	all := slices.Clone(taken)
	for _, e := range f.Fixes {
		if !About(f, e) || e.Place.File != l.file || !l.whole(e.Place.Span) ||
			slices.ContainsFunc(all, func(t finding.Edit) bool { return touch(t.Place.Span, e.Place.Span) }) {
			return false
		}
		all = append(all, e)
	}
	return true
}

// About tells whether an edit is about the words of a finding: it replaces some of
// them, or of those of a related place, or is put in within or right beside them. A
// finding whose own place is unknown or empty is about no words.
func About(f finding.Finding, e finding.Edit) bool {
	if !f.Place.Known() || f.Place.Empty() || f.Place.File != e.Place.File {
		return false
	}
	places := []source.Place{f.Place}
	for _, r := range f.Related {
		places = append(places, r.Place)
	}
	return slices.ContainsFunc(places, func(p source.Place) bool {
		return p.File == e.Place.File && !p.Empty() && p.Start <= e.Place.Start && e.Place.End <= p.End
	})
}

// whole tells whether a span lies in the text of the file, behind its byte-order
// mark, and cuts no character and no line end in two.
func (l look) whole(s source.Span) bool {
	return l.file.Start() <= s.Start && s.Start <= s.End && s.End <= l.file.Size() && l.between(s.Start) && l.between(s.End)
}

func (l look) between(at int) bool {
	text := l.file.Bytes()
	return at == len(text) || utf8.RuneStart(text[at]) && (at == 0 || text[at-1] != '\r' || text[at] != '\n')
}

// touch tells whether two spans share a byte, or meet where one is empty: what is
// put in at the edge of a change could land on either side of it.
func touch(a, b source.Span) bool {
	if a.Empty() || b.Empty() {
		return a.Start <= b.End && b.Start <= a.End
	}
	return a.Start < b.End && b.Start < a.End
}

// apply makes edits that are in order and do not touch.
func apply(file *source.File, edits []finding.Edit) []byte {
	var out []byte
	at, text := 0, file.Bytes()
	for _, e := range edits {
		out = append(append(out, text[at:e.Place.Start]...), e.New...)
		at = e.Place.End
	}
	return append(out, text[at:]...)
}
