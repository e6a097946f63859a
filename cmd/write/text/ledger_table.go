package text

import (
	"slices"
	"strings"

	"github.com/rivo/uniseg"

	"maltwright/cmd/words"
)

const (
	widestName = 12 // of a batch or a process over its column
	columnGap  = 2  // in front of a column
)

// grid is a table before it is laid out: a label a line, and for each column a cell a line.
type grid struct {
	labels  []string
	heads   []bool // lines that begin a group
	columns [][]string
	batches int // of the columns; the rest sums them up
}

// gridOf is a table whose names fit their columns.
func gridOf(t words.LedgerTable) grid {
	for _, c := range t.Columns {
		for i, isName := range t.Names {
			if isName {
				c[i] = clipped(c[i])
			}
		}
	}
	return grid{t.Labels, t.Heads, t.Columns, t.Batches}
}

// clipped shortens a name to the width of a column.
func clipped(name string) string {
	if uniseg.StringWidth(name) <= widestName {
		return name
	}
	var b strings.Builder
	for g := uniseg.NewGraphemes(name); g.Next() && uniseg.StringWidth(b.String()+g.Str()) < widestName; {
		b.WriteString(g.Str())
	}
	return strings.TrimRight(b.String(), " ") + "…"
}

// lay writes the table in as many parts as the width asks for.
func (s *Sheet) lay(t grid) {
	label := 0
	for i, text := range t.labels {
		if !t.heads[i] {
			label = max(label, uniseg.StringWidth(text))
		}
	}
	room := usualWidth
	if s.Width > 0 {
		room = s.Width
	}
	room -= label
	from, to, used := 0, 0, 0
	for _, next := range t.ends(room) {
		more := t.wide(to, next)
		if to > from && used+more > room {
			s.part(t, label, from, to)
			from, used = to, 0
		}
		to, used = next, used+more
	}
	s.part(t, label, from, to)
}

// ends are the columns behind which the table may be parted: each batch, and what
// sums them up as a whole if it fits.
func (t grid) ends(room int) []int {
	var list []int
	for i := range t.columns {
		if i < t.batches || t.wide(t.batches, len(t.columns)) > room || i+1 == len(t.columns) {
			list = append(list, i+1)
		}
	}
	return list
}

// wide is the width of some of the columns with the gaps in front of them.
func (t grid) wide(from, to int) int {
	w := 0
	for i := from; i < to; i++ {
		w += columnGap + t.width(i)
	}
	return w
}

func (t grid) width(column int) int {
	w := 0
	for _, cell := range t.columns[column] {
		w = max(w, uniseg.StringWidth(cell))
	}
	return w
}

// part writes some of the columns.
func (s *Sheet) part(t grid, label, from, to int) {
	for _, i := range t.filled(from, to) {
		line := t.labels[i] + strings.Repeat(" ", max(0, label-uniseg.StringWidth(t.labels[i])))
		for c := from; c < to; c++ {
			cell := t.columns[c][i]
			line += strings.Repeat(" ", columnGap+t.width(c)-uniseg.StringWidth(cell)) + cell
		}
		if line = strings.TrimRight(line, " "); t.heads[i] {
			line = s.bold(line)
		}
		s.line("%s", line)
	}
	s.line("")
}

// filled lists the lines in which one of the columns says something, with the heads
// of their groups.
func (t grid) filled(from, to int) []int {
	list, head := []int{}, 0
	for i := range t.labels {
		said := slices.ContainsFunc(t.columns[from:to], func(c []string) bool { return c[i] != "" })
		switch {
		case t.heads[i] && i > 0:
			head = i
		case said && head > 0:
			list, head = append(list, head, i), 0
		case said:
			list = append(list, i)
		}
	}
	return list
}
