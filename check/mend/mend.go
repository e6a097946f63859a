// Package mend applies the repairs that findings carry.
//
// # How it works
//
// A text is mended in rounds (round.go). Of the findings about the file those with
// repairs are taken in the order of their places, faults before the rest, since a
// fault hides what comes of it; the edits of a finding are made all or not at all,
// and a finding whose edits touch those of one before it waits for the next round.
//
// An edit is made only where it is about the words that its finding is about: those
// words have a place that is known and not empty, and the edit replaces some of them,
// or is put in within or right beside them. So a place that was lost on the way, and
// looks like the first byte of the file, never takes an edit.
//
// Then the text is checked again and the round judged (judge.go). One after which a
// finding that it mended still stands, or the text does not read, or has a new fault
// in a statement that was written in, is undone whole, and made again without the repairs to blame. A
// round of cautions, which hide nothing, may bring nothing new but notes. A new fault
// that has a repair of its own is owed to the next round: where that does not mend
// it, both are undone.
//
// A text that does not read to begin with is not mended at all, since places in it
// may mean something else than its author thought. It is where all that keeps it from
// being read has a repair, and it reads with those. Comments and layout stay byte for
// byte. Nothing here touches a disk.
package mend

import (
	"slices"

	"maltwright/lang/finding"
	"maltwright/lang/source"
)

// Checker checks a text, and gives its file and what was found, of which some may be
// about other files. Of one text it always finds the same.
type Checker func(text []byte) (*source.File, []finding.Finding)

// Result is what came of mending a text.
type Result struct {
	Text    []byte            // mended, or as it was
	Mended  []finding.Finding // what was put right
	Unread  bool              // the text did not read, and was left as it was
	Forbids *finding.Finding  // the first of those for which it does not read; nil where it reads, or holds versions of a merge
	Changed bool
}

// mostRounds bounds repairs that bring each other about.
const mostRounds = 100

// Text mends a text. Mending the text that it gives once more changes nothing.
func Text(text []byte, check Checker) Result {
	path := mender{check}.path(text)
	end := path[len(path)-1]
	return Result{Text: []byte(end.text()), Mended: end.mended, Changed: len(path) > 1, Unread: end.unread(), Forbids: end.forbids()}
}

// path gives the text and what it was after each round.
func (m mender) path(text []byte) []look {
	path := []look{m.look(text)}
	if path[0].unread() {
		next, ok := m.readable(path[0])
		if !ok {
			return path
		}
		path = append(path, next)
	}
	for range mostRounds {
		next, ok := m.round(path[len(path)-1])
		if !ok {
			break
		}
		if i := slices.IndexFunc(path, func(l look) bool { return l.text() == next.text() }); i >= 0 {
			path = path[:i+1] // they go round in a circle
			break
		}
		path = append(path, next)
	}
	for len(path[len(path)-1].owed) > 0 {
		path = path[:len(path)-1]
	}
	return path
}

// Only makes the repair of one finding of a text, and gives the edits: of the first of those of its rule that stand at
// its place. It gives none where the finding has no repair, or where that would be no gain: the finding would still
// stand, or another would come that has no repair of its own.
func Only(text []byte, f finding.Finding, check Checker) []finding.Edit {
	m := mender{check}
	before := m.look(text)
	i := slices.IndexFunc(before.found, func(g finding.Finding) bool {
		return g.Rule == f.Rule && g.Place.Span == f.Place.Span && g.Place.File == before.file && g.Message == f.Message
	})
	if i < 0 || len(before.found[i].Fixes) == 0 || !before.fits(nil, before.found[i]) {
		return nil
	}
	if _, blamed := m.try(before, []int{i}); len(blamed) > 0 {
		return nil
	}
	return before.found[i].Fixes
}
