package onpaper

import (
	"io"

	"maltwright/cmd/chart"
	"maltwright/cmd/write/pdf"
)

// Laid is what can be laid out: a chart, or bars.
type Laid interface {
	Lay(chart.Options, chart.Measure) *chart.Drawing
}

// Letters of charts are so large on paper, points.
const letters = 9.0

// Figure is a chart that has found its size.
type Figure struct {
	drawing    *chart.Drawing
	px         float64 // mm
	Wide, Tall float64 // mm
}

// Lay lays a chart out to be so many mm wide on a paper, and its panels so many mm tall; as tall as
// suits the width where that is 0.
func Lay(p *pdf.Paper, c Laid, wide, panel float64) Figure {
	const least = 12 // px, the size of letters that a chart is laid out with
	px := letters * pdf.Point / least
	d := c.Lay(chart.Options{Width: wide / px, Panel: panel / px}, canvas{paper: p, px: px})
	px = wide / d.Width // a chart has a least width
	return Figure{drawing: d, px: px, Wide: wide, Tall: d.Height * px}
}

// Draw draws it on the page that is under way, its upper left corner at a place.
func (f Figure) Draw(p *pdf.Paper, at pdf.XY) {
	f.drawing.Draw(canvas{paper: p, at: at, px: f.px})
}

// Options say what paper a chart of its own stands on.
type Options struct{ Wide, Tall float64 } // mm; A4, the long side across, where they are 0

const (
	margin = 12.0 // mm, at all sides
	long   = 297.0
	short  = 210.0
)

// Write writes charts, a page each, as large as they fit. What it returns says which letters the
// fonts lack; "" where none is.
func Write[L Laid](w io.Writer, charts []L, o Options) (lost string, err error) {
	if o.Wide <= 0 || o.Tall <= 0 {
		o.Wide, o.Tall = long, short
	}
	title := "Charts"
	if len(charts) == 1 {
		title = charts[0].Lay(chart.Options{}, chart.Sans{}).Title
	}
	p := pdf.New(pdf.Options{Wide: o.Wide, Tall: o.Tall, Title: title})
	for _, c := range charts {
		p.Page()
		Lay(p, c, o.Wide-2*margin, 0).Within(o.Tall-2*margin).Draw(p, pdf.XY{X: margin, Y: margin})
	}
	if err := p.Write(w); err != nil {
		return "", err
	}
	return p.Lost(), nil
}

// Within is the figure made smaller where it is taller than so many mm.
func (f Figure) Within(tall float64) Figure {
	if f.Tall > tall {
		share := tall / f.Tall
		f.px, f.Wide, f.Tall = f.px*share, f.Wide*share, tall
	}
	return f
}
