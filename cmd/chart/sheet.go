package chart

import "math"

// Drawing is a chart with a place for everything.
type Drawing struct {
	Width, Height float64 // px
	Title, Says   string  // what it is called, and what it shows in words
	marks         []func(Canvas)
}

// Draw draws it.
func (d *Drawing) Draw(on Canvas) {
	for _, mark := range d.marks {
		mark(on)
	}
}

// Options say how a chart is laid out; the zero value is a sheet on a desk.
type Options struct {
	Width   float64 // px; 0 is 900; less than 280 is 280
	Letters float64 // size of text, px; 0 is 12; less than 12 is 12, more than a fifteenth of the width is that
	Panel   float64 // height of a panel, px; 0 is by the width
}

func (o Options) filled() Options {
	if !(o.Width > 0) {
		o.Width = 900
	}
	o.Width = math.Min(math.Max(o.Width, 280), 10000)
	if !(o.Letters > 12) {
		o.Letters = 12
	}
	o.Letters = math.Min(o.Letters, math.Max(12, o.Width/15))
	if !(o.Panel > 0) {
		o.Panel = math.Round(110 + o.Width/6.5)
	}
	o.Panel = math.Min(math.Max(o.Panel, 60), 5000)
	return o
}

// narrow tells whether names of lines stand over a panel rather than at their ends.
func (o Options) narrow() bool { return o.Width < 40*o.Letters }

// box is an upright rectangle.
type box struct{ x0, y0, x1, y1 float64 }

func (b box) overlaps(c box) bool {
	return b.x0 < c.x1 && c.x0 < b.x1 && b.y0 < c.y1 && c.y0 < b.y1
}

func (b box) within(c box) bool {
	return b.x0 >= c.x0 && b.x1 <= c.x1 && b.y0 >= c.y0 && b.y1 <= c.y1
}

// sheet is what a chart is laid out on, from the top down. It knows where text stands, so that no two lie
// over one another.
type sheet struct {
	Options
	m     Measure
	y     float64 // how far down it is filled
	marks []func(Canvas)
	top   []func(Canvas) // drawn last: text that lies on lines
	taken []box
}

const edge = 10 // px left free at each side

func newSheet(o Options, m Measure) *sheet { return &sheet{Options: o.filled(), m: m, y: edge} }

func (s *sheet) draw(mark func(Canvas)) { s.marks = append(s.marks, mark) }

func (s *sheet) polyline(points []XY, p Pen) {
	if len(points) > 1 {
		s.draw(func(c Canvas) { c.Polyline(points, p) })
	}
}

func (s *sheet) line(x0, y0, x1, y1 float64, p Pen) { s.polyline([]XY{{x0, y0}, {x1, y1}}, p) }

func (s *sheet) box(b box, f Fill) {
	if b.x1 > b.x0 && b.y1 > b.y0 {
		s.draw(func(c Canvas) { c.Box(XY{b.x0, b.y0}, b.x1-b.x0, b.y1-b.y0, f) })
	}
}

func (s *sheet) mark(at XY, shape Shape, size float64, ink Ink) {
	s.draw(func(c Canvas) { c.Mark(at, shape, size, ink) })
}

// leading is the distance of two lines of text.
func (s *sheet) leading() float64 { return math.Round(1.35 * s.Letters) }

// around is the room that a text takes.
func (s *sheet) around(at XY, text string, l Lettering) box {
	wide := s.m.Width(text, l.Size, l.Bold)
	switch l.Align {
	case AtMiddle:
		at.X -= wide / 2
	case AtEnd:
		at.X -= wide
	}
	return box{at.X, at.Y - 0.85*l.Size, at.X + wide, at.Y + 0.25*l.Size}
}

// put writes a text where nothing else can stand.
func (s *sheet) put(at XY, text string, l Lettering) {
	if text == "" {
		return
	}
	s.taken = append(s.taken, s.around(at, text, l))
	s.top = append(s.top, func(c Canvas) { c.Text(at, text, l) })
}

// free tells whether a room lies within another and no text stands in it.
func (s *sheet) free(b, within box) bool {
	if !b.within(within) {
		return false
	}
	for _, t := range s.taken {
		if b.overlaps(t) {
			return false
		}
	}
	return true
}

// try writes a text if there is room for it.
func (s *sheet) try(at XY, text string, l Lettering, within box) bool {
	if text == "" || !s.free(s.around(at, text, l), within) {
		return false
	}
	s.put(at, text, l)
	return true
}

// paragraph writes a text over the width of the sheet, in as many lines as it takes.
func (s *sheet) paragraph(text string, l Lettering) {
	for _, line := range wrapped(s.m, text, l.Size, l.Bold, s.Width-2*edge) {
		s.y += math.Round(1.35 * l.Size)
		s.put(XY{edge, s.y - math.Round(0.3*l.Size)}, line, l)
	}
}

// drawing is the sheet when all is done.
func (s *sheet) drawing(title, says string) *Drawing {
	high := math.Ceil(s.y + edge)
	paper := func(c Canvas) { c.Box(XY{}, s.Width, high, Fill{Ink: Paper}) }
	marks := append([]func(Canvas){paper}, s.marks...)
	return &Drawing{Width: s.Width, Height: high, Title: title, Says: says, marks: append(marks, s.top...)}
}

func ceil(x float64) float64 { return math.Ceil(x - 1e-9) }
