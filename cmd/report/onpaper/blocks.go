package onpaper

import (
	chartpaper "maltwright/cmd/chart/onpaper"
	"maltwright/cmd/report"
	"maltwright/cmd/words"
	"maltwright/cmd/write/pdf"
)

func (f *flow) block(b report.Block) {
	switch b := b.(type) {
	case report.Facts:
		f.facts(b)
	case report.Table:
		f.table(b)
	case report.Text:
		f.head(b.Head)
		for _, l := range b.Lines {
			f.line(l, b.List)
		}
	case report.Figure:
		f.figure(b)
	case report.Found:
		f.found(b)
	}
}

// line writes a paragraph, or an item of a list.
func (f *flow) line(text string, item bool) {
	if !item {
		f.text(text, fonts.body)
		f.y++
		return
	}
	const in = 4.0
	if text == "" {
		return
	}
	f.need(leading(fonts.body))
	f.Text(pdf.XY{X: margin, Y: f.y + 0.7*leading(fonts.body)}, "–", fonts.body, pdf.Left)
	f.within(in, text, fonts.body)
}

// nameWide is how wide the column of the names of facts is at the most, mm.
const nameWide = 45.0

func (f *flow) facts(b report.Facts) {
	f.head(b.Head)
	name, standing := 0.0, 0.0
	for _, x := range b.List {
		name, standing = max(name, f.Width(x.Name, fonts.cell)), max(standing, f.Width(x.Standing, fonts.cell))
	}
	name, standing = min(name+0.1, nameWide), min(standing+0.1, nameWide)
	value := f.wide() - name - standing - 2*columnGap
	columns := []column{{x: margin, wide: name}, {x: margin + name + columnGap, wide: value}, {x: margin + f.wide() - standing, wide: standing}}
	for _, x := range b.List {
		f.row(columns, f.cells(columns, []string{x.Name, x.Value, x.Standing}, fonts.cell), fonts.cell)
	}
}

// panelTall is how tall the panels of charts are, mm: two charts fit a page.
const panelTall = 44.0

func (f *flow) figure(b report.Figure) {
	figure := chartpaper.Lay(f.Paper, b.Chart, f.wide(), panelTall).Within(f.bottom - margin)
	f.gap(3)
	f.need(figure.Tall)
	figure.Draw(f.Paper, pdf.XY{X: margin, Y: f.y})
	f.y += figure.Tall
}

func (f *flow) found(b report.Found) {
	f.head(b.Head)
	for _, x := range b.List {
		f.line(words.Joined(". ", x.Severity+": "+x.Text, x.Do)+" ["+x.Rule+"]", true)
	}
	if len(b.List) == 0 {
		f.text(b.None, fonts.body)
	}
}
