package chart_test

import (
	"fmt"
	"math"

	"maltwright/cmd/chart"
)

// written is a text of a drawing, with the room it takes.
type written struct {
	text           string
	x0, y0, x1, y1 float64
	l              chart.Lettering
}

func (a written) String() string {
	return fmt.Sprintf("%q at %.1f..%.1f, %.1f..%.1f", a.text, a.x0, a.x1, a.y0, a.y1)
}

func (a written) overlaps(b written) bool {
	return a.x0 < b.x1-0.01 && b.x0 < a.x1-0.01 && a.y0 < b.y1-0.01 && b.y0 < a.y1-0.01
}

// record is a canvas that remembers.
type record struct {
	chart.Sans
	texts  []written
	spots  []chart.XY // of all that is not text
	lines  [][]chart.XY
	pens   []chart.Pen
	areas  [][]chart.XY
	boxes  []chart.Fill
	shapes []chart.Shape
	all    []string
}

func (r *record) note(what string, args ...any) { r.all = append(r.all, what+fmt.Sprint(args...)) }

func (r *record) Polyline(points []chart.XY, pen chart.Pen) {
	r.note("line", points, pen)
	r.spots = append(r.spots, points...)
	r.lines, r.pens = append(r.lines, points), append(r.pens, pen)
}

func (r *record) Area(corners []chart.XY, f chart.Fill) {
	r.note("area", corners, f)
	r.spots = append(r.spots, corners...)
	r.areas = append(r.areas, corners)
}

func (r *record) Box(at chart.XY, width, height float64, f chart.Fill) {
	r.note("box", at, width, height, f)
	r.spots = append(r.spots, at, chart.XY{X: at.X + width, Y: at.Y + height})
	r.boxes = append(r.boxes, f)
}

func (r *record) Mark(at chart.XY, shape chart.Shape, size float64, ink chart.Ink) {
	r.note("mark", at, shape, size, ink)
	r.spots = append(r.spots, at)
	r.shapes = append(r.shapes, shape)
}

// Text takes for the room of a text what its letters rise and fall at most.
func (r *record) Text(at chart.XY, text string, l chart.Lettering) {
	r.note("text", at, text, l)
	wide := r.Width(text, l.Size, l.Bold)
	switch l.Align {
	case chart.AtMiddle:
		at.X -= wide / 2
	case chart.AtEnd:
		at.X -= wide
	}
	r.texts = append(r.texts, written{text, at.X, at.Y - 0.8*l.Size, at.X + wide, at.Y + 0.22*l.Size, l})
}

func drawn(d *chart.Drawing) *record {
	r := &record{}
	d.Draw(r)
	return r
}

// trouble is what is wrong with a drawing, whatever it is of.
func trouble(d *chart.Drawing, r *record) (list []string) {
	for i, a := range r.texts {
		if a.x0 < 0 || a.x1 > d.Width || a.y0 < 0 || a.y1 > d.Height {
			list = append(list, fmt.Sprintf("%v is not on the sheet of %g by %g", a, d.Width, d.Height))
		}
		if a.l.Size < 12 {
			list = append(list, fmt.Sprintf("%v is small", a))
		}
		if a.text == "" {
			list = append(list, "an empty text")
		}
		for _, b := range r.texts[:i] {
			if a.overlaps(b) {
				list = append(list, fmt.Sprintf("%v lies on %v", a, b))
			}
		}
	}
	for _, s := range r.spots {
		if !(s.X >= 0 && s.X <= d.Width && s.Y >= 0 && s.Y <= d.Height) {
			return append(list, fmt.Sprintf("%v is not on the sheet of %g by %g", s, d.Width, d.Height))
		}
	}
	if !(d.Width >= 280) || math.IsInf(d.Height, 0) || !(d.Height > 0) {
		list = append(list, fmt.Sprintf("a sheet of %g by %g", d.Width, d.Height))
	}
	return list
}
