package chart

import "math"

// lineNames writes the names of lines in a column at the right, each joined to the end of its line.
func (p *panel) lineNames() {
	if p.keyed(p.Panel) {
		return
	}
	var column []Line
	var ends []XY
	var want []float64
	for _, l := range p.named() {
		if end, ok := p.end(l); ok {
			column, ends, want = append(column, l), append(ends, end), append(want, end.Y)
		}
	}
	at := p.x1 + leader
	for i, y := range Spread(want, p.leading(), p.y0, p.y1) {
		l, ink := Lettering{Size: p.Letters, Ink: Letters}, column[i].Role.Ink()
		name := fitted(p.m, column[i].Name, l.Size, false, p.Width-edge-at)
		if p.try(XY{at, y + 0.3*p.Letters}, name, l, box{p.x1, p.y0 - 2, p.Width, p.y1 + 2}) {
			p.polyline([]XY{ends[i], {p.x1 + 4, ends[i].Y}, {at - 4, y}}, Pen{Ink: ink, Width: 1})
		}
	}
}

// end is where a line ends on the axis.
func (p *panel) end(l Line) (XY, bool) {
	pieces := p.pieces(p.corners(l))
	if len(pieces) == 0 {
		return XY{}, false
	}
	last := pieces[len(pieces)-1]
	return last[len(last)-1], true
}

// place is where a text might stand, and how little it is liked there.
type place struct {
	at    XY
	align Align
	cost  float64
}

// farNames writes the values of points that lie far off beside their marks at the end of the axis.
func (p *panel) farNames() {
	for _, q := range p.Points {
		if !known(q.At) || !known(q.Value) || q.At < p.from || q.At > p.to || q.Value >= p.ticks.Low() && q.Value <= p.ticks.High() {
			continue
		}
		at, h := p.spot(q.At, q.Value), p.Letters
		down := 1.3 * h
		if at.Y > (p.y0+p.y1)/2 {
			down = -0.6 * h
		}
		p.best(shown(q.Value, p.Places, p.Unit), []place{
			{XY{at.X + 10, at.Y + down}, AtStart, 0},
			{XY{at.X - 10, at.Y + down}, AtEnd, 1},
			{XY{at.X, at.Y + 2*down}, AtMiddle, 2},
		})
	}
}

// gates draws conditions as dashed lines.
func (p *panel) gates() {
	for _, g := range p.Gates {
		if a, b, ok := p.stretch(g); ok {
			line := []XY{p.spot(a, g.Value), p.spot(b, g.Value)}
			p.polyline(line, Pen{Ink: Level, Width: 1.25, Dash: []float64{5, 4}})
			for _, e := range line {
				p.line(e.X, e.Y-3, e.X, e.Y+3, Pen{Ink: Level, Width: 1.25})
			}
			p.courses = append(p.courses, line)
		}
	}
}

// stretch is the part of a gate that lies on the axis.
func (p *panel) stretch(g Gate) (from, to float64, ok bool) {
	from, to = p.from, p.to
	if g.From != 0 || g.To != 0 {
		from, to = p.clip(Span{From: g.From, To: g.To})
	}
	return from, to, known(g.Value) && to > from
}

// gateNames writes the words of gates over or below their lines.
func (p *panel) gateNames() {
	for _, g := range p.Gates {
		a, b, ok := p.stretch(g)
		if !ok {
			continue
		}
		x0, x1, y := p.x(a), p.x(b), p.yOf(g.Value)
		var places []place
		for k, up := range []float64{-0.45 * p.Letters, 1.2 * p.Letters, -1.6 * p.Letters, 2.4 * p.Letters, -2.9 * p.Letters, 3.7 * p.Letters} {
			cost := 3 * float64(k)
			places = append(places,
				place{XY{x0 + 5, y + up}, AtStart, cost},
				place{XY{x1 - 5, y + up}, AtEnd, cost + 0.5},
				place{XY{(x0 + x1) / 2, y + up}, AtMiddle, cost + 1},
				place{XY{x0 - 5, y + up}, AtEnd, cost + 1.5})
		}
		name := fitted(p.m, g.Name, p.Letters, false, p.x1-p.x0-10)
		if !p.best(name, places) {
			p.best(fitted(p.m, g.Name, p.Letters, false, (p.x1-p.x0)/3), places)
		}
	}
}

// best writes a text at the place that costs least: a line below it costs as much as a few places further on. It tells whether
// there was one.
func (p *panel) best(text string, places []place) bool {
	found, least := place{}, math.Inf(1)
	for _, c := range places {
		b := p.around(c.at, text, p.inner(c))
		if !p.free(b, p.room()) {
			continue
		}
		if cost := c.cost + 7*float64(p.below(b)); cost < least {
			found, least = c, cost
		}
	}
	if text == "" || math.IsInf(least, 1) {
		return false
	}
	p.put(found.at, text, p.inner(found))
	return true
}

func (p *panel) inner(c place) Lettering {
	return Lettering{Size: p.Letters, Ink: Letters, Align: c.align, Halo: true}
}

// below counts the lines and marks that a text would lie on.
func (p *panel) below(b box) (n int) {
	for _, course := range p.courses {
		for i := 1; i < len(course); i++ {
			if b.crossed(course[i-1], course[i]) {
				n++
				break
			}
		}
	}
	for _, o := range p.obstacle {
		if b.overlaps(o) {
			n++
		}
	}
	return n
}

// crossed tells whether a line from a to b has a part in the box: it is cut at each side in turn.
func (r box) crossed(a, b XY) bool {
	t0, t1 := 0.0, 1.0
	cut := func(from, by, low, high float64) bool {
		if by == 0 {
			return from >= low && from <= high
		}
		u, v := (low-from)/by, (high-from)/by
		t0, t1 = math.Max(t0, math.Min(u, v)), math.Min(t1, math.Max(u, v))
		return t0 <= t1
	}
	return cut(a.X, b.X-a.X, r.x0, r.x1) && cut(a.Y, b.Y-a.Y, r.y0, r.y1)
}
