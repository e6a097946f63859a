package term

import (
	"math"
	"slices"

	"maltwright/cmd/chart"
)

// plot is a panel under way.
type plot struct {
	*page
	*grid
	panel  chart.Panel
	values axis
	times  stretch
	legend []entry
}

// column is that of a time.
func (p *plot) column(at float64) int { return p.times.dot(at) / p.across }

// draw sets all of a panel: what lies below first.
func (p *plot) draw(now *float64) {
	p.lettered = len(p.panel.Lines) > 1
	for _, b := range p.panel.Bands {
		p.band(b)
	}
	for i, l := range p.panel.Lines {
		p.course(l.At, l.Value, l.Step, i, l.Role)
	}
	for i, b := range p.panel.Bands {
		if b.Middle != nil {
			p.course(b.At, b.Middle, false, len(p.panel.Lines)+i, b.Role)
		}
	}
	if now != nil {
		p.today(*now)
	}
	p.measured()
	if p.lettered {
		p.letter()
	}
	for _, g := range p.panel.Gates {
		p.gateRow(g)
	}
	for _, g := range p.panel.Gates {
		p.gateWords(g)
	}
	p.named()
}

// band fills a range with every fourth dot.
func (p *plot) band(b chart.Band) {
	for x := range p.times.dots {
		low, ok := valueAt(b.At, b.Low, p.times.at(x))
		high, too := valueAt(b.At, b.High, p.times.at(x))
		if !ok || !too {
			continue
		}
		for y := max(0, p.values.dot(high)); y <= min(p.values.dot(low), p.values.rows*p.down-1); y++ {
			if c, bit := p.dot(x, y); c != nil && (p.plain || x%2 == 0 && y%2 == 0) {
				c.band |= bit
			}
		}
	}
}

// valueAt is what a course has at a time between two of its points; not ok where it has none.
func valueAt(at, value []float64, t float64) (v float64, ok bool) {
	i, found := slices.BinarySearch(at, t)
	switch {
	case found:
		v = value[i]
	case i == 0 || i == len(at):
		return 0, false
	default:
		share := (t - at[i-1]) / (at[i] - at[i-1])
		v = value[i-1] + share*(value[i]-value[i-1])
	}
	return v, !math.IsNaN(v)
}

// dashes are dots drawn and left out in turn, by role.
var dashes = [][]int{nil, {5, 3}, {1, 2}, {6, 2, 1, 2}, {9, 3}, {3, 2, 1, 2, 1, 2}}

// dashOf is that of a role.
func dashOf(r chart.Role) []int {
	if r < 0 {
		return []int{1, 3}
	}
	return dashes[int(r)%len(dashes)]
}

// pen draws along a line: it counts its dots, so that dashes go on over its corners.
type pen struct {
	*plot
	line  int
	ink   string
	dash  []int
	count int
}

// course draws the line of a course, which is broken where a value is not known.
func (p *plot) course(at, value []float64, step bool, line int, role chart.Role) {
	pen := pen{plot: p, line: line, ink: inkOf(role), dash: dashOf(role)}
	for i := range at {
		if math.IsNaN(value[i]) {
			continue
		}
		x, y := p.times.dot(at[i]), p.values.dot(value[i])
		if i == 0 || math.IsNaN(value[i-1]) {
			pen.to(x, y, x, y)
			continue
		}
		fromX, fromY := p.times.dot(at[i-1]), p.values.dot(value[i-1])
		if step {
			pen.to(fromX, fromY, x, fromY)
			fromX = x
		}
		pen.to(fromX, fromY, x, y)
	}
}

// to draws from one dot to another, without the first of several.
func (p *pen) to(x0, y0, x1, y1 int) {
	n := max(abs(x1-x0), abs(y1-y0))
	if n == 0 {
		p.set(x0, y0, false)
		return
	}
	if n > 1<<16 { // far outside of the grid
		return
	}
	for i := 1; i <= n; i++ {
		share := float64(i) / float64(n)
		p.set(x0+int(math.Round(share*float64(x1-x0))), y0+int(math.Round(share*float64(y1-y0))), true)
	}
}

func (p *pen) set(x, y int, moved bool) {
	if moved {
		p.count++
	}
	if c, bit := p.dot(x, y); c != nil && p.drawn() {
		c.line |= bit
		c.lines |= 1 << (p.line % 64)
		c.ink = p.ink
	}
}

// drawn tells whether the dash has a dot there.
func (p *pen) drawn() bool {
	if p.dash == nil || p.plain {
		return true
	}
	sum := 0
	for _, n := range p.dash {
		sum += n
	}
	at := p.count % sum
	for i, n := range p.dash {
		if at < n {
			return i%2 == 0
		}
		at -= n
	}
	return true
}

func abs(n int) int { return max(n, -n) }

// today draws the line of now where nothing else is.
func (p *plot) today(now float64) {
	column, free := p.column(now), false
	for row := range p.height {
		if !p.within(column, row) {
			return
		}
		if x := p.at(column, row); x.band|x.line == 0 {
			x.sign, x.ink, free = p.now, faint, true
		}
	}
	if free {
		p.enter(p.now, faint, "now")
	}
}

// measured sets the readings, those in doubt last, so that none of them is hidden.
func (p *plot) measured() {
	for _, doubted := range []bool{false, true} {
		for _, x := range p.panel.Points {
			if x.Doubted == doubted && !math.IsNaN(x.Value) {
				p.reading(x)
			}
		}
	}
}

func (p *plot) reading(x chart.Point) {
	column, row := p.column(x.At), p.values.row(x.Value)
	sign, ink := p.signs.measured[x.Role.Shape()], inkOf(x.Role)
	name := x.Name
	if name == "" {
		name = "measured"
	}
	if x.Doubted {
		sign, ink = p.doubted, inks[3]
	}
	switch {
	case row < 0 && x.Doubted:
		row, sign = 0, p.above
	case row >= p.height && x.Doubted:
		row, sign = p.height-1, p.below
	}
	if !p.within(column, row) {
		return
	}
	if x.Error > 0 && !x.Doubted {
		p.error(x, inkOf(x.Role))
	}
	c := p.at(column, row)
	c.sign, c.ink = sign, ink
	switch {
	case sign == p.above || sign == p.below:
		p.enter(sign, ink, p.far(x))
	case x.Doubted:
		p.enter(sign, ink, "in doubt")
	default:
		p.enter(sign, ink, name)
	}
}

// error draws by how much a reading may be wrong, where that is more than its sign hides.
func (p *plot) error(x chart.Point, ink string) {
	column := p.times.dot(x.At)
	for y := max(0, p.values.dot(x.Value+x.Error)); y <= min(p.values.dot(x.Value-x.Error), p.values.rows*p.down-1); y++ {
		if c, bit := p.dot(column, y); c != nil && c.sign == "" {
			c.line |= bit
			c.ink = ink
		}
	}
}
