package chart

import "math"

// panel is a panel on the sheet.
type panel struct {
	*frame
	Panel
	ticks    Ticks
	y0, y1   float64 // top and foot, px
	courses  [][]XY  // lines as they are drawn: text keeps clear of them
	obstacle []box   // marks
}

// yOf is where a value lies. The axis holds all values, but for those of times that are out of order.
func (p *panel) yOf(value float64) float64 {
	y := p.y1 - (p.y1-p.y0)*(value-p.ticks.Low())/(p.ticks.High()-p.ticks.Low())
	return math.Min(math.Max(y, p.y0), p.y1)
}

func (p *panel) room() box { return box{p.x0, p.y0, p.x1, p.y1} }

// panel draws one, with its head over it.
func (f *frame) panel(of Panel, last bool) {
	p := &panel{frame: f, Panel: of, ticks: f.ticks(of)}
	p.heading()
	p.y0 = f.y + 7
	p.y1 = p.y0 + f.high(of)
	f.feet = append(f.feet, p.y1)
	f.y = p.y1
	if !last {
		f.y += 10
	}
	p.ground()
	p.valueAxis()
	if of.Field != nil {
		p.field()
		p.rim()
		return
	}
	p.bands()
	p.gates()
	p.lines()
	p.points()
	p.rim()
	if len(p.courses) == 0 && len(p.obstacle) == 0 {
		middle := XY{(p.x0 + p.x1) / 2, (p.y0 + p.y1) / 2}
		p.try(middle, "no figures", Lettering{Size: p.Letters, Ink: Pale, Align: AtMiddle, Halo: true}, p.room())
	}
	p.lineNames()
	p.farNames()
	p.gateNames()
}

// high is the height of a panel: as tall as asked, or as the names of its lines need.
func (f *frame) high(p Panel) float64 {
	high := f.Panel
	if known(p.Tall) && p.Tall > 0 {
		high *= math.Min(math.Max(p.Tall, 0.3), 3)
	}
	if !f.keyed(p) {
		high = math.Max(high, float64(len(p.named())+1)*f.leading())
	}
	return math.Round(high)
}

// ticks are those of the values of a panel. A point in doubt widens the axis by no more than half: one far off is
// shown at its end.
func (f *frame) ticks(p Panel) Ticks {
	low, high := math.Inf(1), math.Inf(-1)
	if p.Least < p.Most {
		low, high = p.Least, p.Most
	}
	take := func(v float64) {
		if known(v) {
			low, high = math.Min(low, v), math.Max(high, v)
		}
	}
	p.values(f.from, f.to, take)
	half := (high - low) / 2
	from, to := low-half, high+half
	for _, q := range p.Points {
		if q.Doubted && q.At >= f.from && q.At <= f.to && (from > to || q.Value >= from && q.Value <= to) {
			take(q.Value)
		}
	}
	most := int(f.high(Panel{Tall: p.Tall}) / (2 * f.Letters))
	return NiceTicks(low, high, min(max(most, 2), 9), p.Places)
}

// values gives all the values of a panel between two times, and those next to them.
func (p Panel) values(from, to float64, each func(float64)) {
	all := func(at []float64, lists ...[]float64) {
		for i := range at {
			if i+1 < len(at) && at[i+1] < from || i > 0 && at[i-1] > to {
				continue
			}
			for _, list := range lists {
				if i < len(list) {
					each(list[i])
				}
			}
		}
	}
	if p.Field != nil {
		for _, d := range p.Field.Depth {
			each(d)
		}
		return
	}
	for _, l := range p.Lines {
		all(l.At, l.Value)
	}
	for _, b := range p.Bands {
		all(b.At, b.Low, b.Middle, b.High)
	}
	for _, q := range p.Points {
		if q.At >= from && q.At <= to && !q.Doubted {
			each(q.Value - q.slack())
			each(q.Value + q.slack())
		}
	}
	for _, g := range p.Gates {
		each(g.Value)
	}
}

// slack is by how much a point may be wrong; 0 where that is not known.
func (q Point) slack() float64 {
	if !known(q.Error) {
		return 0
	}
	return math.Abs(q.Error)
}

// ground is what lies under all: nights, grid, ends of stages.
func (p *panel) ground() {
	for _, n := range p.chart.Nights {
		if a, b := p.clip(n); b > a {
			p.box(box{p.x(a), p.y0, p.x(b), p.y1}, Fill{Ink: Night})
		}
	}
	for i, v := range p.ticks.At {
		if i > 0 && i < len(p.ticks.At)-1 {
			p.line(p.x0, p.yOf(v), p.x1, p.yOf(v), Pen{Ink: Grid, Width: 1})
		}
	}
	done := map[float64]bool{}
	for _, st := range p.chart.Stages {
		for _, at := range []float64{st.From, st.To} {
			if at > p.from && at < p.to && !done[at] {
				done[at] = true
				p.line(p.x(at), p.y0-4, p.x(at), p.y1, Pen{Ink: Frame, Width: 1, Dash: []float64{1, 3}})
			}
		}
	}
}

// valueAxis writes the values at the left.
func (p *panel) valueAxis() {
	l := Lettering{Size: p.Letters, Ink: Letters, Align: AtEnd}
	for i, v := range p.ticks.At {
		y := p.yOf(v)
		p.line(p.x0-4, y, p.x0, y, Pen{Ink: Frame, Width: 1})
		p.try(XY{p.x0 - 7, y + 0.35*p.Letters}, p.ticks.Label(i), l, box{0, 0, p.x0, p.y1 + p.Letters})
	}
}

// rim is the frame: an axis at the left and at the foot, heavy below what has been, and the line of now.
func (p *panel) rim() {
	p.line(p.x0, p.y0, p.x0, p.y1, Pen{Ink: Frame, Width: 1})
	p.line(p.x0, p.y1, p.x1, p.y1, Pen{Ink: Frame, Width: 1})
	if p.now() {
		x := p.x(*p.chart.Now)
		p.line(p.x0, p.y1, x, p.y1, Pen{Ink: Today, Width: 3})
		p.line(x, p.y0-4, x, p.y1, Pen{Ink: Today, Width: 1.5})
	}
}
