package command

import (
	"fmt"
	"slices"
	"strings"

	"github.com/rivo/uniseg"

	"maltwright/cmd/words"
	"maltwright/sim/seasons"
)

// The marks of figures, told below the table where they stand in it.
const (
	noFigure     = "—"
	reckonedMark = "~"
	overMark     = ">"
	underMark    = "≤"
)

const (
	widestName = 12 // of a batch or a process over its column
	seasonsGap = 2  // in front of a column
)

// seasonsTable is batches beside each other, before it is laid out: a label a line,
// and for each column a cell a line.
type seasonsTable struct {
	labels  []string
	heads   []bool // lines that begin a group
	columns [][]string
	batches int // of the columns; the rest sums them up
}

// writeSeasonsText writes the batches side by side. Columns that do not fit the width
// stand in further tables below.
func writeSeasonsText(w *World, rows []recordRow) error {
	p := sheet{World: w}
	u := unitsOf(&rows[0])
	p.pounds, p.fahrenheit = u.pounds, u.fahrenheit
	p.seasonsHead(rows)
	p.lay(tabled(rows, u))
	p.seasonsNotes(rows, u)
	_, err := fmt.Fprint(w.Out, p.b.String())
	return err
}

func (p *sheet) seasonsHead(rows []recordRow) {
	head := plural(len(rows), "batch")
	if len(rows) > 1 {
		head = fmt.Sprintf("%d batches", len(rows))
	}
	if oneProcess(rows) {
		head += " of " + words.Safe(rows[0].Batch.Process.Name)
	}
	p.line("%s", p.bold(head))
	p.line("")
}

func oneProcess(rows []recordRow) bool {
	for _, r := range rows {
		if r.Batch.Process.Name != rows[0].Batch.Process.Name {
			return false
		}
	}
	return true
}

// tabled makes the table of the batches.
func tabled(rows []recordRow, u seasonUnits) seasonsTable {
	t := seasonsTable{columns: make([][]string, len(rows)), batches: len(rows)}
	sums := seasonSums[min(len(rows), len(seasonSums)-1)]
	for _, s := range sums {
		t.columns = append(t.columns, []string{s.head})
	}
	t.labels, t.heads = []string{""}, []bool{true}
	for i, r := range rows {
		t.columns[i] = []string{clipped(words.Safe(r.Batch.Name))}
	}
	if !oneProcess(rows) {
		t.words("process", rows, func(r *recordRow) string { return clipped(words.Safe(r.Batch.Process.Name)) })
	}
	t.words("year", rows, func(r *recordRow) string { return r.began("2006") })
	t.words("began", rows, func(r *recordRow) string { return r.began("2 Jan") })
	group := ""
	for _, m := range seasonMeasures {
		if m.group != group {
			group = m.group
			t.group(group)
		}
		t.figures(m, rows, u, sums)
		if m.key == "green_malt_kg" {
			t.words("  rub at last", rows, func(r *recordRow) string { return orNone(r.Rub) })
		}
	}
	return t
}

func (r *recordRow) began(layout string) string {
	if r.Batch.Began.IsZero() {
		return noFigure
	}
	return r.Batch.Began.Format(layout)
}

func orNone(text string) string {
	if text == "" {
		return noFigure
	}
	return text
}

// line begins a line of the table: its cells are filled up with nothing.
func (t *seasonsTable) line(label string, head bool) {
	t.labels, t.heads = append(t.labels, label), append(t.heads, head)
	for i := range t.columns {
		t.columns[i] = append(t.columns[i], "")
	}
}

func (t *seasonsTable) group(name string) { t.line(name, true) }

func (t *seasonsTable) words(label string, rows []recordRow, of func(*recordRow) string) {
	t.line(label, false)
	for i := range rows {
		t.columns[i][len(t.labels)-1] = of(&rows[i])
	}
}

func (t *seasonsTable) figures(m seasonMeasure, rows []recordRow, u seasonUnits, sums []seasonSum) {
	label := "  " + m.label
	if unit := u.name(m.kind); unit != "" {
		label += ", " + unit
	}
	t.line(label, false)
	all := make([]seasons.Figure, len(rows))
	for i := range rows {
		all[i] = m.of(&rows[i])
		t.columns[i][len(t.labels)-1] = u.cell(m.kind, all[i])
	}
	if m.kind != inNumber {
		for i, s := range sums {
			t.columns[t.batches+i][len(t.labels)-1] = s.cell(u, m.kind, all)
		}
	}
}

// cell writes a figure with its mark.
func (u seasonUnits) cell(k seasonKind, f seasons.Figure) string {
	if f.Standing == seasons.Missing {
		return noFigure
	}
	v := u.shown(k, f.Value)
	return marks[f.Standing] + decimals(v, u.digits(k, v))
}

var marks = map[seasons.Standing]string{seasons.Reckoned: reckonedMark, seasons.Over: overMark, seasons.Under: underMark}

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
func (p *sheet) lay(t seasonsTable) {
	label := 0
	for i, text := range t.labels {
		if !t.heads[i] {
			label = max(label, uniseg.StringWidth(text))
		}
	}
	room := 80
	if p.Width > 0 {
		room = p.Width
	}
	room -= label
	from, to, used := 0, 0, 0
	for _, next := range t.ends(room) {
		more := t.wide(to, next)
		if to > from && used+more > room {
			p.part(t, label, from, to)
			from, used = to, 0
		}
		to, used = next, used+more
	}
	p.part(t, label, from, to)
}

// ends are the columns behind which the table may be parted: each batch, and what
// sums them up as a whole if it fits.
func (t seasonsTable) ends(room int) []int {
	var list []int
	for i := range t.columns {
		if i < t.batches || t.wide(t.batches, len(t.columns)) > room || i+1 == len(t.columns) {
			list = append(list, i+1)
		}
	}
	return list
}

// wide is the width of some of the columns with the gaps in front of them.
func (t seasonsTable) wide(from, to int) int {
	w := 0
	for i := from; i < to; i++ {
		w += seasonsGap + t.width(i)
	}
	return w
}

func (t seasonsTable) width(column int) int {
	w := 0
	for _, cell := range t.columns[column] {
		w = max(w, uniseg.StringWidth(cell))
	}
	return w
}

// part writes some of the columns.
func (p *sheet) part(t seasonsTable, label, from, to int) {
	for _, i := range t.filled(from, to) {
		line := t.labels[i] + strings.Repeat(" ", max(0, label-uniseg.StringWidth(t.labels[i])))
		for c := from; c < to; c++ {
			cell := t.columns[c][i]
			line += strings.Repeat(" ", seasonsGap+t.width(c)-uniseg.StringWidth(cell)) + cell
		}
		if line = strings.TrimRight(line, " "); t.heads[i] {
			line = p.bold(line)
		}
		p.line("%s", line)
	}
	p.line("")
}

// filled lists the lines in which one of the columns says something, with the heads
// of their groups.
func (t seasonsTable) filled(from, to int) []int {
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
