package chart

import "math"

const (
	markSize  = 7.0  // px of a mark on a line
	pointSize = 10.0 // of a measured point
	leader    = 22.0 // px from the frame to the name of a line
	between   = 150  // px between two marks on a line
)

func pen(r Role) Pen {
	wide := 2.0
	if r < 0 {
		wide = 1.25
	}
	return Pen{Ink: r.Ink(), Width: wide, Dash: r.Dash()}
}

func bandFill(r Role) Fill { return Fill{Ink: r.Ink(), Share: 0.2} }

// bands draws ranges, and what lies in the middle of each.
func (p *panel) bands() {
	for _, b := range p.Bands {
		at, lows, highs := both(b)
		low, high := p.pieces(at, lows), p.pieces(at, highs)
		for i := range min(len(low), len(high)) {
			corners := append([]XY(nil), thinned(high[i])...)
			back := thinned(low[i])
			for j := len(back) - 1; j >= 0; j-- {
				corners = append(corners, back[j])
			}
			if len(corners) > 2 {
				p.draw(func(c Canvas) { c.Area(corners, bandFill(b.Role)) })
			}
			p.polyline(thinned(high[i]), Pen{Ink: b.Role.Ink(), Width: 0.75})
			p.polyline(back, Pen{Ink: b.Role.Ink(), Width: 0.75})
		}
		for _, piece := range p.pieces(b.At, b.Middle) {
			p.course(piece, pen(b.Role))
		}
	}
}

// marked tells whether a line has marks, so that it is not told from others by its colour and dash alone.
func (p *panel) marked(l Line) bool {
	coloured := 0
	for _, other := range p.Lines {
		if other.Role >= 0 {
			coloured++
		}
	}
	return coloured > 1 && l.Role >= 0
}

// lines draws courses, with marks where there is more than one.
func (p *panel) lines() {
	for i, l := range p.Lines {
		for _, piece := range p.pieces(p.corners(l)) {
			p.course(piece, pen(l.Role))
			if p.marked(l) {
				p.marksOn(piece, l.Role, float64(i)*between/float64(len(p.Lines)))
			}
		}
	}
}

// course draws a line and remembers it. A line of one point is a mark.
func (p *panel) course(piece []XY, pen Pen) {
	points := thinned(piece)
	p.courses = append(p.courses, points)
	if len(points) == 1 {
		p.mark(points[0], Disc, 4, pen.Ink)
		return
	}
	if !p.now() {
		p.polyline(points, pen)
		return
	}
	been, foretold := parted(points, p.x(*p.chart.Now))
	p.polyline(been, pen)
	pen.Width *= 0.6
	p.polyline(foretold, pen)
}

// marksOn puts marks on a line, px apart, the first so far from its beginning; one at least, but where it is hardly longer
// than that.
func (p *panel) marksOn(points []XY, r Role, first float64) {
	long := points[len(points)-1].X - points[0].X
	if len(points) < 2 || long < 3*markSize {
		return
	}
	for x, i := points[0].X+math.Min(first+20, long/2), 0; x <= points[len(points)-1].X; x += between {
		for i+2 < len(points) && points[i+1].X < x {
			i++
		}
		a, b := points[i], points[i+1]
		y := a.Y
		if b.X > a.X {
			y = onWay(a.X, a.Y, b.X, b.Y, math.Min(math.Max(x, a.X), b.X))
		}
		p.mark(XY{x, y}, r.Shape(), markSize, r.Ink())
	}
}

// points draws what was measured.
func (p *panel) points() {
	for _, q := range p.Points {
		if !known(q.At) || !known(q.Value) || q.At < p.from || q.At > p.to {
			continue
		}
		at, ink := p.spot(q.At, q.Value), q.Role.Ink()
		if d := q.slack(); d > 0 {
			low, high := p.yOf(q.Value-d), p.yOf(q.Value+d)
			thin := Pen{Ink: ink, Width: 1.25}
			p.line(at.X, low, at.X, high, thin)
			p.line(at.X-3, low, at.X+3, low, thin)
			p.line(at.X-3, high, at.X+3, high, thin)
		}
		if q.Doubted {
			p.doubt(at, ink)
		} else {
			p.measured(at, q.Role)
		}
		p.obstacle = append(p.obstacle, box{at.X - 5, at.Y - 5, at.X + 5, at.Y + 5})
	}
}

// measured marks a point with the mark of its line, hollow: marks on lines are filled.
func (p *panel) measured(at XY, r Role) {
	p.mark(at, r.Shape(), pointSize, r.Ink())
	p.mark(at, r.Shape(), pointSize/2, Paper)
}

// doubt marks a point that may not be so: a cross in a ring of paper.
func (p *panel) doubt(at XY, ink Ink) {
	p.mark(at, Disc, pointSize+3, Paper)
	p.mark(at, Ring, pointSize+3, ink)
	p.mark(at, Cross, pointSize-2, ink)
}
