package chart

import "math"

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
