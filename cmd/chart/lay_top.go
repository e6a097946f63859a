package chart

import (
	"math"

	"maltwright/lang/source"
)

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

// nowRow writes when it is over the line of now, and at its sides, where there is room, what has been and what is foretold.
func (f *frame) nowRow(base float64) {
	l, side := Lettering{Size: f.Letters, Bold: true, Ink: Today, Align: AtMiddle}, Lettering{Size: f.Letters, Ink: Pale}
	text := "now, " + f.clock.Say(*f.chart.Now)
	half := f.m.Width(text, l.Size, true) / 2
	x := math.Min(math.Max(f.x(*f.chart.Now), edge+half), f.Width-edge-half)
	f.put(XY{x, base}, text, l)
	f.try(XY{x + half + 14, base}, "foretold", side, f.row(base))
	side.Align = AtEnd
	f.try(XY{x - half - 14, base}, "so far", side, f.row(base))
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
