package onpaper

import (
	"maltwright/cmd/sheet"
	"maltwright/cmd/write/pdf"
)

// block draws a block from where the drawer is.
func (d *drawer) block(b sheet.Block) {
	switch b := b.(type) {
	case sheet.Head:
		d.head(b)
	case sheet.Heading:
		d.para(left, d.size.Body(), b.Text, head)
	case sheet.Words:
		d.para(left, d.size.Body(), b.Text, print(b.Small))
	case sheet.Sums:
		d.sums(b)
	case sheet.Visit:
		d.visit(b)
	case sheet.Readings:
		d.readings(b)
	case sheet.SpareRows:
		d.spares(b)
	case sheet.Drawing:
		d.drawing(b)
	case sheet.Tally:
		d.tally(b)
	case sheet.Ticks:
		d.ticks(b)
	case sheet.Gate:
		d.gate(b)
	case sheet.SampleSum:
		d.sample(b)
	case sheet.Remarks:
		d.remarks(b)
	case sheet.Initials:
		d.initials(b)
	case sheet.Cautions:
		d.cautions(b)
	case sheet.GoesWrong:
		d.wrong(b)
	case sheet.Code:
		d.para(left, d.size.Body(), b.Say, fine)
		d.para(left, d.size.Body(), b.Line, bold)
	}
}

func print(small bool) pdf.Font {
	if small {
		return fine
	}
	return body
}

// rows draws rows below each other; each says how tall it is.
func rows[T any](d *drawer, list []T, draw func(T) (tall float64)) {
	for _, r := range list {
		d.y += draw(r)
	}
}

func (d *drawer) head(b sheet.Head) {
	rows(d, b.Rows(), func(row []sheet.Field) float64 {
		x, tall := left, 0.0
		for _, f := range row {
			wide := d.size.FieldWide()
			if f.Wide {
				wide = d.size.Body()
			}
			y := d.y
			if f.Text == "" {
				d.Line(pdf.XY{X: x + sheet.LabelWide, Y: y + sheet.RowTall - 1}, pdf.XY{X: x + wide - 1, Y: y + sheet.RowTall - 1}, rule)
				tall = max(tall, sheet.RowTall)
			}
			// the label stands on the line of its text
			d.y += base(body, sheet.BodyLine) - base(fine, sheet.FineLine)
			label := d.beside(x, sheet.LabelWide, f.Label, fine)
			d.y = y
			tall = max(tall, label, d.beside(x+sheet.LabelWide, wide-sheet.LabelWide, f.Text, bold))
			x += wide + sheet.Gap
		}
		return tall + 1
	})
}

func (d *drawer) sums(b sheet.Sums) {
	rows(d, b.Rows, func(r sheet.Sum) float64 {
		label := d.beside(left, sheet.SumWide, r.Label, body)
		working := d.beside(left+sheet.SumWide, d.size.Body()-sheet.SumWide-sheet.ResultWide, r.Working, body)
		strength := body
		if r.Strong {
			strength = bold
		}
		return 1 + max(label, working, d.beside(left+d.size.Body()-sheet.ResultWide, sheet.ResultWide, r.Result, strength))
	})
}

func (d *drawer) readings(b sheet.Readings) {
	rows(d, b.Rows, func(r sheet.Reading) float64 {
		return 1 + max(d.beside(left, sheet.ReadWide, r.When, body), d.beside(left+sheet.ReadWide, d.size.Body()-sheet.ReadWide, r.Line, body))
	})
}

func (d *drawer) cautions(b sheet.Cautions) {
	d.title(b.Title)
	d.y++
	for _, l := range b.Lines {
		if l == "" {
			continue
		}
		d.Text(pdf.XY{X: left + 1, Y: d.y + base(bold, sheet.BodyLine)}, "·", bold, pdf.Left)
		d.para(left+sheet.Indent, d.size.Body()-sheet.Indent, l, body)
	}
}

func (d *drawer) wrong(b sheet.GoesWrong) {
	d.title(b.Title)
	d.y++
	rows(d, b.Rows, func(r sheet.Wrong) float64 {
		d.Line(pdf.XY{X: left, Y: d.y}, pdf.XY{X: left + d.size.Body(), Y: d.y}, rule)
		d.y += 0.5
		return max(d.beside(left, sheet.WrongWide, r.What, bold), d.beside(left+sheet.WrongWide+sheet.Gap, d.size.Body()-sheet.WrongWide-sheet.Gap, r.Do, body)) + 0.5
	})
	d.para(left, d.size.Body(), b.Small, fine)
}

func (d *drawer) remarks(b sheet.Remarks) {
	d.para(left, d.size.Body(), "remarks", fine)
	for range b.Lines {
		d.y += sheet.RowTall
		d.Line(pdf.XY{X: left, Y: d.y - 1}, pdf.XY{X: left + d.size.Body(), Y: d.y - 1}, rule)
	}
}
