package onpaper

import (
	"strings"

	"maltwright/cmd/report"
	"maltwright/cmd/write/pdf"
)

// column is where a column of a table stands, mm.
type column struct {
	x, wide float64
	right   bool
}

// columns gives each column the width that it would have, where there is room for all;
// otherwise its widest word, and of what is left a share by what it would have.
func (f *flow) columns(rows [][]string, right []bool, font pdf.Font) []column {
	n := len(right)
	room := f.wide() - columnGap*float64(n-1)
	would, word := make([]float64, n), make([]float64, n)
	for _, r := range rows {
		for i, text := range r[:min(len(r), n)] {
			would[i] = max(would[i], f.Width(text, font))
			for _, w := range strings.Fields(text) {
				word[i] = max(word[i], min(f.Width(w, font), room/3))
			}
		}
	}
	wide := shared(would, word, room)
	list, x := make([]column, n), margin
	for i := range list {
		list[i] = column{x: x, wide: wide[i], right: right[i]}
		x += wide[i] + columnGap
	}
	return list
}

// shared are the widths of columns that would be so wide, and have words so wide.
func shared(would, word []float64, room float64) []float64 {
	all, least := 0.0, 0.0
	for i := range would {
		would[i] += 0.1 // what is rounded must not break a line
		word[i] = min(word[i]+0.1, would[i])
		all, least = all+would[i], least+word[i]
	}
	wide := make([]float64, len(would))
	for i := range wide {
		switch {
		case all <= room:
			wide[i] = would[i]
		case least >= room:
			wide[i] = word[i] * room / least
		default:
			wide[i] = word[i] + (room-least)*(would[i]-word[i])/(all-least)
		}
	}
	return wide
}

// cells are the lines of each cell of a row.
func (f *flow) cells(columns []column, row []string, font pdf.Font) [][]string {
	out := make([][]string, min(len(row), len(columns)))
	for i := range out {
		out[i] = f.Wrap(row[i], font, columns[i].wide)
	}
	return out
}

func (f *flow) table(t report.Table) {
	if len(t.Columns) == 0 {
		return
	}
	var right []bool
	heads := make([]string, len(t.Columns))
	for i, c := range t.Columns {
		right, heads[i] = append(right, c.Right), c.Head
	}
	all := [][]string{heads}
	for _, r := range t.Rows {
		if !begins(t, r) {
			all = append(all, r)
		}
	}
	columns := f.columns(all, right, fonts.cell)
	f.head(t.Head)
	top := func() {
		if strings.Join(heads, "") != "" {
			f.row(columns, f.cells(columns, heads, fonts.cell), fonts.quiet)
		}
	}
	top()
	f.again = top
	for _, r := range t.Rows {
		if begins(t, r) {
			f.need(4 * leading(fonts.cell)) // it stays with the row below it
			f.row([]column{{x: margin, wide: f.wide()}}, [][]string{f.Wrap(r[0], fonts.group, f.wide())}, fonts.group)
			continue
		}
		f.row(columns, f.cells(columns, r, fonts.cell), fonts.cell)
	}
	f.again = nil
	for _, n := range t.Notes {
		f.text(n, fonts.quiet)
	}
}

// begins tells of a row that begins a group.
func begins(t report.Table, row []string) bool { return len(row) == 1 && len(t.Columns) > 1 }
