package chart

import (
	"math"
	"slices"

	"maltwright/lang/source"
)

// Lay gives everything in a chart its place on a sheet. No two texts lie over one another, and all lies
// within the sheet. A name that has no room is cut, or left out where less than three letters of it would stand; Table and Say have it whole.
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
	from, to float64 // s
	x0, x1   float64 // px, where from and to lie
	tops     []float64
	feet     []float64 // top and foot of each panel
}

// x is where a time lies.
func (f *frame) x(at float64) float64 {
	return f.x0 + (f.x1-f.x0)*(at-f.from)/(f.to-f.from)
}

// longest is the longest axis that a chart may have, s: thirty years.
const longest = 30 * 365 * day

// ends are those of the axis: as they were asked for, or those of what is drawn.
func (c Chart) ends() (from, to float64) {
	from, to = c.From, c.To
	if !known(from) || !known(to) || !(to > from) {
		from, to = math.Inf(1), math.Inf(-1)
		for _, p := range c.Panels {
			p.times(func(at float64) {
				if known(at) {
					from, to = math.Min(from, at), math.Max(to, at)
				}
			})
		}
	}
	from, to = math.Max(from, -longest), math.Min(to, longest)
	switch {
	case from > to:
		return 0, day
	case to-from < minute:
		return from - 30*minute, to + 30*minute
	}
	return from, to
}

// times gives all the times of a panel.
func (p Panel) times(each func(float64)) {
	all := func(list []float64) {
		for _, at := range list {
			each(at)
		}
	}
	for _, l := range p.Lines {
		all(l.At)
	}
	for _, b := range p.Bands {
		all(b.At)
	}
	for _, q := range p.Points {
		each(q.At)
	}
	if p.Field != nil {
		all(p.Field.At)
	}
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

// names writes what the axis of time is divided into over the first panel: the stages, and what has been and what is foretold.
func (f *frame) names() {
	if f.now() {
		f.y += f.leading()
		f.nowRow(f.y - 5)
	}
	if len(f.chart.Stages) > 0 {
		f.stages()
	}
}

// nowRow writes when it is over the line of now, and at its sides what has been and what is foretold.
func (f *frame) nowRow(base float64) {
	l, side := Lettering{Size: f.Letters, Bold: true, Ink: Today, Align: AtMiddle}, Lettering{Size: f.Letters, Ink: Pale}
	text, past, coming := "now, "+f.clock.Say(*f.chart.Now), "so far", "foretold"
	half := f.m.Width(text, l.Size, true) / 2
	left, right := f.m.Width(past, side.Size, false)+half+14, f.m.Width(coming, side.Size, false)+half+14
	if left+right > f.Width-2*edge {
		left, right = half, half
	}
	x := math.Min(math.Max(f.x(*f.chart.Now), edge+left), f.Width-edge-right)
	f.put(XY{x, base}, text, l)
	f.try(XY{x + half + 14, base}, coming, side, f.row(base))
	side.Align = AtEnd
	f.try(XY{x - half - 14, base}, past, side, f.row(base))
}

// stages writes the names of stages, each over its own; those that are wider than their stage in a second row.
func (f *frame) stages() {
	f.y += f.leading()
	first := f.y - 5
	var wide []Span
	for _, st := range f.chart.Stages {
		a, b := f.clip(st)
		if name := source.Safe(st.Name); b > a && f.m.Width(name, f.Letters, false) > f.x(b)-f.x(a)-6 {
			wide = append(wide, st)
			continue
		}
		f.stage(st, first)
	}
	second := false
	for _, st := range wide {
		if f.over(st, first+f.leading()) {
			second = true
			continue
		}
		f.stage(st, first)
	}
	if second {
		f.y += f.leading()
	}
}

// over writes a whole name over its stage, wider than that, where there is room.
func (f *frame) over(st Span, base float64) bool {
	a, b := f.clip(st)
	l, name := Lettering{Size: f.Letters, Ink: Letters, Align: AtMiddle}, source.Safe(st.Name)
	half := f.m.Width(name, l.Size, false)/2 + 3
	x := math.Min(math.Max((f.x(a)+f.x(b))/2, edge+half), f.Width-edge-half)
	return f.try(XY{x, base}, name, l, f.row(base))
}

// row is the room of a line of text.
func (f *frame) row(base float64) box {
	return box{edge - 1, base - 2*f.Letters, f.Width - edge + 1, base + f.Letters}
}

// stage writes the name of a stretch over it, as much of it as there is room for.
func (f *frame) stage(st Span, base float64) {
	a, b := f.clip(st)
	if !(b > a) {
		return
	}
	l := Lettering{Size: f.Letters, Ink: Letters, Align: AtMiddle}
	name := fitted(f.m, st.Name, l.Size, false, f.x(b)-f.x(a)-6)
	f.try(XY{(f.x(a) + f.x(b)) / 2, base}, name, l, f.row(base))
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
