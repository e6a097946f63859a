package chart

import (
	"math"
	"slices"
)

// Lay gives everything in a chart its place on a sheet. No two texts lie over one another, and all lies
// within the sheet. A name that has no room is cut, or left out where less than three letters of it would stand; Tables and Say have it whole.
func (c Chart) Lay(o Options, m Measure) *Drawing {
	s := newSheet(o, m)
	s.head(c.Title, c.Sub)
	f := frame{sheet: s, chart: c, clock: c.Clock()}
	f.from, f.to = c.ends()
	f.sides()
	f.names()
	for i, p := range c.Panels {
		f.panel(p, i == len(c.Panels)-1)
	}
	f.timeAxis()
	s.foot(c.Note)
	return s.drawing(c.Title, c.Say())
}

// head writes title and subtitle.
func (s *sheet) head(title, sub string) {
	s.paragraph(title, Lettering{Size: math.Round(1.35 * s.Letters), Bold: true, Ink: Letters})
	s.paragraph(sub, Lettering{Size: s.Letters, Ink: Pale})
	if title != "" || sub != "" {
		s.y += 6
	}
}

// foot writes notes.
func (s *sheet) foot(notes []string) {
	for _, n := range notes {
		s.y += 4
		s.paragraph(n, Lettering{Size: s.Letters, Ink: Pale})
	}
}

// frame is the part of a sheet that panels share: the axis of time.
type frame struct {
	*sheet
	chart    Chart
	clock    Clock
	from, to float64   // s
	x0, x1   float64   // px, where from and to lie
	feet     []float64 // of the panels, px
}

// x is where a time lies.
func (f *frame) x(at float64) float64 {
	return f.x0 + (f.x1-f.x0)*(at-f.from)/(f.to-f.from)
}

// sides finds how much room the figures at the left and the names at the right ask for.
func (f *frame) sides() {
	left, right := 0.0, 0.0
	for _, p := range f.chart.Panels {
		t := f.ticks(p)
		for i := range t.At {
			left = math.Max(left, f.m.Width(t.Label(i), f.Letters, false))
		}
		for _, l := range p.named() {
			if f.keyed(p) {
				break
			}
			right = math.Max(right, f.m.Width(l.Name, f.Letters, false)+leader+6)
		}
	}
	f.x0 = math.Round(edge + left + 10)
	f.x1 = math.Round(f.Width - edge - math.Min(math.Max(right, f.Letters), f.Width*0.3))
}

// named are the lines that have a name to be told apart by.
func (p Panel) named() []Line {
	return slices.DeleteFunc(slices.Clone(p.Lines), func(l Line) bool { return l.Name == "" || len(p.Lines) == 1 && l.Name == p.Name })
}

// keyed tells whether the names of lines stand over the panel: on a narrow sheet, where there are many, and
// where a line ends before the axis does.
func (f *frame) keyed(p Panel) bool {
	named := p.named()
	return f.narrow() || len(named) > colours || slices.ContainsFunc(named, func(l Line) bool {
		at := l.At[:min(len(l.At), len(l.Value))]
		for len(at) > 0 && !known(l.Value[len(at)-1]) {
			at = at[:len(at)-1]
		}
		return len(at) > 0 && at[len(at)-1] < f.to-0.02*(f.to-f.from)
	})
}

// clip is the part of a stretch that lies on the axis.
func (f *frame) clip(s Span) (from, to float64) {
	return math.Max(s.From, f.from), math.Min(s.To, f.to)
}

// now tells whether the axis holds it.
func (f *frame) now() bool {
	n := f.chart.Now
	return n != nil && *n >= f.from && *n <= f.to
}
