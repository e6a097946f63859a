// Package onpaper draws charts on the paper of cmd/write/pdf, in the colours for white paper.
package onpaper

import (
	"maltwright/cmd/chart"
	"maltwright/cmd/write/pdf"
)

// canvas is a place on a page that a chart is drawn on. Its px are as long as the place makes them.
type canvas struct {
	paper *pdf.Paper
	at    pdf.XY
	px    float64 // mm
}

func (c canvas) on(p chart.XY) pdf.XY { return pdf.XY{X: c.at.X + c.px*p.X, Y: c.at.Y + c.px*p.Y} }

func (c canvas) all(list []chart.XY) []pdf.XY {
	dots := make([]pdf.XY, len(list))
	for i, p := range list {
		dots[i] = c.on(p)
	}
	return dots
}

func ink(i chart.Ink) pdf.RGB {
	rgb := chart.Print.Of(i)
	return pdf.RGB{R: rgb.R, G: rgb.G, B: rgb.B}
}

func (c canvas) pen(p chart.Pen) pdf.Pen {
	var dash []float64
	for _, d := range p.Dash {
		dash = append(dash, c.px*d)
	}
	return pdf.Pen{Ink: ink(p.Ink), Thick: c.px * p.Width, Dash: dash}
}

func fill(f chart.Fill) pdf.Fill {
	if f.Share == 0 {
		f.Share = 1
	}
	return pdf.Fill{Ink: ink(f.Ink), Share: f.Share}
}

// points is the size of letters of so many px, points.
func (c canvas) points(px float64) float64 { return px * c.px / pdf.Point }

// Width is that of a text, px.
func (c canvas) Width(text string, size float64, bold bool) float64 {
	return c.paper.Width(text, pdf.Font{Size: c.points(size), Bold: bold}) / c.px
}

// Polyline draws an open line.
func (c canvas) Polyline(points []chart.XY, pen chart.Pen) {
	c.paper.Draw(pdf.Path{Dots: c.all(points)}, c.pen(pen), pdf.Fill{})
}

// Area fills a closed line.
func (c canvas) Area(corners []chart.XY, f chart.Fill) {
	c.paper.Draw(pdf.Path{Dots: c.all(corners), Closed: true}, pdf.Pen{}, fill(f))
}

// Box fills an upright rectangle.
func (c canvas) Box(at chart.XY, width, height float64, f chart.Fill) {
	c.paper.Box(c.on(at), c.px*width, c.px*height, pdf.Pen{}, fill(f))
}

// line is how thick marks are drawn that are not filled, px.
const line = 1.5

// Mark draws a shape.
func (c canvas) Mark(at chart.XY, shape chart.Shape, size float64, i chart.Ink) {
	pen := pdf.Pen{Ink: ink(i), Thick: c.px * line}
	switch corners := shape.Corners(at, size); shape {
	case chart.Disc:
		c.paper.Circle(c.on(at), c.px*size/2, pdf.Pen{}, pdf.Solid(ink(i)))
	case chart.Ring:
		c.paper.Circle(c.on(at), c.px*size/2, pen, pdf.Fill{})
	case chart.Cross:
		for _, ends := range [][]chart.XY{corners[:2], corners[2:]} {
			c.paper.Draw(pdf.Path{Dots: c.all(ends)}, pen, pdf.Fill{})
		}
	default:
		c.paper.Draw(pdf.Path{Dots: c.all(corners), Closed: true}, pdf.Pen{}, pdf.Solid(ink(i)))
	}
}

var aligns = map[chart.Align]pdf.Align{chart.AtMiddle: pdf.Middle, chart.AtEnd: pdf.Right}

// halo is how much of what lies below a text on lines is covered.
const halo = 0.8

// Text writes a line of text, on a piece of paper where it lies on lines.
func (c canvas) Text(at chart.XY, text string, l chart.Lettering) {
	font := pdf.Font{Size: c.points(l.Size), Bold: l.Bold, Ink: ink(l.Ink)}
	place := c.on(at)
	if l.Halo {
		wide := c.paper.Width(text, font)
		x := place.X
		switch l.Align {
		case chart.AtMiddle:
			x -= wide / 2
		case chart.AtEnd:
			x -= wide
		}
		high := c.px * l.Size
		c.paper.Box(pdf.XY{X: x, Y: place.Y - 0.8*high}, wide, high, pdf.Pen{}, pdf.Fill{Ink: pdf.White, Share: halo})
	}
	c.paper.Text(place, text, font, aligns[l.Align])
}
