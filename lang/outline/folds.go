package outline

import (
	"slices"
	"strings"

	"maltwright/lang/source"
	"maltwright/lang/syntax"
	"maltwright/lang/vocabulary"
)

// FoldKind is what can be folded.
type FoldKind int

// The kinds of fold.
const (
	BlockFold   FoldKind = iota
	CommentFold          // comments on lines of their own
	DayFold              // the lines of one day of a record
)

// Fold is what can be folded to its first line: from that to the last line that is hidden, both
// counted from 1. A brace that ends a block on a line of its own stays.
type Fold struct {
	First, Last int
	Kind        FoldKind
}

// Folds lists what can be folded, in the order in which it begins. No fold is of one line alone.
func Folds(t *syntax.Tree) []Fold {
	f := folder{file: t.File}
	f.block(&t.Top, vocabulary.File)
	f.comments(t)
	slices.SortStableFunc(f.list, func(a, b Fold) int {
		if a.First != b.First {
			return a.First - b.First
		}
		return b.Last - a.Last
	})
	return f.list
}

type folder struct {
	file *source.File
	list []Fold
}

func (f *folder) line(at int) int { return f.file.Position(at, source.Bytes).Line }

func (f *folder) add(first, last int, kind FoldKind) {
	if last > first {
		f.list = append(f.list, Fold{first, last, kind})
	}
}

func (f *folder) block(b *syntax.Block, in vocabulary.Block) {
	for _, s := range b.Statements {
		if s.Body == nil {
			continue
		}
		last := f.line(max(s.Body.End-1, s.Body.Start))
		if strings.HasPrefix(strings.TrimLeft(f.file.Text(f.file.Line(last)), " \t"), "}") {
			last--
		}
		f.add(f.line(s.Start), last, BlockFold)
		opens := vocabulary.Opens(in, s.Verb.Text)
		if opens == vocabulary.Batch {
			for _, d := range daysOf(s.Body) {
				f.add(f.line(d.lines[0].Start), f.line(max(d.span().End-1, d.span().Start)), DayFold)
			}
		}
		f.block(s.Body, opens)
	}
}

// comments finds runs of comments that stand on neighbouring lines of their own.
func (f *folder) comments(t *syntax.Tree) {
	first, last := 0, -1
	t.Top.Comments(func(c *syntax.Comment) {
		line := f.line(c.Start)
		switch {
		case strings.TrimSpace(f.file.Text(source.Span{Start: f.file.Line(line).Start, End: c.Start})) != "":
			return
		case line == last+1:
			last = line
			return
		}
		f.add(first, last, CommentFold)
		first, last = line, line
	})
	f.add(first, last, CommentFold)
}
