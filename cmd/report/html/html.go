// Package html writes a report as one page that needs nothing else, and prints a sheet or more for each of its
// parts. Whatever comes from a file is escaped.
package html

import (
	_ "embed"
	"io"

	charthtml "maltwright/cmd/chart/html"
	"maltwright/cmd/report"
	"maltwright/cmd/write/fill"
)

//go:embed report.html
var text string

// block is one block, in the one of its fields that is not nil.
type block struct {
	Facts  *report.Facts
	Table  *table
	Text   *report.Text
	Figure fill.HTML
	Found  *report.Found
}

// table is one whose rows say whether they begin a group.
type table struct {
	report.Table
	Wide int
	Rows []row
}

type row struct {
	Group string // "" of a row of cells
	Cells []cell
}

type cell struct {
	Text        string
	Right, Head bool
}

type part struct {
	report.Page
	ID     int
	Blocks []block
}

// whole is all that the page asks for.
type whole struct {
	report.Report
	Style fill.CSS
	Parts []part
}

var written = fill.New(nil, text)

// Write writes a report.
func Write(w io.Writer, r report.Report) error {
	out := whole{Report: r, Style: charthtml.Style()}
	for i, p := range r.Pages {
		x := part{Page: p, ID: i + 1}
		for _, b := range p.Blocks {
			one, err := blockOf(b)
			if err != nil {
				return err
			}
			x.Blocks = append(x.Blocks, one)
		}
		out.Parts = append(out.Parts, x)
	}
	return written.Write(w, out)
}

func blockOf(b report.Block) (out block, err error) {
	switch b := b.(type) {
	case report.Facts:
		out.Facts = &b
	case report.Table:
		out.Table = tableOf(b)
	case report.Text:
		out.Text = &b
	case report.Found:
		out.Found = &b
	case report.Figure:
		out.Figure, err = charthtml.Figure(b.Chart)
	}
	return out, err
}

func tableOf(t report.Table) *table {
	out := &table{Table: t, Wide: len(t.Columns)}
	for _, cells := range t.Rows {
		if len(cells) == 1 && out.Wide > 1 {
			out.Rows = append(out.Rows, row{Group: cells[0]})
			continue
		}
		var r row
		for i, text := range cells {
			r.Cells = append(r.Cells, cell{text, t.Columns[i].Right, i == 0})
		}
		out.Rows = append(out.Rows, r)
	}
	return out
}
