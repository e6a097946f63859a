package term

import (
	"io"
	"math"
	"strings"

	"github.com/rivo/uniseg"

	"maltwright/cmd/chart"
	"maltwright/cmd/words"
	"maltwright/lang/quantity"
)

// WriteBars writes lengths beside names.
func WriteBars(w io.Writer, c chart.Bars, o Options) error {
	p := &page{Options: o, signs: o.signs()}
	p.head(c.Title, c.Sub)
	for _, g := range c.Groups {
		p.group(g)
	}
	p.notes(c.Note)
	_, err := io.WriteString(w, p.b.String())
	return err
}

// group writes the bars of one quantity. What is below nothing grows to the left.
func (p *page) group(g chart.BarGroup) {
	p.paragraph(words.Joined(", ", g.Name, g.Unit), bold)
	names, texts := make([]string, len(g.Bars)), make([]string, len(g.Bars))
	name, text, low, high := 0, 0, 0.0, g.Most
	for i, b := range g.Bars {
		names[i] = p.said(b.Name)
		if texts[i] = p.said(b.Text); b.Text == "" {
			texts[i] = p.said(amount(quantity.Fixed(b.Value, g.Places), g.Unit))
		}
		texts[i] = p.clip(texts[i], p.columns()/3)
		name, text = max(name, uniseg.StringWidth(names[i])), max(text, uniseg.StringWidth(texts[i]))
		if !math.IsNaN(b.Value) {
			low, high = min(low, b.Value), max(high, b.Value)
		}
	}
	if p.columns() < narrow || name > p.columns()-text-shortest { // names stand above their bars
		for i, b := range g.Bars {
			p.paragraph(b.Name, "")
			p.line("  " + p.barOf(b, low, high, p.columns()-text-4) + " " + texts[i])
		}
		return
	}
	for i, b := range g.Bars {
		p.line(strings.Repeat(" ", name-uniseg.StringWidth(names[i])+1) + names[i] + " " + p.barOf(b, low, high, p.columns()-name-text-4) + " " + texts[i])
	}
}

// narrow is how wide a screen is at the least that shows names beside their bars.
const narrow = 60

// shortest is how many columns are left for a bar at the least beside its name.
const shortest = 20

// barOf is a bar from nothing to its value.
func (p *page) barOf(b chart.Bar, low, high float64, room int) string {
	if !(high > low) || room < 1 {
		return p.side
	}
	cells := func(v float64) int { return int(math.Round((v - low) / (high - low) * float64(room))) }
	zero, end := cells(0), cells(0)
	if !math.IsNaN(b.Value) {
		end = cells(b.Value)
	}
	if end < zero {
		return strings.Repeat(" ", end) + p.paint(inkOf(b.Role), strings.Repeat(p.bar, zero-end)) + p.side
	}
	return strings.Repeat(" ", zero) + p.side + p.paint(inkOf(b.Role), strings.Repeat(p.bar, end-zero))
}
