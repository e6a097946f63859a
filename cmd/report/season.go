package report

import (
	"maltwright/cmd/answer/ledger"
	"maltwright/cmd/words"
)

// Season is the page of batches side by side, in the units of a house.
func Season(h words.House, list []ledger.Batch, charts ...Drawing) Page {
	p := Page{Title: "Batches side by side", Sub: words.LedgerTitle(list)}
	grid := h.LedgerTable(list)
	t := Table{Head: "Figures and yields"}
	t.Columns = []Column{{"", false}}
	for _, c := range grid.Columns {
		t.Columns = append(t.Columns, Column{c[0], true})
	}
	for i := 1; i < len(grid.Labels); i++ {
		row := []string{grid.Labels[i]}
		if !grid.Heads[i] {
			for _, c := range grid.Columns {
				row = append(row, c[i])
			}
		}
		t.Rows = append(t.Rows, row)
	}
	for _, n := range h.LedgerNotes(list) {
		t.Notes = append(t.Notes, n.Label+": "+n.Text)
	}
	p.add(t)
	for _, c := range charts {
		p.add(Figure{c})
	}
	return p
}
