package chart

import (
	"math"
	"strings"

	"maltwright/lang/source"
)

// Lay gives every bar its place on a sheet. Names that have no room are cut; on a narrow sheet they stand over their bars.
func (b Bars) Lay(o Options, m Measure) *Drawing {
	s := newSheet(o, m)
	s.head(b.Title, b.Sub)
	names, ends := b.sides(s)
	for _, g := range b.Groups {
		s.group(g, names, ends)
	}
	s.foot(b.Note)
	return s.drawing(b.Title, b.Say())
}

// text is what stands at the end of a bar.
func (g BarGroup) text(b Bar) string {
	if b.Text != "" {
		return b.Text
	}
	text := shown(b.Value, g.Places, g.Unit)
	if e := b.slack(); e > 0 {
		text = shown(b.Value, g.Places, "") + " ± " + shown(e, g.Places, g.Unit)
	}
	return text
}

func (b Bar) slack() float64 { return Point{Error: b.Error}.slack() }

// scale holds nothing and all bars with their errors.
func (g BarGroup) scale(most int) Ticks {
	low, high := 0.0, 0.0
	if known(g.Most) {
		low, high = math.Min(0, g.Most), math.Max(0, g.Most)
	}
	for _, b := range g.Bars {
		if known(b.Value) {
			low, high = math.Min(low, b.Value), math.Max(high, b.Value+b.slack())
			if b.Value < 0 {
				low = math.Min(low, b.Value-b.slack())
			}
		}
	}
	return NiceTicks(low, high, most, g.Places)
}

// sides finds how much room names and values ask for.
func (b Bars) sides(s *sheet) (names, ends float64) {
	for _, g := range b.Groups {
		for _, one := range g.Bars {
			names = math.Max(names, s.m.Width(one.Name, s.Letters, false))
			ends = math.Max(ends, s.m.Width(g.text(one), s.Letters, false))
		}
	}
	return names, ends
}

// group draws the bars of a quantity below its name.
func (s *sheet) group(g BarGroup, names, ends float64) {
	l := Lettering{Size: s.Letters, Bold: true, Ink: Letters}
	s.y += s.leading() + 2
	head := strings.TrimPrefix(g.Name+", "+g.Unit, ", ")
	s.put(XY{edge, s.y - 4}, fitted(s.m, strings.TrimSuffix(head, ", "), l.Size, true, s.Width-2*edge), l)
	x0 := edge + 8.0
	if !s.narrow() {
		x0 = edge + math.Min(names, s.Width*0.4) + 12
	}
	x1 := math.Max(s.Width-edge-math.Min(ends, s.Width*0.4)-12, x0+40)
	g.draw(s, math.Round(x0), math.Round(x1))
	s.y += 6
}

// draw draws the bars between two x.
func (g BarGroup) draw(s *sheet, x0, x1 float64) {
	t := g.scale(max(2, int((x1-x0)/60)))
	x := func(v float64) float64 {
		return math.Min(math.Max(x0+(x1-x0)*(v-t.Low())/(t.High()-t.Low()), x0), x1)
	}
	top := s.y + 4
	rows := math.Round(1.6 * s.Letters)
	grid, foot := len(s.marks), top
	for _, b := range g.Bars {
		if s.narrow() {
			s.y += s.leading()
			s.put(XY{x0, s.y - 1}, fitted(s.m, b.Name, s.Letters, false, s.Width-edge-x0), Lettering{Size: s.Letters, Ink: Letters, Halo: true})
		}
		s.y += rows
		foot = s.y + 2
		g.bar(s, b, x, x0, rows)
	}
	lines := s.marks[grid:]
	s.marks = s.marks[:grid:grid]
	s.scale(t, x, top, foot)
	s.marks = append(s.marks, lines...)
}

// bar draws one, its name before and its value behind it.
func (g BarGroup) bar(s *sheet, b Bar, x func(float64) float64, x0, rows float64) {
	mid := s.y - rows/2 + 2
	base := mid + 0.35*s.Letters
	if !s.narrow() {
		name := fitted(s.m, b.Name, s.Letters, false, x0-edge-10)
		s.put(XY{x0 - 8, base}, name, Lettering{Size: s.Letters, Ink: Letters, Align: AtEnd})
	}
	end := x(0)
	if known(b.Value) {
		half := rows/2 - 4
		from, to := x(math.Min(b.Value, 0)), x(math.Max(b.Value, 0))
		s.box(box{from, mid - half, math.Max(to, from+1), mid + half}, Fill{Ink: b.Role.Ink(), Share: 0.75})
		end = math.Max(to, x(b.Value+b.slack()))
		if d := b.slack(); d > 0 {
			low, high, thin := math.Max(x(b.Value-d), x0), x(b.Value+d), Pen{Ink: Letters, Width: 1.25}
			s.line(low, mid, high, mid, thin)
			s.line(low, mid-3, low, mid+3, thin)
			s.line(high, mid-3, high, mid+3, thin)
		}
	}
	text := fitted(s.m, source.Safe(g.text(b)), s.Letters, false, s.Width-edge-end-6)
	s.put(XY{end + 6, base}, text, Lettering{Size: s.Letters, Ink: Letters, Halo: true})
}

// scale draws the lines of a scale and writes its values below.
func (s *sheet) scale(t Ticks, x func(float64) float64, top, foot float64) {
	s.y += s.leading()
	for i, v := range t.At {
		ink := Grid
		if v == 0 {
			ink = Frame
		}
		s.line(x(v), top, x(v), foot, Pen{Ink: ink, Width: 1})
		l, text := Lettering{Size: s.Letters, Ink: Pale, Align: AtMiddle}, t.Label(i)
		half := s.m.Width(text, l.Size, false) / 2
		s.try(XY{math.Min(math.Max(x(v), half+2), s.Width-half-2), s.y - 2}, text, l, box{0, foot, s.Width, s.y + 4})
	}
}

// Say tells in words what the bars show.
func (b Bars) Say() string {
	parts := []string{strings.TrimSuffix(b.Title+": "+b.Sub, ": ")}
	for _, g := range b.Groups {
		list := make([]string, len(g.Bars))
		for i, one := range g.Bars {
			list[i] = one.Name + " " + g.text(one)
		}
		parts = append(parts, g.Name+": "+strings.Join(list, "; "))
	}
	return source.Safe(sentences(parts))
}
