package onpaper

import (
	"maltwright/cmd/write/pdf"
)

// flow writes from above down, and goes on to a new page where one is full.
type flow struct {
	*pdf.Paper
	y      float64 // where the next line begins, mm from above
	bottom float64 // where the page is full
	notice []string
	again  func() // what a new page begins with: the heads of a table that goes on
}

// wide is that of what stands on a page, mm.
func (f *flow) wide() float64 { return f.Paper.Wide - 2*margin }

func (f *flow) page() {
	f.Page()
	f.y = margin
}

// need goes on to a new page where less than so many mm are left of this one.
func (f *flow) need(tall float64) {
	if f.y+tall <= f.bottom || f.y <= margin {
		return
	}
	f.page()
	if again := f.again; again != nil {
		f.again = nil // heads that fill a page do not stand on the next one again
		again()
		f.again = again
	}
}

// gap leaves room, but not at the top of a page.
func (f *flow) gap(mm float64) {
	if f.y > margin {
		f.y += mm
	}
}

// text writes a paragraph over the width of the page.
func (f *flow) text(text string, font pdf.Font) { f.within(0, text, font) }

// within writes a paragraph, so many mm from the left margin.
func (f *flow) within(in float64, text string, font pdf.Font) {
	for _, l := range f.Wrap(text, font, f.wide()-in) {
		f.need(leading(font))
		f.y += leading(font)
		f.Text(pdf.XY{X: margin + in, Y: f.y - 0.3*leading(font)}, l, font, pdf.Left)
	}
}

// head writes a heading, which stays with the lines below it.
func (f *flow) head(text string) {
	if text == "" {
		return
	}
	const with = 12.0
	f.need(leading(fonts.head) + with)
	f.gap(3)
	f.text(text, fonts.head)
	f.y++
}

// row writes cells beside each other, each with its lines, and a thin line below; a row
// that is taller than a page goes on on the next one.
func (f *flow) row(columns []column, cells [][]string, font pdf.Font) {
	most := 1
	for _, c := range cells {
		most = max(most, len(c))
	}
	step := leading(font)
	if tall := step * float64(most); tall < (f.bottom-margin)/2 {
		f.need(tall + rowGap)
	}
	for i := range most {
		f.need(step + rowGap)
		f.y += step
		for k, c := range cells {
			if i >= len(c) {
				continue
			}
			at, align := pdf.XY{X: columns[k].x, Y: f.y - 0.3*step}, pdf.Left
			if columns[k].right {
				at.X, align = columns[k].x+columns[k].wide, pdf.Right
			}
			f.Text(at, c[i], font, align)
		}
	}
	f.y += rowGap
	f.Line(pdf.XY{X: margin, Y: f.y}, pdf.XY{X: margin + f.wide(), Y: f.y}, pdf.Pen{Thick: 0.1, Ink: pdf.RGB{R: 0xbb, G: 0xbb, B: 0xbb}})
	f.y += rowGap
}

const (
	rowGap    = 0.5 // mm, above and below the line between two rows
	columnGap = 3.0
)
