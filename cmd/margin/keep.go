package margin

import (
	"slices"

	"maltwright/lang/source"
	"maltwright/lang/syntax"
	"maltwright/lang/vocabulary"
)

// On is what of the margin still holds beside a newer text of the same file that is not forecast, because it does
// not read or because its forecast is under way.
//
// What is told of a stage comes of what is written of the process until there. So of a process, and of a
// record, the hints are kept of those statements before the first that is otherwise; promises and acceptances, by
// which nothing is forecast, may change. A process whose own words all stand keeps everything, be the rest of the
// file or its house broken as it may. A hint is never kept beside words that are not its own.
func (m Margin) On(tree *syntax.Tree) Margin {
	out := Margin{File: tree.File, tree: tree}
	if m.tree == nil {
		return out
	}
	for _, old := range blocks(m.tree) {
		now := namesake(tree, m.tree, old)
		if now == nil {
			continue
		}
		if textOf(tree, now) == textOf(m.tree, old) {
			m.shift(&out, old.Span, now.Start-old.Start, true)
			continue
		}
		for _, p := range alike(m.tree, tree, old, now) {
			m.shift(&out, p[0].Span, p[1].Start-p[0].Start, false)
		}
	}
	out.sort()
	return out
}

// shift moves what stands beside a stretch of the text so many bytes on.
func (m Margin) shift(out *Margin, of source.Span, by int, whole bool) {
	move := func(s source.Span) (source.Span, bool) {
		return source.Span{Start: s.Start + by, End: s.End + by}, of.Start <= s.Start && s.End <= of.End
	}
	for _, x := range m.Hints {
		if s, in := move(x.Of); in {
			x.Of, x.At = s, x.At+by
			out.Hints = append(out.Hints, x)
		}
	}
	for _, x := range m.Steps {
		if s, in := move(x.Of); in {
			x.Of = s
			out.Steps = append(out.Steps, x)
		}
	}
	for _, x := range m.Lenses {
		if s, in := move(x.Of); in && whole && x.says != "" {
			x.Of, x.Text = s, x.says // what is found now is not known
			out.Lenses = append(out.Lenses, x)
		}
	}
}

// namesake is the process or batch of a tree that is called as one of another; nil where it is not clear which.
func namesake(in, of *syntax.Tree, old *syntax.Statement) (found *syntax.Statement) {
	head := of.File.Text(old.Head())
	for _, s := range blocks(in) {
		if in.File.Text(s.Head()) != head {
			continue
		}
		if found != nil {
			return nil
		}
		found = s
	}
	return found
}

// alike pairs the statements of two blocks until the first that is otherwise.
func alike(a, b *syntax.Tree, old, now *syntax.Statement) (list [][2]*syntax.Statement) {
	x, y := telling(old), telling(now)
	for i := 0; i < min(len(x), len(y)); i++ {
		if textOf(a, x[i]) != textOf(b, y[i]) {
			break
		}
		list = append(list, [2]*syntax.Statement{x[i], y[i]})
	}
	return list
}

// telling are the statements of a block by which something is forecast.
func telling(s *syntax.Statement) []*syntax.Statement {
	return slices.DeleteFunc(slices.Clone(s.Body.Statements), func(s *syntax.Statement) bool {
		return !s.Broken && (s.Verb.Text == vocabulary.VerbExpect || s.Verb.Text == vocabulary.VerbAccept)
	})
}

func textOf(t *syntax.Tree, s *syntax.Statement) string { return t.File.Text(s.Span) }
