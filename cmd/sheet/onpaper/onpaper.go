// Package onpaper writes a sheet as a PDF: black on white, for the printer at home, by the
// measures of the form of cmd/sheet, so that each page holds what that says it holds.
package onpaper

import (
	"fmt"
	"io"

	"maltwright/cmd/sheet"
	"maltwright/cmd/write/pdf"
)

// Write writes a sheet. What it returns says which letters the fonts lack; "" where none is.
func Write(w io.Writer, s sheet.Sheet) (lost string, err error) {
	p := draw(s)
	if err := p.Write(w); err != nil {
		return "", err
	}
	return p.Lost(), nil
}

func draw(s sheet.Sheet) *pdf.Paper {
	p := pdf.New(pdf.Options{Wide: s.Size.Wide, Tall: s.Size.Tall, Title: s.Title, Foot: func(p *pdf.Paper, page, of int) { foot(p, s, page) }})
	for i, page := range s.Pages {
		p.Page()
		d := drawer{Paper: p, size: s.Size}
		d.top(s.Batch, page.Of, fmt.Sprintf("page %d of %d", i+1, len(s.Pages)))
		d.all(page.Blocks)
	}
	return p
}

// all draws the blocks of a page. Texts end where they end, which is above where the form
// has room for them; remarks and initials stand at the foot of the page.
func (d *drawer) all(list []sheet.Block) {
	n, tall := len(list), 0.0
	for n > 0 && atFoot(list[n-1]) {
		n--
		tall += list[n].Tall(d.size) + sheet.Gap
	}
	for i, b := range list {
		if i == n {
			d.y = max(d.y, d.size.Tall-sheet.Margin-sheet.FootTall-tall)
		}
		end := d.y + b.Tall(d.size)
		if d.block(b); !isText(b) {
			d.y = end
		}
		d.y += sheet.Gap
	}
}

func atFoot(b sheet.Block) bool {
	switch b.(type) {
	case sheet.Remarks, sheet.Initials:
		return true
	}
	return false
}

// isText tells of what is drawn from above down without boxes.
func isText(b sheet.Block) bool {
	switch b.(type) {
	case sheet.Head, sheet.Heading, sheet.Words, sheet.Sums, sheet.Readings, sheet.Cautions, sheet.GoesWrong, sheet.Code:
		return true
	}
	return false
}

// drawer draws the blocks of a page from above down.
type drawer struct {
	*pdf.Paper
	size sheet.Size
	y    float64 // where the next line begins, mm from above
}

var (
	body = pdf.Font{Size: sheet.BodyPoints}
	bold = pdf.Font{Size: sheet.BodyPoints, Bold: true}
	fine = pdf.Font{Size: sheet.FinePoints}
	head = pdf.Font{Size: sheet.HeadPoints, Bold: true}
	// what is read from afar: the clock, the name of the batch, a value that was read
	large = pdf.Font{Size: 16, Bold: true}
)

// Lines of the form, thick enough to be seen through drops.
var (
	frame = pdf.Pen{Thick: 0.4}
	rule  = pdf.Pen{Thick: 0.2}
)

const left = sheet.Margin

// top is the line at the top of a page.
func (d *drawer) top(batch, of, number string) {
	const line = sheet.Margin + 5
	right := d.size.Wide - sheet.Margin
	d.Text(pdf.XY{X: right, Y: line}, number, bold, pdf.Right)
	half := d.size.Body() / 2
	d.Text(pdf.XY{X: left, Y: line}, d.Fit(batch, large, half), large, pdf.Left)
	room := d.size.Body() - half - d.Width(number, bold) - 2*sheet.Gap
	d.Text(pdf.XY{X: left + half + sheet.Gap, Y: line}, d.Fit(of, head, room), head, pdf.Left)
	d.Line(pdf.XY{X: left, Y: line + 2}, pdf.XY{X: right, Y: line + 2}, frame)
	d.y = pageTop
}

// pageTop is where the first block of a page begins.
const pageTop = sheet.Margin + sheet.HeadTall

// foot is the line at the bottom: how note finds the batch, or what a box stands for.
func foot(p *pdf.Paper, s sheet.Sheet, page int) {
	text := s.Title
	if s.Code != "" {
		text = "at the computer: " + s.Code + " …"
	}
	if p.Lacking(page) {
		text = "maltwright sheet --format html has all letters. " + p.Note()
	}
	p.Text(pdf.XY{X: left, Y: s.Size.Tall - sheet.Margin - 1}, p.Fit(text, fine, s.Size.Body()), fine, pdf.Left)
}

// leading is from one line to the next, as the form has it.
func leading(f pdf.Font) float64 {
	switch f.Size {
	case sheet.FinePoints:
		return sheet.FineLine
	case sheet.HeadPoints:
		return sheet.HeadLine
	}
	return sheet.BodyLine
}

// clear is what is left free between a text and what stands behind it, mm.
const clear = 1.0

// para writes a text in lines from x on, and goes below them. They are no more than the form
// says: letters that are wider than those of text in the mean are written smaller.
func (d *drawer) para(x, wide float64, text string, f pdf.Font) {
	if text == "" {
		return
	}
	step, most := leading(f), sheet.Lines(text, wide, f.Size)
	wide -= clear
	lines := d.Wrap(text, f, wide)
	for least := 0.6 * f.Size; len(lines) > most && f.Size > least; {
		f.Size *= 0.97
		lines = d.Wrap(text, f, wide)
	}
	if len(lines) > most {
		lines[most-1] = d.Fit(lines[most-1]+" "+lines[most], f, wide)
		lines = lines[:most]
	}
	for i, l := range lines {
		d.Text(pdf.XY{X: x, Y: d.y + step*float64(i) + base(f, step)}, l, f, pdf.Left)
	}
	d.y += step * float64(len(lines))
}

// line writes a text in one line, cut where it is too long, and goes below it.
func (d *drawer) line(x, wide float64, text string, f pdf.Font) {
	d.Text(pdf.XY{X: x, Y: d.y + base(f, leading(f))}, d.Fit(text, f, wide), f, pdf.Left)
	d.y += leading(f)
}

// title writes the line that stands over a block.
func (d *drawer) title(text string) { d.line(left, d.size.Body(), text, bold) }

// base is how far below the top of a line its letters stand: capitals in its middle.
func base(f pdf.Font, line float64) float64 { return (line + f.Rise()) / 2 }

// beside writes a text as para does, and stays where it was. It says how tall the text is.
func (d *drawer) beside(x, wide float64, text string, f pdf.Font) (tall float64) {
	y := d.y
	d.para(x, wide, text, f)
	tall, d.y = d.y-y, y
	return tall
}
