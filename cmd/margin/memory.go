package margin

import (
	"slices"

	"maltwright/lang/source"
	"maltwright/lang/syntax"
	"maltwright/lang/vocabulary"
)

// Memory holds what was told last of each process and each record of a file, for the time in which its text cannot be
// forecast. The zero value holds nothing. It may not be used from several goroutines at once.
type Memory struct{ last map[string]Margin }

// mostHeld is of how many processes and records a memory holds something: names come and go as they are typed.
const mostHeld = 256

// Keep takes note of what was told.
func (k *Memory) Keep(m Margin) {
	if k.last == nil || len(k.last) > mostHeld {
		k.last = map[string]Margin{}
	}
	for _, s := range blocks(m.tree) {
		if m.tells(s.Span) {
			k.last[m.File.Text(s.Head())] = m
		}
	}
}

// On is what still holds beside a text that is not forecast.
func (k *Memory) On(tree *syntax.Tree) Margin { return k.Beside(Margin{File: tree.File, tree: tree}) }

// Beside adds to a margin what still holds of those processes and records of which it tells nothing.
func (k *Memory) Beside(m Margin) Margin {
	out := m
	out.Hints, out.Lenses, out.Steps = slices.Clone(m.Hints), slices.Clone(m.Lenses), slices.Clone(m.Steps)
	for _, s := range blocks(m.tree) {
		last, ok := k.last[m.File.Text(s.Head())]
		if !ok || m.tells(s.Span) {
			continue
		}
		kept := last.On(m.tree)
		out.add(s.Span, kept, m.Lenses)
	}
	out.sort()
	return out
}

// add takes from another margin of the same text what stands in a stretch; a lens only where there is none yet.
func (m *Margin) add(in source.Span, o Margin, lenses []Lens) {
	inside := func(s source.Span) bool { return in.Start <= s.Start && s.End <= in.End }
	for _, x := range o.Hints {
		if inside(x.Of) {
			m.Hints = append(m.Hints, x)
		}
	}
	for _, x := range o.Steps {
		if inside(x.Of) {
			m.Steps = append(m.Steps, x)
		}
	}
	for _, x := range o.Lenses {
		if inside(x.Of) && !slices.ContainsFunc(lenses, func(y Lens) bool { return y.Of == x.Of }) {
			m.Lenses = append(m.Lenses, x)
		}
	}
}

// tells tells whether a margin was made by a forecast of what stands in a stretch.
func (m Margin) tells(in source.Span) bool {
	return slices.ContainsFunc(m.told, func(s source.Span) bool { return in.Start <= s.Start && s.End <= in.End })
}

// blocks are the processes and records of a file.
func blocks(tree *syntax.Tree) (list []*syntax.Statement) {
	if tree == nil {
		return nil
	}
	for _, s := range tree.Top.Statements {
		if s.Body != nil && (s.Verb.Text == string(vocabulary.Process) || s.Verb.Text == string(vocabulary.Batch)) {
			list = append(list, s)
		}
	}
	return list
}
