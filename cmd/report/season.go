package report

import (
	"strings"

	"maltwright/cmd/answer/ledger"
	"maltwright/cmd/words"
)

// Marks are what is to be marked of one of the batches side by side.
type Marks struct {
	Astray   bool            // hardly any forecast agrees with all of its readings
	Doubtful map[string]bool // figures, by the names of their rows, that come from a reading in doubt
}

const (
	astrayMark   = " *"
	doubtfulMark = " ?"
)

// Season is the page of batches side by side, in the units of a house. Marks is nil where the batches were not
// followed; otherwise there is one for each.
func Season(h words.House, list []ledger.Batch, marks []Marks, charts ...Drawing) Page {
	p := Page{Title: "Batches side by side", Sub: words.LedgerTitle(list)}
	grid := h.LedgerTable(list)
	t := Table{Head: "Figures and yields"}
	t.Columns = []Column{{"", false}}
	var astray, doubtful bool
	for k, c := range grid.Columns {
		head := c[0]
		if k < len(marks) && marks[k].Astray {
			head, astray = head+astrayMark, true
		}
		t.Columns = append(t.Columns, Column{head, true})
	}
	for i := 1; i < len(grid.Labels); i++ {
		row := []string{grid.Labels[i]}
		if !grid.Heads[i] {
			for k, c := range grid.Columns {
				text := c[i]
				if k < len(marks) && marks[k].of(grid.Labels[i]) && text != words.None {
					text, doubtful = text+doubtfulMark, true
				}
				row = append(row, text)
			}
		}
		t.Rows = append(t.Rows, row)
	}
	if astray {
		p.Doubt = "Do not rely on what is reckoned of a batch marked" + astrayMark + ": hardly any forecast agrees with all of its readings."
	}
	if doubtful {
		t.Notes = append(t.Notes, strings.TrimSpace(doubtfulMark)+": a reading that it comes from is in doubt; see the page of the batch")
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

// of tells whether the row with a label, which has a unit behind its name, is doubtful.
func (m Marks) of(label string) bool {
	label = strings.TrimSpace(label)
	for name := range m.Doubtful {
		if rest, ok := strings.CutPrefix(label, name); ok && (rest == "" || strings.HasPrefix(rest, ", ")) {
			return true
		}
	}
	return false
}
