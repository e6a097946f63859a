package term

import (
	"math"
	"slices"

	"maltwright/cmd/chart"
	"maltwright/lang/quantity"
)

// field fills the grid with the shades of a quantity, by depth and time.
func (p *plot) field(f chart.Field) {
	low, high := f.Low, f.High
	if low == 0 && high == 0 {
		low, high = ends(f)
	}
	for column := range p.width {
		for row := range p.height {
			v := fieldAt(f, p.times.at(column*p.across), p.values.value(row*p.down+p.down/2))
			if math.IsNaN(v) {
				continue
			}
			x := p.at(column, row)
			x.sign, x.ink = p.shades[shade(v, low, high, len(p.shades))], ""
		}
	}
	p.scaleOf(f, low, high)
}

// shade is which of so many a value has.
func shade(v, low, high float64, n int) int {
	if !(high > low) {
		return 0
	}
	return max(0, min(int((v-low)/(high-low)*float64(n)), n-1))
}

func ends(f chart.Field) (low, high float64) {
	low, high = math.Inf(1), math.Inf(-1)
	for _, row := range f.Value {
		for _, v := range row {
			if !math.IsNaN(v) {
				low, high = min(low, v), max(high, v)
			}
		}
	}
	return low, high
}

// fieldAt is the value nearest to a time and a depth, NaN outside of the times.
func fieldAt(f chart.Field, at, depth float64) float64 {
	if len(f.At) == 0 || at < f.At[0] || at > f.At[len(f.At)-1] {
		return math.NaN()
	}
	return f.Value[nearest(f.Depth, depth)][nearest(f.At, at)]
}

// nearest is the index of what is nearest in an ascending list.
func nearest(list []float64, x float64) int {
	i, _ := slices.BinarySearch(list, x)
	switch {
	case i == len(list):
		return i - 1
	case i > 0 && x-list[i-1] < list[i]-x:
		return i - 1
	}
	return i
}

// scaleOf tells what the shades mean.
func (p *plot) scaleOf(f chart.Field, low, high float64) {
	n := len(p.shades)
	if f.Name != "" {
		p.enter("", "", f.Name+":")
	}
	for i, sign := range p.shades {
		from := quantity.Fixed(low+(high-low)*float64(i)/float64(n), f.Places)
		to := quantity.Fixed(low+(high-low)*float64(i+1)/float64(n), f.Places)
		p.enter(sign, "", amount(from+p.ranged+to, f.Unit))
	}
}
