package margin

import (
	"strings"

	"maltwright/lang/source"
	"maltwright/lang/syntax"
)

// places finds the statement that words of a file stand in.
type places struct {
	file *source.File
	list []place // outer ones first
}

// place is a statement.
type place struct {
	head   source.Span // without its block
	behind int         // where a hint of it stands: behind its head or, where its block opens on that line, behind the brace
}

func placesOf(tree *syntax.Tree) places {
	p := places{file: tree.File}
	tree.Top.Walk(func(s *syntax.Statement) {
		head := s.Head()
		at := place{head, head.End}
		if b := s.Body; b != nil && head.End <= b.Start && !strings.ContainsAny(tree.File.Text(source.Span{Start: head.End, End: b.Start}), "\r\n") {
			at.behind = b.Start + 1
		}
		p.list = append(p.list, at)
	})
	return p
}

// of finds the statement whose head holds a place of the same file.
func (p places) of(at source.Place) (found place, ok bool) {
	if !at.Known() || at.File.Name() != p.file.Name() {
		return place{}, false
	}
	for _, s := range p.list {
		if s.head.Start <= at.Start && at.End <= s.head.End {
			found, ok = s, true // the inner ones come later
		}
	}
	return found, ok
}

func joined(lines []string) string { return strings.Join(lines, "\n") }
