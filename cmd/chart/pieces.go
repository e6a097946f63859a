package chart

import "math"

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
