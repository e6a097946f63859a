package term

import (
	"slices"
	"strings"

	"github.com/rivo/uniseg"

	"maltwright/cmd/chart"
	"maltwright/lang/quantity"
)

// letters tell lines apart without colour.
const letters = "abcdefghijklmnopqrstuvwxyz"

// letterOf is that of a line.
func letterOf(line int) string { return string(letters[line%len(letters)]) }

// letterEvery is how many columns lie between two letters of one line.
const letterEvery = 24

// letter writes the letter of each line on it, where no other runs.
func (p *plot) letter() {
	n := len(p.panel.Lines)
	for i, l := range p.panel.Lines {
		ink, last := inkOf(l.Role), -letterEvery
		offset := i * letterEvery / n
		free := p.freeOf(i)
		for _, c := range free {
			if c.column >= last+letterEvery && c.column%letterEvery >= offset {
				p.speak(c.column, c.row, letterOf(i), ink)
				last = c.column - c.column%letterEvery + offset
			}
		}
		if last < 0 && len(free) > 0 {
			free = free[len(free)/2:]
		} else if last < 0 {
			free = p.passing(i)
		}
		if last < 0 && len(free) > 0 {
			p.speak(free[0].column, free[0].row, letterOf(i), ink)
		}
	}
}

// place is a cell by its column and row.
type place struct{ column, row int }

// freeOf lists the cells in which a line runs alone, and nothing is written.
func (p *plot) freeOf(line int) (list []place) {
	for column := range p.width {
		for row := range p.height {
			if x := p.at(column, row); x.lines == 1<<(line%64) && x.sign == "" {
				list = append(list, place{column, row})
				break
			}
		}
	}
	return list
}

// passing lists the cells through which a line runs with others.
func (p *plot) passing(line int) (list []place) {
	for column := range p.width {
		for row := range p.height {
			if x := p.at(column, row); x.lines&(1<<(line%64)) != 0 && x.sign == "" {
				list = append(list, place{column, row})
			}
		}
	}
	return list
}

// gateSpan is the columns of a gate, from the first to the one behind the last.
func (p *plot) gateSpan(g chart.Gate) (from, to int) {
	if g.From == 0 && g.To == 0 {
		return 0, p.width
	}
	from = max(0, p.column(max(g.From, p.times.from)))
	return from, min(p.width, max(from, p.column(min(g.To, p.times.to)))+1)
}

// gateRow draws a gate as a row of short strokes, at the height of its value.
func (p *plot) gateRow(g chart.Gate) {
	from, to := p.gateSpan(g)
	y := p.values.dot(g.Value)
	for column := from; column < to; column++ {
		if (column-from)%2 == 1 {
			continue
		}
		for k := range p.across {
			if c, bit := p.dot(column*p.across+k, y); c != nil && c.sign == "" {
				c.gate |= bit
			}
		}
	}
}

// gateWords writes what a gate asks beside its row, on a free stretch of that row or of one next to it. Where
// there is none, the legend says it.
func (p *plot) gateWords(g chart.Gate) {
	text := p.said(strings.TrimPrefix(g.Name, p.panel.Name+" ")) // the heading says of what
	wide := uniseg.StringWidth(text)
	from, to := p.gateSpan(g)
	row := p.values.row(g.Value)
	for _, r := range []int{row, row - 1, row + 1} {
		starts := []int{from - wide - 1, to + 1, from, to - wide}
		if r != row {
			starts = []int{to - wide, from, (from + to - wide) / 2, p.width - wide}
		}
		for _, column := range starts {
			if text != "" && p.free(column, r, wide, r == row) {
				p.speak(column, r, text, faint)
				return
			}
		}
	}
	if text != "" {
		value := quantity.Fixed(g.Value, p.panel.Places)
		if !strings.Contains(text, strings.TrimSuffix(value, ".0")) {
			text += " (" + amount(value, p.panel.Unit) + ")"
		}
		if last := len(p.legend) - 1; last >= 0 && p.legend[last].sign == p.gate {
			p.legend[last].text += ", " + text
			return
		}
		p.enter(p.gate, faint, text)
	}
}

// free tells whether so many cells, and one on either side, hold nothing; dots of gates do not count on
// the row of the gate itself.
func (p *plot) free(column, row, wide int, gates bool) bool {
	if !p.within(column, row) || column+wide > p.width {
		return false
	}
	for c := max(0, column-1); c < min(p.width, column+wide+1); c++ {
		x := p.at(c, row)
		inside := c >= column && c < column+wide
		if x.spoken || inside && (x.band|x.line != 0 || x.sign != "" || x.gate != 0 && !gates) {
			return false
		}
	}
	return true
}

// entry is one of the legend.
type entry struct{ sign, ink, text string }

// enter adds one to the legend, once.
func (p *plot) enter(sign, ink, text string) {
	e := entry{sign, ink, p.said(text)}
	if !slices.Contains(p.legend, e) {
		p.legend = append(p.legend, e)
	}
}

// far tells of a reading that lies outside of the axis.
func (p *plot) far(x chart.Point) string {
	return "in doubt, beyond the axis: " + amount(quantity.Fixed(x.Value, p.panel.Places), p.panel.Unit)
}

// named puts the names of lines and bands in front of the legend.
func (p *plot) named() {
	var list []entry
	for i, l := range p.panel.Lines {
		sign := p.signs.course
		if p.lettered {
			sign = letterOf(i)
		}
		if l.Name != "" && (p.lettered || l.Name != p.panel.Name || len(p.panel.Bands)+len(p.panel.Points) > 0) {
			list = append(list, entry{sign, inkOf(l.Role), p.said(l.Name)})
		}
	}
	for _, b := range p.panel.Bands {
		if b.Name != "" {
			list = append(list, entry{p.dots, faint, p.said(b.Name)})
		}
	}
	for _, e := range p.legend { // readings of a line stand behind its letter
		if i := slices.IndexFunc(list, func(l entry) bool { return p.lettered && l.text == e.text && l.ink == e.ink }); i >= 0 {
			list[i].sign += " " + e.sign
			continue
		}
		list = append(list, e)
	}
	p.legend = list
}

// amount is a number with its unit, where it has one.
func amount(number, unit string) string {
	if unit == "" {
		return number
	}
	return number + " " + unit
}
