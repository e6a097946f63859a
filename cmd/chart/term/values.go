package term

import (
	"math"
	"slices"

	"maltwright/cmd/chart"
)

// axis is that of the values of a panel: from low to high in even steps, each of so many rows.
type axis struct {
	scale
	ticks chart.Ticks
	each  int // rows between two labels
}

// mostSteps is how many steps an axis has at the most.
const mostSteps = 6

// axisOf chooses the axis of a panel for so many rows, or a few less.
func axisOf(p chart.Panel, rows, down int) axis {
	low, high := reach(p)
	t := chart.NiceTicks(low, high, 1+min(mostSteps, (rows-1)/2), p.Places)
	n := len(t.At) - 1
	each := max(2, (rows-1)/n)
	return axis{scale{t.Low(), t.High(), n*each + 1, down}, t, each}
}

// label is that of a row from the top, "" where it has none.
func (a axis) label(row int) string {
	fromFoot := a.rows - 1 - row
	if fromFoot%a.each != 0 {
		return ""
	}
	return a.ticks.Label(fromFoot / a.each)
}

// mostValue is what no axis goes beyond: its labels would leave no room.
const mostValue = 1e9

// reach is from the least to the greatest value of a panel. A reading in doubt widens it by no more than half:
// one far off is shown at the edge.
func reach(p chart.Panel) (low, high float64) {
	if f := p.Field; f != nil {
		return f.Depth[0], f.Depth[len(f.Depth)-1]
	}
	low, high = math.Inf(1), math.Inf(-1)
	if p.Least != 0 || p.Most != 0 {
		low, high = p.Least, p.Most
	}
	take := func(list ...float64) {
		for _, v := range list {
			if math.Abs(v) < mostValue { // not NaN
				low, high = min(low, v), max(high, v)
			}
		}
	}
	for _, l := range p.Lines {
		take(l.Value...)
	}
	for _, b := range p.Bands {
		take(slices.Concat(b.Low, b.Middle, b.High)...)
	}
	for _, g := range p.Gates {
		take(g.Value)
	}
	for _, x := range p.Points {
		if !x.Doubted {
			take(x.Value)
		}
	}
	for _, x := range p.Points {
		if half := (high - low) / 2; x.Doubted && (x.Value >= low-half && x.Value <= high+half || math.IsInf(low, 1)) {
			take(x.Value)
		}
	}
	if math.IsInf(low, 1) {
		return 0, 1
	}
	return low, high
}
