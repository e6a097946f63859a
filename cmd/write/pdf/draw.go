package pdf

import (
	"math"
)

// Pen is how a line is drawn; without thickness it is not.
type Pen struct {
	Ink   RGB
	Thick float64   // mm
	Dash  []float64 // lengths drawn and left out in turn, mm; nil where it is whole
}

// Fill is what becomes of an area.
type Fill struct {
	Ink   RGB
	Share float64 // how much of it covers what lies below, 0 to 1; 0 leaves the area as it is
}

// Solid covers what lies below.
func Solid(ink RGB) Fill { return Fill{Ink: ink, Share: 1} }

// Path is a line on a page.
type Path struct {
	Dots   []XY
	Curved bool // Dots are a start and then three for each cubic Bézier: two that it leans to and its end
	Closed bool
}

// Draw draws a line, and fills what it goes around. A line with a place that is none is left out.
func (p *Paper) Draw(path Path, pen Pen, fill Fill) {
	style := drawn(pen, fill)
	if len(path.Dots) < 2 || style == "" || path.Curved && len(path.Dots)%3 != 1 {
		return
	}
	for _, d := range path.Dots {
		if !finite(d.X, d.Y) {
			return
		}
	}
	p.with(pen, fill)
	p.file.MoveTo(path.Dots[0].X, path.Dots[0].Y)
	if path.Curved {
		for d := path.Dots[1:]; len(d) > 0; d = d[3:] {
			p.file.CurveBezierCubicTo(d[0].X, d[0].Y, d[1].X, d[1].Y, d[2].X, d[2].Y)
		}
	} else {
		for _, d := range path.Dots[1:] {
			p.file.LineTo(d.X, d.Y)
		}
	}
	if path.Closed {
		p.file.ClosePath()
	}
	p.file.DrawPath(style)
	p.without(pen, fill)
}

// Line draws a straight one.
func (p *Paper) Line(from, to XY, pen Pen) { p.Draw(Path{Dots: []XY{from, to}}, pen, Fill{}) }

// Box draws an upright rectangle.
func (p *Paper) Box(at XY, wide, tall float64, pen Pen, fill Fill) {
	p.Draw(Path{Closed: true, Dots: []XY{at, {at.X + wide, at.Y}, {at.X + wide, at.Y + tall}, {at.X, at.Y + tall}}}, pen, fill)
}

// Circle draws one about a place.
func (p *Paper) Circle(middle XY, radius float64, pen Pen, fill Fill) {
	style := drawn(pen, fill)
	if style == "" || !finite(middle.X, middle.Y, radius) {
		return
	}
	p.with(pen, fill)
	p.file.Circle(middle.X, middle.Y, radius, style)
	p.without(pen, fill)
}

func drawn(pen Pen, fill Fill) (style string) {
	if fill.Share > 0 {
		style = "F"
	}
	if pen.Thick > 0 {
		style += "D"
	}
	return style
}

// with sets all that a line or an area depends on, so that nothing depends on what was drawn before.
func (p *Paper) with(pen Pen, fill Fill) {
	p.file.SetDrawColor(int(pen.Ink.R), int(pen.Ink.G), int(pen.Ink.B))
	p.file.SetFillColor(int(fill.Ink.R), int(fill.Ink.G), int(fill.Ink.B))
	p.file.SetLineWidth(pen.Thick)
	if pen.Dash != nil {
		p.file.SetDashPattern(pen.Dash, 0)
	}
	if through(fill) {
		p.file.SetAlpha(math.Min(fill.Share, 1), "Normal")
	}
}

func (p *Paper) without(pen Pen, fill Fill) {
	if pen.Dash != nil {
		p.file.SetDashPattern(nil, 0)
	}
	if through(fill) {
		p.file.SetAlpha(1, "Normal")
	}
}

func through(f Fill) bool { return f.Share > 0 && f.Share < 1 }

func finite(list ...float64) bool {
	for _, x := range list {
		if math.IsNaN(x) || math.IsInf(x, 0) {
			return false
		}
	}
	return true
}
