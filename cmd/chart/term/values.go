package term

import (
	"math"
	"slices"

	"maltwright/cmd/chart"
	"maltwright/lang/quantity"
)

// axis is that of the values of a panel: from low to high in even steps, each of so many rows.
type axis struct {
	scale
	step   float64
	places int
	each   int // rows between two labels
}

// mostSteps is how many steps an axis has at the most.
const mostSteps = 6

// axisOf chooses the axis of a panel for so many rows, or a few more or less.
func axisOf(p chart.Panel, rows, down int) axis {
	low, high := reach(p)
	if high-low < 1e-9*max(1, math.Abs(high)) { // all of one value
		low, high = low-0.5*math.Pow10(-p.Places), high+0.5*math.Pow10(-p.Places)
	}
	most := max(1, min(mostSteps, (rows-1)/2))
	step := niceAbove((high - low) / float64(most))
	for math.Ceil(high/step-1e-9)-math.Floor(low/step+1e-9) > float64(most) {
		step = niceAbove(step * 1.01)
	}
	from, to := math.Floor(low/step+1e-9), math.Ceil(high/step-1e-9)
	n := int(to - from)
	each := max(2, (rows-1)/n)
	return axis{scale{from * step, to * step, n*each + 1, down}, step, placesOf(step), each}
}

// niceAbove is the least of 1, 2 or 5 times a power of ten that is not below a number.
func niceAbove(x float64) float64 {
	power := math.Pow10(int(math.Floor(math.Log10(x))))
	for _, f := range []float64{1, 2, 5, 10} {
		if f*power >= x*(1-1e-9) {
			return f * power
		}
	}
	return 10 * power
}

// placesOf is how many decimals a step needs.
func placesOf(step float64) int { return max(0, -int(math.Floor(math.Log10(step)+1e-9))) }

// label is that of a row from the top, "" where it has none.
func (a axis) label(row int) string {
	fromFoot := a.rows - 1 - row
	if fromFoot%a.each != 0 {
		return ""
	}
	return quantity.Fixed(a.low+a.step*float64(fromFoot/a.each), a.places)
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
