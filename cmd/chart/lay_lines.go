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

// marked tells whether a line has marks, so that it is not told by its colour and dash alone.
func (p *panel) marked(l Line) bool { return len(p.Lines) > 1 && l.Role >= 0 }

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

// corners gives a line with the corners of its steps.
func (p *panel) corners(l Line) (at, value []float64) {
	if !l.Step {
		return l.At, l.Value
	}
	for i := range min(len(l.At), len(l.Value)) {
		if i > 0 {
			at, value = append(at, l.At[i]), append(value, l.Value[i-1])
		}
		at, value = append(at, l.At[i]), append(value, l.Value[i])
	}
	return at, value
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

// parted parts a line at x.
func parted(points []XY, x float64) (left, right []XY) {
	for i, q := range points {
		if q.X > x {
			left, right = points[:i:i], points[i:]
			if i > 0 {
				a := points[i-1]
				cut := XY{x, a.Y + (q.Y-a.Y)*(x-a.X)/(q.X-a.X)}
				left, right = append(left, cut), append([]XY{cut}, right...)
			}
			return left, right
		}
	}
	return points, nil
}

// pieces are the parts of a course that are known and lie on the axis, in px.
func (p *panel) pieces(at, value []float64) (pieces [][]XY) {
	var piece []XY
	done := func() {
		if len(piece) > 0 {
			pieces = append(pieces, piece)
		}
		piece = nil
	}
	for i := range min(len(at), len(value)) {
		t, v := at[i], value[i]
		if !known(t) || !known(v) || i > 0 && t < at[i-1] {
			done()
			continue
		}
		switch before := i > 0 && known(at[i-1]) && known(value[i-1]); {
		case t < p.from:
			continue
		case t > p.to:
			if before && at[i-1] < p.to {
				piece = p.entering(piece, at, value, i)
				piece = append(piece, p.spot(p.to, onWay(at[i-1], value[i-1], t, v, p.to)))
			}
			done()
			return pieces
		case before:
			piece = p.entering(piece, at, value, i)
		}
		piece = append(piece, p.spot(t, v))
	}
	done()
	return pieces
}

// entering begins a piece at the left end of the axis where the line comes from beyond it.
func (p *panel) entering(piece []XY, at, value []float64, i int) []XY {
	if len(piece) == 0 && at[i-1] < p.from && at[i] > p.from {
		return append(piece, p.spot(p.from, onWay(at[i-1], value[i-1], at[i], value[i], p.from)))
	}
	return piece
}

func onWay(t0, v0, t1, v1, t float64) float64 { return v0 + (v1-v0)*(t-t0)/(t1-t0) }

// both are the ends of a band, unknown where one of them is.
func both(b Band) (at, low, high []float64) {
	n := min(len(b.At), len(b.Low), len(b.High))
	low, high = append(low, b.Low[:n]...), append(high, b.High[:n]...)
	for i := range n {
		if !known(low[i]) || !known(high[i]) {
			low[i], high[i] = math.NaN(), math.NaN()
		}
	}
	return b.At[:n], low, high
}

func (p *panel) spot(at, value float64) XY { return XY{p.x(at), p.yOf(value)} }

// marksOn puts marks on a line, px apart, the first so far from its beginning.
func (p *panel) marksOn(points []XY, r Role, first float64) {
	if len(points) < 2 {
		return
	}
	for x, i := points[0].X+first+20, 0; x <= points[len(points)-1].X; x += between {
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
