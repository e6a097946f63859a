package chart

import "math"

// least is the shortest step between ticks that leaves room for labels of a width, s.
func (f *frame) least(label float64) float64 {
	return (label + 12) * (f.to - f.from) / (f.x1 - f.x0)
}

// timeTicks are the ticks of the axis of time that have a label: by the clock its hours, or days and hours from the start.
func (f *frame) timeTicks() []Tick {
	if f.clock.ByDay() {
		return f.clock.Ticks(f.from, f.to, f.least(f.m.Width("00:00", f.Letters, false)))
	}
	for step := 0.0; ; {
		ticks := f.clock.Ticks(f.from, f.to, math.Max(step, f.least(0)))
		if len(ticks) < 2 || f.apart(ticks) {
			return ticks
		}
		step = (ticks[1].At - ticks[0].At) * 1.01
	}
}

// apart tells whether the labels of all ticks have room beside one another.
func (f *frame) apart(ticks []Tick) bool {
	end := math.Inf(-1)
	for _, t := range ticks {
		half := f.m.Width(t.Text, f.Letters, false)/2 + 5
		if f.x(t.At)-half < end {
			return false
		}
		end = f.x(t.At) + half
	}
	return true
}

// timeAxis writes the times below the last panel.
func (f *frame) timeAxis() {
	if len(f.chart.Panels) == 0 {
		return
	}
	l := Lettering{Size: f.Letters, Ink: Letters, Align: AtMiddle}
	if ticks := f.timeTicks(); len(ticks) > 0 {
		f.y += f.leading() + f.clear()
		for _, t := range ticks {
			f.tick(t.At, 4)
			f.try(f.inside(f.x(t.At), t.Text, l), t.Text, l, f.row(f.y-3))
		}
	}
	if f.clock.ByDay() {
		if len(f.timeTicks()) == 0 {
			f.y += f.clear()
		}
		f.dayRow()
	} else {
		f.y += f.leading()
		text := "days and hours"
		if f.chart.Since != "" {
			text += " from " + f.chart.Since
		}
		l.Align, l.Ink = AtStart, Pale
		f.put(XY{f.x0, f.y - 3}, fitted(f.m, text, l.Size, false, f.Width-edge-f.x0), l)
	}
	f.y += 4
}

// clear is the room between the foot of a panel and a row of text, in which no value at the left stands.
func (f *frame) clear() float64 { return math.Round(0.5 * f.Letters) }

// inside is the point of a label in the row, moved so far that it lies on the sheet.
func (f *frame) inside(x float64, text string, l Lettering) XY {
	half := f.m.Width(text, l.Size, l.Bold) / 2
	return XY{math.Min(math.Max(x, edge+half), f.Width-edge-half), f.y - 3}
}

// tick is a stroke of a length below each panel.
func (f *frame) tick(at, long float64) {
	for _, foot := range f.feet {
		f.line(f.x(at), foot, f.x(at), foot+long, Pen{Ink: Frame, Width: 1})
	}
}

// forms are how a day is written, the longest first.
var forms = []string{"Mon 2 Jan", "Mon 2", "2"}

// dayRow writes the days below the hours: each in the middle of its own, or every so many days at its midnight where they are too
// narrow for that.
func (f *frame) dayRow() {
	days := f.clock.Days(f.from, f.to)
	f.y += f.leading()
	wide := f.x(f.from+day) - f.x(f.from) - 8
	for _, form := range forms {
		if len(days) > 2 && f.widest(days, form) > wide {
			continue
		}
		for _, d := range days {
			f.dayName(d, form)
		}
		if form == "2" {
			f.month(days)
		}
		return
	}
	f.sparseDays(days)
}

// month writes which it is, below days that do not tell.
func (f *frame) month(days []Span) {
	text, last := f.clock.when(days[0].From).Format("January 2006"), f.clock.when(days[len(days)-1].From).Format("January 2006")
	if text != last {
		text += " to " + last
	}
	f.y += f.leading()
	f.put(XY{f.x0, f.y - 3}, fitted(f.m, text, f.Letters, false, f.Width-edge-f.x0), Lettering{Size: f.Letters, Ink: Pale})
}

func (f *frame) widest(days []Span, form string) (wide float64) {
	for _, d := range days {
		wide = math.Max(wide, f.m.Width(f.clock.when(d.From).Format(form), f.Letters, false))
	}
	return wide
}

// dayName writes a day in the middle of it, shorter where only a part of it lies on the axis.
func (f *frame) dayName(d Span, form string) {
	if d.From >= f.from {
		f.tick(d.From, 7)
	}
	a, b := f.clip(d)
	l := Lettering{Size: f.Letters, Ink: Letters, Align: AtMiddle}
	for _, shorter := range forms {
		if len(shorter) > len(form) {
			continue
		}
		text := f.clock.when(d.From).Format(shorter)
		if f.m.Width(text, l.Size, false) > f.x(b)-f.x(a)-4 && b-a < f.to-f.from {
			continue
		}
		if f.try(f.inside((f.x(a)+f.x(b))/2, text, l), text, l, f.row(f.y-3)) {
			return
		}
	}
}

// sparseDays writes every second day, or every week, and so on, each at its midnight.
func (f *frame) sparseDays(days []Span) {
	l := Lettering{Size: f.Letters, Ink: Letters, Align: AtMiddle}
	form := "2 Jan"
	if f.to-f.from > 300*day {
		form = "2 Jan 2006"
	}
	every, wide := 1, f.widest(days, form)+10
	for _, n := range []int{2, 7, 14, 28, 91, 364, 1820} {
		every = n
		if f.x(f.from+float64(n)*day)-f.x(f.from) > wide {
			break
		}
	}
	for i := 0; i < len(days); i += every {
		if days[i].From < f.from {
			i++
			if i >= len(days) {
				return
			}
		}
		f.tick(days[i].From, 7)
		text := f.clock.when(days[i].From).Format(form)
		f.try(f.inside(f.x(days[i].From), text, l), text, l, f.row(f.y-3))
	}
}
