package onpaper

import (
	"maltwright/cmd/sheet"
	"maltwright/cmd/write/pdf"
)

// box draws a box to write into, from the top of its label on.
func (d *drawer) box(x, wide float64, b sheet.Box) {
	d.Text(pdf.XY{X: x, Y: d.y + base(fine, sheet.BoxLabel)}, d.Fit(b.Label, fine, wide), fine, pdf.Left)
	y := d.y + sheet.BoxLabel
	d.Box(pdf.XY{X: x, Y: y}, wide, sheet.BoxTall, frame, pdf.Fill{})
	unit := d.Fit(b.Unit, body, wide/2)
	d.Text(pdf.XY{X: x + wide - 1.5, Y: y + sheet.BoxTall - 2.5}, unit, body, pdf.Right)
	room := wide - d.Width(unit, body) - 4
	d.Text(pdf.XY{X: x + 1.5, Y: y + base(large, sheet.BoxTall)}, d.Fit(b.Filled, large, room), large, pdf.Left)
}

// beyond draws boxes at the right: as many values in a line as the form says, the time
// behind them, the other values below.
func (d *drawer) beyond(boxes []sheet.Box) {
	if len(boxes) == 0 {
		return
	}
	right := left + d.size.Body()
	y, n, last := d.y, sheet.Across(boxes), len(boxes)-1
	d.box(right-sheet.TimeWide, sheet.TimeWide, boxes[last])
	first := right - sheet.TimeWide - float64(n)*(sheet.BoxWide+sheet.Gap)
	for i, b := range boxes[:last] {
		d.y = y + float64(i/n)*(sheet.BoxLabel+sheet.BoxTall)
		d.box(first+float64(i%n)*(sheet.BoxWide+sheet.Gap), sheet.BoxWide, b)
	}
	d.y = y
}

// across draws boxes beside each other, equally wide.
func (d *drawer) across(boxes []sheet.Box, places int) {
	wide := (d.size.Body() - float64(places-1)*sheet.Gap) / float64(places)
	for i, b := range boxes {
		d.box(left+float64(i%places)*(wide+sheet.Gap), wide, b)
		if i%places == places-1 || i == len(boxes)-1 {
			d.y += sheet.BoxLabel + sheet.BoxTall
		}
	}
}

func (d *drawer) visit(b sheet.Visit) {
	d.above()
	y := d.y
	d.when(b.When)
	d.y = y
	d.beyond(b.Boxes)
	x, wide := left+sheet.WhenWide+sheet.Gap, d.size.DoWide(sheet.Across(b.Boxes))
	for _, do := range b.Do {
		d.para(x, wide, do, body)
	}
	for _, e := range b.Expect {
		d.para(x, wide, e, fine)
	}
}

// above draws the line above a visit; at the top of a page there is one.
func (d *drawer) above() {
	if d.y > pageTop {
		d.Line(pdf.XY{X: left, Y: d.y}, pdf.XY{X: left + d.size.Body(), Y: d.y}, rule)
	}
	d.y += sheet.Rule
}

// clockLine is how tall the line of the clock is, whose letters are large.
const clockLine = 6.8

func (d *drawer) when(w sheet.When) {
	strong := fine
	strong.Bold = true
	mark := d.Fit(w.Mark, strong, sheet.WhenWide/2)
	if w.Clock == "" {
		d.y += sheet.RowTall
		d.Line(pdf.XY{X: left, Y: d.y - 1}, pdf.XY{X: left + sheet.WhenWide, Y: d.y - 1}, rule)
		d.line(left, sheet.WhenWide, w.After, fine)
		d.line(left, sheet.WhenWide, mark, strong)
		return
	}
	d.line(left, sheet.WhenWide, w.Day, body)
	at := d.y + base(large, clockLine)
	d.Text(pdf.XY{X: left + sheet.WhenWide - clear, Y: at}, mark, strong, pdf.Right)
	d.Text(pdf.XY{X: left, Y: at}, d.Fit(w.Clock, large, sheet.WhenWide-d.Width(mark, strong)-clear), large, pdf.Left)
	d.y += clockLine
	d.line(left, sheet.WhenWide, w.After, fine)
}

func (d *drawer) gate(b sheet.Gate) {
	d.above()
	d.beyond(b.Boxes)
	wide := d.size.DoWide(sheet.Across(b.Boxes)) + sheet.WhenWide + sheet.Gap
	d.para(left, wide, b.Asks, bold)
	for _, l := range b.Looks {
		d.para(left, wide, l, fine)
	}
}

func (d *drawer) spares(b sheet.SpareRows) {
	n := len(b.Boxes)
	if n == 0 {
		return
	}
	first := d.size.Body() - sheet.TimeWide - sheet.BoxWide - 2*sheet.Gap
	for range b.Count {
		d.beyond(b.Boxes[max(0, n-2):])
		if n > 2 {
			each := (first - float64(n-3)*sheet.Gap) / float64(n-2)
			for i, box := range b.Boxes[:n-2] {
				d.box(left+float64(i)*(each+sheet.Gap), each, box)
			}
		}
		d.y += sheet.BoxLabel + sheet.BoxTall + sheet.Rule
	}
}

func (d *drawer) sample(b sheet.SampleSum) {
	d.title(b.Title)
	for _, s := range b.Steps {
		d.para(left, d.size.Body()-sheet.Gap, s, body)
	}
	d.across(b.Boxes, 4)
	d.y++
	d.para(left, d.size.Body(), b.Sum, body)
	d.para(left, d.size.Body(), b.Line, body)
}

func (d *drawer) initials(b sheet.Initials) {
	const label = "initials"
	line := d.y + sheet.RowTall - 1
	d.Text(pdf.XY{X: left, Y: line}, label, fine, pdf.Left)
	from := d.Width(label, fine) + 2*sheet.Gap
	each := (d.size.Body() - from) / float64(max(1, b.Count))
	for i := range b.Count {
		x := left + from + each*float64(i)
		d.Line(pdf.XY{X: x, Y: line}, pdf.XY{X: x + each - 2*sheet.Gap, Y: line}, rule)
	}
}
