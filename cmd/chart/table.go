package chart

import (
	"math"
	"slices"
	"strings"

	"maltwright/lang/quantity"
	"maltwright/lang/source"
)

// Table is figures of a panel as a table, for those who cannot see the chart. All rows are as long as the head.
type Table struct {
	Name string
	Head []string
	Rows [][]string
}

// none stands where there is no figure.
const none = "—"

// Tables are the figures of a chart: for each panel a table by time, some two dozen rows of it with the ends
// of stages among them, and one of what was measured.
func (c Chart) Tables() (list []Table) {
	times := c.rows()
	for _, p := range c.Panels {
		if t := p.table(times, c.Clock()); len(t.Head) > 1 {
			list = append(list, t)
		}
		if len(p.Points) > 0 && p.Field == nil {
			list = append(list, p.readings(c.Clock()))
		}
	}
	return list
}

// rows are the times of a table.
func (c Chart) rows() []float64 {
	from, to := c.ends()
	times := []float64{from, to}
	add := func(list ...float64) {
		for _, at := range list {
			if at > from && at < to {
				times = append(times, at)
			}
		}
	}
	k := c.Clock()
	ticks := k.Ticks(from, to, (to-from)/16)
	for _, t := range ticks {
		add(t.At)
	}
	if k.ByDay() && len(ticks) == 0 {
		days := k.Days(from, to)
		for i := 0; i < len(days); i += 1 + len(days)/16 {
			add(days[i].From)
		}
	}
	for _, s := range c.Stages {
		add(s.From, s.To)
	}
	if c.Now != nil {
		add(*c.Now)
	}
	slices.Sort(times)
	return slices.Compact(times)
}

// column is a column of a table: what stands in it at a time.
type column struct {
	head string
	at   func(float64) string
}

func (p Panel) table(times []float64, k Clock) Table {
	columns := p.columns()
	t := Table{Name: source.Safe(p.title()), Head: []string{"time"}}
	for _, c := range columns {
		t.Head = append(t.Head, source.Safe(c.head))
	}
	for _, at := range times {
		row := []string{k.Say(at)}
		for _, c := range columns {
			row = append(row, c.at(at))
		}
		if slices.ContainsFunc(row[1:], func(text string) bool { return text != none }) {
			t.Rows = append(t.Rows, row)
		}
	}
	return t
}

// title is the name of a panel with its unit.
func (p Panel) title() string { return strings.Trim(p.Name+", "+p.Unit, ", ") }

func (p Panel) columns() (list []column) {
	if p.Field != nil {
		return p.fieldColumns()
	}
	for _, l := range p.Lines {
		list = append(list, column{p.of(l.Name), func(at float64) string { return figure(sampleAt(l.At, l.Value, at, l.Step), p.Places) }})
	}
	for _, b := range p.Bands {
		list = append(list, column{p.of(b.Name), func(at float64) string {
			low, high := sampleAt(b.At, b.Low, at, false), sampleAt(b.At, b.High, at, false)
			if !known(low) || !known(high) {
				return none
			}
			return figure(low, p.Places) + " to " + figure(high, p.Places)
		}})
		if b.Middle != nil {
			list = append(list, column{"its middle", func(at float64) string { return figure(sampleAt(b.At, b.Middle, at, false), p.Places) }})
		}
	}
	return list
}

// of is what a line of the panel is called: by its own name, or else by that of the panel.
func (p Panel) of(name string) string {
	if name == "" {
		return p.Name
	}
	return name
}

// fieldColumns are five depths of a field, from the foot up.
func (p Panel) fieldColumns() (list []column) {
	f := p.Field
	n := len(f.Depth)
	var taken []int
	for i := range 5 {
		taken = append(taken, max(n-1, 0)*i/4)
	}
	for _, j := range slices.Compact(taken) {
		if j < n && known(f.Depth[j]) {
			head := "at " + shown(f.Depth[j], p.Places, p.Unit)
			list = append(list, column{head, func(at float64) string { return figure(f.value(at, f.Depth[j]), f.Places) }})
		}
	}
	return list
}

// readings are what was measured.
func (p Panel) readings(k Clock) Table {
	t := Table{Name: source.Safe(strings.TrimPrefix(p.title()+", measured", ", ")), Head: []string{"time", "what", "value", "may be wrong by", "doubt"}}
	for _, q := range p.Points {
		wrong, doubt := none, ""
		if e := q.slack(); e > 0 {
			wrong = figure(e, p.Places)
		}
		if q.Doubted {
			doubt = "in doubt"
		}
		t.Rows = append(t.Rows, []string{k.Say(q.At), source.Safe(p.of(q.Name)), figure(q.Value, p.Places), wrong, doubt})
	}
	return t
}

func figure(v float64, places int) string {
	if !known(v) {
		return none
	}
	return quantity.Fixed(v, max(0, places))
}

// sampleAt is a course at a time, between its points in proportion, or of steps the last one; NaN outside it.
func sampleAt(at, value []float64, when float64, step bool) float64 {
	n := min(len(at), len(value))
	i, share := place01(at[:n], when)
	switch {
	case i < 0:
		return math.NaN()
	case share == 0:
		for i+1 < n && at[i+1] == when { // of several at one time the last holds from then on
			i++
		}
		return value[i]
	case step:
		return value[i]
	}
	return onWay(at[i], value[i], at[i+1], value[i+1], when)
}

// Tables are the figures of bars: a table for each group.
func (b Bars) Tables() (list []Table) {
	for _, g := range b.Groups {
		t := Table{Name: source.Safe(g.Name), Head: []string{"of", "value"}}
		for _, one := range g.Bars {
			t.Rows = append(t.Rows, []string{source.Safe(one.Name), source.Safe(g.text(one))})
		}
		list = append(list, t)
	}
	return list
}
