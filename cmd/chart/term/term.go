// Package term writes charts with the letters of a terminal: fine dots where it can show them, and else
// plain signs. No row is wider than the screen, and what a colour says is said by a letter or a sign too.
//
// # How it works
//
// A panel is a grid of cells (grid.go). Lines, bands and gates set dots in them, 2 by 4 to a cell in
// Unicode's patterns of eight dots, or one to a cell of plain signs (plot.go). Readings and words take
// whole cells, and words only those that are free (place.go). The axes choose their steps so that every
// label fits, and each label stands in the row of its value (values.go, clock.go). What found no room
// in the panel stands in the legend below it (legend.go).
package term

import (
	"io"
	"strings"

	"maltwright/cmd/chart"
	"maltwright/cmd/words"
)

// Options say how to write. The zero value is fine dots without colour, 80 columns wide.
type Options struct {
	Width  int  // columns; 0 is 80
	Colour bool // whether to use colours of the terminal
	Plain  bool // whether it shows no more than ASCII
}

const (
	usualWidth = 80
	leastWidth = 20
	mostWidth  = 100
	usualRows  = 23 // of a screen, without the line of the prompt
	leastPlot  = 7  // rows of a panel
	mostPlot   = 15
)

// columns is how wide the chart is.
func (o Options) columns() int {
	if o.Width == 0 {
		return usualWidth
	}
	return max(leastWidth, min(o.Width, mostWidth))
}

// signs are those the terminal can show.
func (o Options) signs() *signs {
	if o.Plain {
		return &plainSigns
	}
	return &fineSigns
}

// Write writes a chart.
func Write(w io.Writer, c chart.Chart, o Options) error {
	p := &page{Options: o, signs: o.signs()}
	p.head(c.Title, c.Sub)
	p.panels(c)
	p.notes(c.Note)
	_, err := io.WriteString(w, p.b.String())
	return err
}

// page is what is written so far.
type page struct {
	Options
	*signs
	b strings.Builder
}

// line writes a line without the blanks at its end.
func (p *page) line(text string) {
	p.b.WriteString(strings.TrimRight(text, " "))
	p.b.WriteByte('\n')
}

// paragraph writes a text in as many lines as it needs.
func (p *page) paragraph(text string, attribute string) {
	if text == "" {
		return
	}
	for _, line := range words.Wrap(p.said(text), p.columns()) {
		p.line(p.paint(attribute, p.clip(line, p.columns())))
	}
}

func (p *page) head(title, sub string) {
	p.paragraph(title, bold)
	p.paragraph(sub, "")
}

func (p *page) notes(list []string) {
	for _, n := range list {
		p.paragraph(n, faint)
	}
}
