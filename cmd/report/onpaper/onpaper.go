// Package onpaper writes a report as a PDF: pages to hand to a buyer or an inspector, each with what the
// report is of, what it is not, and its number.
package onpaper

import (
	"fmt"
	"io"

	"maltwright/cmd/report"
	"maltwright/cmd/write/pdf"
)

// The paper, mm: A4 of ISO 216, and the letter of ANSI/ASME Y14.1.
var (
	a4     = pdf.Options{Wide: 210, Tall: 297}
	letter = pdf.Options{Wide: 215.9, Tall: 279.4}
)

// Write writes a report. What it returns says which letters the fonts lack; "" where none is.
func Write(w io.Writer, r report.Report) (lost string, err error) {
	f, o := &flow{}, a4
	if r.Letter {
		o = letter
	}
	o.Title, o.Foot = r.Title, func(_ *pdf.Paper, page, of int) { f.foot(r.Title, page, of) }
	f.Paper = pdf.New(o)
	f.noticed(r.Notice)
	for i, page := range r.Pages {
		f.page()
		if i == 0 && r.Title != page.Title {
			f.text(r.Title, fonts.title)
		}
		f.part(page)
	}
	if len(r.Pages) == 0 {
		f.page()
		f.text(r.Title, fonts.title)
	}
	if err := f.Write(w); err != nil {
		return "", err
	}
	return f.Lost(), nil
}

func (f *flow) part(p report.Page) {
	f.text(p.Title, fonts.part)
	f.text(p.Sub, fonts.body)
	f.text(p.AsOf, fonts.strong)
	f.text(p.Doubt, fonts.strong)
	for _, b := range p.Blocks {
		f.block(b)
	}
}

const (
	margin = 14.0 // mm, at all sides
	footer = 6.0  // of the line with the number of the page
)

// fonts are those of a report.
var fonts = struct{ title, part, head, body, strong, cell, group, quiet, small pdf.Font }{
	title:  pdf.Font{Size: 18, Bold: true},
	part:   pdf.Font{Size: 14, Bold: true},
	head:   pdf.Font{Size: 11, Bold: true},
	body:   pdf.Font{Size: 10},
	strong: pdf.Font{Size: 10, Bold: true},
	cell:   pdf.Font{Size: 9},
	group:  pdf.Font{Size: 9, Bold: true},
	quiet:  pdf.Font{Size: 9, Ink: pdf.RGB{R: 0x45, G: 0x45, B: 0x45}},
	small:  pdf.Font{Size: 7.5, Ink: pdf.RGB{R: 0x45, G: 0x45, B: 0x45}},
}

// leading is from one line to the next, mm.
func leading(f pdf.Font) float64 { return 1.35 * f.Size * pdf.Point }

// noticed breaks what the report is not into the lines that stand at the foot of each page, a
// third of it at the most.
func (f *flow) noticed(notice []string) {
	for _, n := range notice {
		f.notice = append(f.notice, f.Wrap(n, fonts.small, f.wide())...)
	}
	if most := int((f.Tall/3 - footer) / leading(fonts.small)); len(f.notice) > most {
		f.notice = f.notice[:most]
	}
	f.bottom = f.Tall - margin - footer - leading(fonts.small)*float64(len(f.notice))
}

// foot writes what stands at the foot of each page.
func (f *flow) foot(title string, page, of int) {
	y, bottom, right := f.bottom, f.Tall-margin, f.Paper.Wide-margin
	f.Line(pdf.XY{X: margin, Y: y}, pdf.XY{X: right, Y: y}, pdf.Pen{Thick: 0.2})
	for _, l := range f.notice {
		y += leading(fonts.small)
		f.Text(pdf.XY{X: margin, Y: y}, l, fonts.small, pdf.Left)
	}
	number := fmt.Sprintf("page %d of %d", page, of)
	f.Text(pdf.XY{X: right, Y: bottom}, number, fonts.quiet, pdf.Right)
	if f.Lacking(page) {
		title = f.Note()
	}
	f.Text(pdf.XY{X: margin, Y: bottom}, f.Fit(title, fonts.quiet, f.wide()-f.Width(number, fonts.quiet)-5), fonts.quiet, pdf.Left)
}
