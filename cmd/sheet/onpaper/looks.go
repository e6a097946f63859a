package onpaper

import (
	"maltwright/cmd/sheet"
	"maltwright/cmd/write/pdf"
)

// picture draws a look in the middle of a place, as large as it fits.
func (d *drawer) picture(at pdf.XY, wide, tall float64, drawn sheet.Drawn) {
	p := drawn.Picture()
	scale := min(tall, wide/p.Wide)
	at.X += (wide - scale*p.Wide) / 2
	at.Y += (tall - scale) / 2
	for _, s := range p.Strokes {
		dots := make([]pdf.XY, len(s.Dots))
		for i, dot := range s.Dots {
			dots[i] = pdf.XY{X: at.X + scale*dot.X, Y: at.Y + scale*dot.Y}
		}
		d.Draw(pdf.Path{Dots: dots, Curved: s.Curved, Closed: s.Closed}, pdf.Pen{Thick: s.Thick * scale}, inks[s.Ink])
	}
}

var inks = map[sheet.Ink]pdf.Fill{sheet.White: pdf.Solid(pdf.White), sheet.Black: pdf.Solid(pdf.RGB{})}

func (d *drawer) drawing(b sheet.Drawing) {
	d.para(left, d.size.Body(), b.Say, fine)
	if len(b.Shown) == 0 {
		return
	}
	each := d.size.Body() / float64(len(b.Shown))
	for i, s := range b.Shown {
		x := left + each*float64(i)
		d.picture(pdf.XY{X: x + 1, Y: d.y}, each-2, sheet.LookTall, s)
		d.Text(pdf.XY{X: x + each/2, Y: d.y + sheet.LookTall + base(body, sheet.BodyLine)}, d.Fit(s.Name, body, each), body, pdf.Middle)
	}
}

// five is how many boxes to tick stand together.
const five = 5

func (d *drawer) tally(b sheet.Tally) {
	d.title(b.Title)
	d.para(left, d.size.Body(), b.Say, fine)
	for _, c := range b.Classes {
		d.Text(pdf.XY{X: left, Y: d.y + base(body, sheet.BodyLine)}, d.Fit(c.Name, body, sheet.NameWide), body, pdf.Left)
		d.picture(pdf.XY{X: left, Y: d.y + sheet.BodyLine}, sheet.NameWide*0.6, sheet.BoxTall-sheet.BodyLine, c)
		x := left + sheet.NameWide
		for i := range b.Ticks {
			if i > 0 && i%five == 0 {
				x++
			}
			d.Box(pdf.XY{X: x, Y: d.y}, sheet.TickWide, sheet.BoxTall, frame, pdf.Fill{})
			x += sheet.TickWide
		}
		if x += sheet.Gap; x < left+d.size.Body() { // the sum
			d.Box(pdf.XY{X: x, Y: d.y}, left+d.size.Body()-x, sheet.BoxTall, frame, pdf.Fill{})
		}
		d.y += sheet.BoxTall + 1
	}
	d.para(left, d.size.Body(), b.Line, body)
}

func (d *drawer) ticks(b sheet.Ticks) {
	d.title(b.Title)
	d.para(left, d.size.Body(), b.Say, fine)
	if len(b.Answers) == 0 {
		return
	}
	right := left + d.size.Body()
	each := (d.size.Body() - sheet.TimeWide - sheet.Gap) / float64(len(b.Answers))
	for range b.Rows {
		for i, a := range b.Answers {
			x := left + each*float64(i)
			d.Box(pdf.XY{X: x, Y: d.y}, sheet.BoxTall, sheet.BoxTall, frame, pdf.Fill{})
			d.Text(pdf.XY{X: x + sheet.BoxTall + 2, Y: d.y + base(body, sheet.BoxTall)}, d.Fit(a, body, each-sheet.BoxTall-3), body, pdf.Left)
		}
		d.Box(pdf.XY{X: right - sheet.TimeWide, Y: d.y}, sheet.TimeWide, sheet.BoxTall, frame, pdf.Fill{})
		d.Text(pdf.XY{X: right - sheet.TimeWide + 1, Y: d.y + base(fine, sheet.FineLine)}, "time", fine, pdf.Left)
		d.y += sheet.BoxTall + 2
	}
}
