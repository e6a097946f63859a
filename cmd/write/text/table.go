package text

import (
	"fmt"
	"strings"

	"github.com/rivo/uniseg"
)

// table is rows of figures below heads. Where the sheet is too narrow for it, each row is a record:
// its key on a line, and below what else it says.
type table struct {
	columns []tableColumn
	rows    []record
	say     func(cells []string) string // how a paragraph tells a row; nil is each figure behind its head
}

// tableColumn is one column of a table.
type tableColumn struct {
	head  string
	right bool
	least int    // how wide it is at the least
	key   bool   // it stands on the first line of a record
	spare bool   // it is left out where there is no room for all
	less  string // what is cut off the end of its cells where there is no room for it
	as    string // how a record tells it, such as "ended: %s"; "" is as it is
}

// record is one row: a cell for each column, or a line of its own such as the name of a stage; or a
// paragraph below the row in front of it.
type record struct {
	line, below string
	cells       []string
}

func (t *table) add(cells ...string)    { t.rows = append(t.rows, record{cells: cells}) }
func (t *table) between(heading string) { t.rows = append(t.rows, record{line: heading}) }
func (t *table) below(text string)      { t.rows = append(t.rows, record{below: text}) }

// lay writes it as wide as the sheet allows.
func (t table) lay(s *Sheet) {
	t = t.without(func(i int) bool { return t.empty(i) })
	for _, gap := range []int{2, 1} {
		if t.wide(gap) <= s.columns() {
			t.wideRows(s, gap)
			return
		}
	}
	less := t.without(func(i int) bool { return t.columns[i].spare })
	for _, tight := range []table{less, less.cut()} {
		if tight.wide(1) <= s.columns() {
			tight.wideRows(s, 1)
			return
		}
	}
	t.records(s)
}

func (t table) empty(i int) bool {
	for _, r := range t.rows {
		if r.cells != nil && r.cells[i] != "" {
			return false
		}
	}
	return true
}

// without is the table without some of its columns.
func (t table) without(gone func(int) bool) table {
	out := table{say: t.say}
	var stay []int
	for i, c := range t.columns {
		if !gone(i) {
			out.columns, stay = append(out.columns, c), append(stay, i)
		}
	}
	for _, r := range t.rows {
		if r.cells != nil {
			cells := make([]string, len(stay))
			for k, i := range stay {
				cells[k] = r.cells[i]
			}
			r.cells = cells
		}
		out.rows = append(out.rows, r)
	}
	return out
}

// cut is the table with what may be cut off the ends of cells cut off.
func (t table) cut() table {
	out := t.without(func(int) bool { return false })
	for _, r := range out.rows {
		for i := range r.cells {
			r.cells[i] = strings.TrimSuffix(r.cells[i], t.columns[i].less)
		}
	}
	return out
}

func (t table) width(i int) int {
	w := max(t.columns[i].least, uniseg.StringWidth(t.columns[i].head))
	for _, r := range t.rows {
		if r.cells != nil {
			w = max(w, uniseg.StringWidth(r.cells[i]))
		}
	}
	return w
}

func (t table) wide(gap int) int {
	w := -gap
	for i := range t.columns {
		w += gap + t.width(i)
	}
	return w
}

func (t table) wideRows(s *Sheet, gap int) {
	columns := make([]column, len(t.columns))
	for i, c := range t.columns {
		columns[i] = column{c.head, t.width(i), min(i, 1) * gap, c.right}
	}
	s.boldHeads(columns)
	for _, r := range t.rows {
		if r.cells == nil {
			s.hang("    ", r.below)
			if r.line != "" {
				s.line("%s", s.bold(r.line))
			}
			continue
		}
		s.row(columns, r.cells)
	}
}

// records writes each row as a record: the keys in columns, the rest below them.
func (t table) records(s *Sheet) {
	var columns []column
	for i, c := range t.columns {
		if c.key {
			columns = append(columns, column{c.head, t.width(i), min(len(columns), 1), c.right})
		}
	}
	tall := t.keysWide(columns) > s.columns() // the first key stands above the others
	if tall && (t.say != nil || t.keysWide(columns[1:])+2 > s.columns()) {
		t.paragraphs(s)
		return
	}
	if tall {
		s.title(columns[0].head)
		columns = columns[1:]
		columns[0].gap = 2
	}
	s.boldHeads(columns)
	for _, r := range t.rows {
		if r.cells == nil {
			s.hang("    ", r.below)
			if r.line != "" {
				s.line("%s", s.bold(r.line))
			}
			continue
		}
		var keys, rest []string
		for i, c := range t.columns {
			switch {
			case c.key:
				keys = append(keys, r.cells[i])
			case r.cells[i] != "":
				rest = append(rest, inRecord(c, r.cells[i]))
			}
		}
		if tall {
			s.hang("", keys[0])
			keys = keys[1:]
		}
		s.row(columns, keys)
		s.hang("    ", strings.Join(rest, ", "))
	}
}

// paragraphs writes each row as a paragraph, by its own words or with each figure behind its head.
func (t table) paragraphs(s *Sheet) {
	s.title(t.columns[0].head)
	for _, r := range t.rows {
		switch {
		case r.cells != nil && t.say != nil:
			s.item("%s", t.say(r.cells))
		case r.cells != nil:
			s.item("%s: %s", strings.TrimSpace(r.cells[0]), strings.Join(t.figures(r.cells), ", "))
		case r.line != "":
			s.line("%s", s.bold(r.line))
		default:
			s.hang("    ", r.below)
		}
	}
}

// figures are the cells behind the first as a paragraph tells them.
func (t table) figures(cells []string) (parts []string) {
	for i, c := range t.columns[1:] {
		switch cell := cells[i+1]; {
		case cell == "":
		case c.as != "":
			parts = append(parts, fmt.Sprintf(c.as, cell))
		default:
			parts = append(parts, c.head+" "+cell)
		}
	}
	return parts
}

func (t table) keysWide(columns []column) (wide int) {
	for _, c := range columns {
		wide += c.gap + c.width
	}
	return wide
}

func inRecord(c tableColumn, cell string) string {
	if c.as == "" {
		return cell
	}
	return fmt.Sprintf(c.as, cell)
}
