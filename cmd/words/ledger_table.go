package words

import (
	"cmp"
	"fmt"

	"maltwright/cmd/answer/ledger"
	"maltwright/sim/seasons"
)

// LedgerTitle says how many batches stand side by side, and of which process where it is one.
func LedgerTitle(list []ledger.Batch) string {
	head := "1 batch"
	if len(list) > 1 {
		head = fmt.Sprintf("%d batches", len(list))
	}
	if oneProcess(list) {
		head += " of " + Safe(list[0].Process)
	}
	return head
}

// LedgerTable is batches side by side: a label a line, and for each column a cell a line. The first line
// has the names of the columns.
type LedgerTable struct {
	Labels  []string
	Heads   []bool // lines that begin a group
	Names   []bool // lines of names, which may be longer than their column
	Columns [][]string
	Batches int // of the columns; the rest sums them up
}

// LedgerTable makes the table of some batches, one at least.
func (h House) LedgerTable(list []ledger.Batch) LedgerTable {
	t := LedgerTable{Columns: make([][]string, len(list)), Batches: len(list)}
	sums := summaries[min(len(list), len(summaries)-1)]
	for _, c := range sums {
		t.Columns = append(t.Columns, []string{c.head})
	}
	t.Labels, t.Heads, t.Names = []string{""}, []bool{true}, []bool{true}
	for i, b := range list {
		t.Columns[i] = []string{Safe(b.Batch)}
	}
	if !oneProcess(list) {
		t.words("process", list, func(b *ledger.Batch) string { return Safe(b.Process) })
		t.Names[len(t.Names)-1] = true
	}
	t.words("year", list, func(b *ledger.Batch) string { return began(b, "2006") })
	t.words("began", list, func(b *ledger.Batch) string { return began(b, "2 Jan") })
	group := ""
	for _, m := range linesOf(h, list) {
		if m.group != group {
			group = m.group
			t.line(group, true)
		}
		t.figures(m, list, sums)
		if m.label == feltBehind {
			t.words("  rub at last", list, func(b *ledger.Batch) string { return cmp.Or(b.Rub, None) })
		}
	}
	return t
}

func began(b *ledger.Batch, layout string) string {
	if b.Began.IsZero() {
		return None
	}
	return b.Began.Format(layout)
}

// line begins a line of the table: its cells are filled up with nothing.
func (t *LedgerTable) line(label string, head bool) {
	t.Labels, t.Heads, t.Names = append(t.Labels, label), append(t.Heads, head), append(t.Names, false)
	for i := range t.Columns {
		t.Columns[i] = append(t.Columns[i], "")
	}
}

func (t *LedgerTable) words(label string, list []ledger.Batch, of func(*ledger.Batch) string) {
	t.line(label, false)
	for i := range list {
		t.Columns[i][len(t.Labels)-1] = of(&list[i])
	}
}

func (t *LedgerTable) figures(m measure, list []ledger.Batch, sums []summary) {
	t.line(m.head(), false)
	all := make([]seasons.Figure, len(list))
	for i := range list {
		all[i] = m.of(&list[i])
		t.Columns[i][len(t.Labels)-1] = m.cell(all[i])
	}
	if m.kind != tallied {
		for i, c := range sums {
			t.Columns[t.Batches+i][len(t.Labels)-1] = c.cell(m, all)
		}
	}
}

// LedgerRow is a figure of one batch, and how it was come by.
type LedgerRow struct{ Group, Label, Value, Standing string }

// comeBy are how figures were come by, in words.
var comeBy = map[seasons.Standing]string{seasons.Measured: "measured", seasons.Reckoned: "reckoned", seasons.Over: "more than that: not reached at the last reading",
	seasons.Under: "that or less: reached at the first look", seasons.Impossible: "impossible", seasons.Missing: "not in the record"}

// LedgerRows are the figures of one batch, each with its unit.
func (h House) LedgerRows(b ledger.Batch) (rows []LedgerRow) {
	for _, m := range linesOf(h, []ledger.Batch{b}) {
		f := m.of(&b)
		r := LedgerRow{Group: m.group, Label: m.label, Value: None, Standing: comeBy[f.Standing]}
		if f.Standing != seasons.Missing {
			r.Value = Joined(" ", m.scale.Write(f.Value), m.scale.Unit)
		}
		if m.kind == tallied {
			r.Standing = ""
		}
		rows = append(rows, r)
		if m.label == feltBehind && b.Rub != "" {
			rows = append(rows, LedgerRow{m.group, "rub at last", b.Rub, comeBy[seasons.Measured]})
		}
	}
	return rows
}
