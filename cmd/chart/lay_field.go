package chart

import (
	"math"

	"maltwright/lang/quantity"
)

const (
	cellHigh = 3 // px of a cell of a field
	cellWide = 4
)

// legend writes the scale of a field below the head of its panel: its steps from least to most, and their bounds.
func (p *panel) legend() {
	t := p.Field.scale()
	n := len(t.At) - 1
	l := Lettering{Size: p.Letters, Ink: Letters, Align: AtMiddle}
	name := p.Field.Name
	if p.Field.Unit != "" {
		name += ", " + p.Field.Unit
	}
	name = fitted(p.m, name, l.Size, false, p.Width-2*edge)
	p.y += p.leading()
	p.put(XY{edge, p.y - 4}, name, Lettering{Size: p.Letters, Ink: Letters})
	x := edge + p.m.Width(name, l.Size, false) + 24
	wide := math.Min(56, (p.Width-edge-x-16)/float64(n))
	if wide < 26 {
		p.y += p.leading()
		x, wide = edge+12, math.Min(56, (p.Width-2*edge-28)/float64(n))
	}
	for i := range n {
		at := x + wide*float64(i)
		p.box(box{at, p.y - p.Letters - 2, at + wide, p.y - 3}, Fill{Ink: step(i, n)})
	}
	p.y += p.leading()
	for i := range t.At {
		at := x + wide*float64(i)
		p.line(at, p.y-p.leading()-p.Letters-2, at, p.y-p.leading(), Pen{Ink: Frame, Width: 1})
		p.try(XY{at, p.y - 4}, t.Label(i), l, p.row(p.y-4))
	}
}

// field draws a quantity by depth and time: cells in the colours of their steps, and lines of equal value with their numbers.
func (p *panel) field() {
	t := p.Field.scale()
	p.cells(t)
	g := p.sampled()
	for i := 1; i+1 < len(t.At); i++ {
		for _, line := range g.contours(t.At[i]) {
			points := straight(line, 0.3)
			p.polyline(points, Pen{Ink: Paper, Width: 2.5})
			p.polyline(points, Pen{Ink: Letters, Width: 1})
			p.number(points, t.Label(i))
		}
	}
}

// number writes the value of a line of equal value on it, where there is room, once at most.
func (p *panel) number(points []XY, text string) {
	l := Lettering{Size: p.Letters, Ink: Letters, Align: AtMiddle, Halo: true}
	long := 0.0
	for i := 1; i < len(points); i++ {
		long += math.Hypot(points[i].X-points[i-1].X, points[i].Y-points[i-1].Y)
	}
	if long < 3*p.Letters {
		return
	}
	for _, share := range []float64{0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8, 0.1, 0.9} {
		at := along(points, share*long)
		at.Y += 0.35 * p.Letters
		if p.try(at, text, l, box{p.x0 + 3, p.y0, p.x1 - 3, p.y1 - 3}) {
			return
		}
	}
}

// along is the point so far along a line.
func along(points []XY, far float64) XY {
	for i := 1; i < len(points); i++ {
		a, b := points[i-1], points[i]
		d := math.Hypot(b.X-a.X, b.Y-a.Y)
		if far <= d && d > 0 {
			return XY{a.X + (b.X-a.X)*far/d, a.Y + (b.Y-a.Y)*far/d}
		}
		far -= d
	}
	return points[len(points)-1]
}

// sampled is the field at points of the panel two cells apart.
func (p *panel) sampled() grid {
	g := grid{x0: p.x0, y0: p.y0}
	nx, ny := max(2, int((p.x1-p.x0)/(2*cellWide))), max(2, int((p.y1-p.y0)/(2*cellHigh)))
	g.dx, g.dy = (p.x1-p.x0)/float64(nx), (p.y1-p.y0)/float64(ny)
	for j := 0; j <= ny; j++ {
		row := make([]float64, nx+1)
		for i := range row {
			row[i] = p.fieldAt(g.at(i, j))
		}
		g.value = append(g.value, row)
	}
	return g
}

// fieldAt is the field below a point of the panel.
func (p *panel) fieldAt(at XY) float64 {
	t := p.from + (p.to-p.from)*(at.X-p.x0)/(p.x1-p.x0)
	d := p.ticks.Low() + (p.ticks.High()-p.ticks.Low())*(p.y1-at.Y)/(p.y1-p.y0)
	return p.Field.value(t, d)
}

// cells fills the panel, step by step, each row in runs of one colour.
func (p *panel) cells(t Ticks) {
	n := len(t.At) - 1
	runs := make([][]box, n)
	for y := p.y0; y < p.y1; y += cellHigh {
		foot := math.Min(y+cellHigh, p.y1)
		from, kind := p.x0, -1
		for x := p.x0; x < p.x1; x += cellWide {
			at := XY{math.Min(x+cellWide/2, p.x1), (y + foot) / 2}
			if k := t.step(p.fieldAt(at)); k != kind {
				if kind >= 0 {
					runs[kind] = append(runs[kind], box{from, y, x, foot})
				}
				from, kind = x, k
			}
		}
		if kind >= 0 {
			runs[kind] = append(runs[kind], box{from, y, p.x1, foot})
		}
	}
	for k, list := range runs {
		for _, b := range list {
			p.box(b, Fill{Ink: step(k, n)})
		}
	}
}

// step is the one that a value lies in; -1 where it is not known. What lies outside has that of the end.
func (t Ticks) step(v float64) int {
	if !known(v) {
		return -1
	}
	for i := 1; i < len(t.At)-1; i++ {
		if v < t.At[i] {
			return i - 1
		}
	}
	return len(t.At) - 2
}

// shown writes a value with its unit.
func shown(v float64, places int, unit string) string {
	if !known(v) {
		return "unknown"
	}
	text := quantity.Fixed(v, places)
	if unit != "" {
		text += " " + unit
	}
	return text
}
