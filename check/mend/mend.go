// Package mend applies the repairs that findings carry.
//
// How it works: of the findings about one file those with fixes are taken in the
// order of their places; the edits of a finding are applied all or not at all, and a
// finding whose edits touch those of one before it waits for the next round. After
// each round the text is checked again, since a word put right lets the next finding
// be seen. A round that leaves a text that does not read is undone. Only the words
// that an edit names are touched: comments and layout stay byte for byte. A text that
// does not read to begin with is not mended at all, since places in it may mean
// something else than its author thought.
//
// Nothing here touches a disk.
package mend

import (
	"cmp"
	"slices"

	"maltwright/lang/finding"
	"maltwright/lang/source"
	"maltwright/lang/syntax"
)

// Checker checks a text, and gives its file and what was found, of which some may be
// about other files.
type Checker func(text []byte) (*source.File, []finding.Finding)

// Result is what came of mending a text.
type Result struct {
	Text    []byte            // mended, or as it was
	Mended  []finding.Finding // what was put right
	Unread  bool              // the text did not read, and was left as it was
	Changed bool
}

// mostRounds bounds repairs that bring each other about.
const mostRounds = 20

// Text mends a text.
func Text(text []byte, check Checker) Result {
	out := Result{Text: text}
	file, found := check(text)
	if unread(file, found) {
		out.Unread = true
		return out
	}
	seen := map[string]bool{string(text): true}
	for range mostRounds {
		now, mended := apply(file, found)
		if len(mended) == 0 || seen[string(now)] {
			return out
		}
		next, left := check(now)
		if unread(next, left) {
			return out
		}
		seen[string(now)] = true
		out.Text, out.Mended, out.Changed = now, append(out.Mended, mended...), true
		file, found = next, left
	}
	return out
}

// unread tells whether a file did not read as statements at all.
func unread(file *source.File, found []finding.Finding) bool {
	rules := syntax.Rules()
	return slices.ContainsFunc(found, func(f finding.Finding) bool {
		return f.Place.File == file && slices.ContainsFunc(rules, func(r finding.Rule) bool { return r.Name == f.Rule })
	})
}

// apply makes the edits of one round, and tells which findings they were of.
func apply(file *source.File, found []finding.Finding) ([]byte, []finding.Finding) {
	var taken []finding.Edit
	var mended []finding.Finding
	for _, f := range found {
		if len(f.Fixes) > 0 && fits(file, taken, f.Fixes) {
			taken, mended = append(taken, f.Fixes...), append(mended, f)
		}
	}
	slices.SortStableFunc(taken, func(a, b finding.Edit) int { return cmp.Compare(a.Place.Start, b.Place.Start) })
	var out []byte
	at, text := 0, file.Bytes()
	for _, e := range taken {
		out = append(append(out, text[at:e.Place.Start]...), e.New...)
		at = e.Place.End
	}
	return append(out, text[at:]...), mended
}

// fits tells whether all edits are of the file and none touches another, or what is
// taken already.
func fits(file *source.File, taken, edits []finding.Edit) bool {
	all := slices.Clone(taken)
	for _, e := range edits {
		p := e.Place
		if p.File != file || p.Start < 0 || p.End < p.Start || p.End > file.Size() ||
			slices.ContainsFunc(all, func(t finding.Edit) bool { return touch(t.Place.Span, p.Span) }) {
			return false
		}
		all = append(all, e)
	}
	return true
}

// touch tells whether two spans share a byte, or meet where one is empty: what is
// put in at the edge of a change could land on either side of it.
func touch(a, b source.Span) bool {
	if a.Empty() || b.Empty() {
		return a.Start <= b.End && b.Start <= a.End
	}
	return a.Start < b.End && b.Start < a.End
}
