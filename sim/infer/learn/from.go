package learn

import (
	"math"
	"slices"

	"maltwright/lang/model"
	"maltwright/sim/ensemble"
	"maltwright/sim/infer/evidence"
)

// keyOf is what a row of a house block has in common with the axes of batches.
func keyOf(r model.Row) key { return key{ensemble.Factor(r.Word), r.Of} }

// surest is the least standard deviation that older batches can leave a figure, in those of
// what is usual: of a smaller one rounding would make nothing.
const surest = 1e-4

// goOn begins with what older batches taught: value and error of each figure take the place of
// what is usual. A figure of which no error is said teaches nothing.
func (f *fit) goOn(from *model.Learnt) {
	for _, r := range from.Rows() {
		k := slices.IndexFunc(f.columns, func(c column) bool { return c.shared() && c.key == keyOf(r) })
		if k < 0 || r.Error == nil {
			continue
		}
		c := &f.columns[k]
		c.from = &r
		p := &f.common.Prior[k]
		p.Mean = c.at(r.Value.SI)
		p.SD = max(r.Error.SI/c.slope(p.Mean), surest)
	}
}

// at is where the axis has a value, in standard deviations of what is usual: by halving what
// it may be, as it rises all the way.
func (c column) at(value float64) float64 {
	const most, halvings = 4.0, 50
	low, high := -most, most
	for range halvings {
		if mid := (low + high) / 2; c.axis.Value(mid) < value {
			low = mid
		} else {
			high = mid
		}
	}
	return (low + high) / 2
}

// carried are the figures of older batches that none of these has anything of.
func (f *fit) carried(from *model.Learnt) []Factor {
	var list []Factor
	for _, r := range from.Rows() {
		if r.Error == nil || slices.ContainsFunc(f.columns, func(c column) bool { return c.shared() && c.key == keyOf(r) }) {
			continue
		}
		x := Factor{Which: ensemble.Factor(r.Word), Grain: r.Grain, Kiln: r.Kiln, Value: r.Value.SI, Error: r.Error.SI, Usual: 1, Before: r.Batches}
		x.Open, x.Spread = x.Which.Usual()
		left := x.Error / x.Value
		if x.Which == Thermometer {
			x.Usual, x.Open, x.Spread, left = 0, ensemble.ThermometerOffset, evidence.OffsetSpread, x.Error
		}
		left /= x.Spread
		x.VarianceExplained = max(1-left*left, leastExplained) // it stood in the block, so it was known
		if r.Scatter != nil {
			x.Scatter = r.Scatter.SI
		}
		list = append(list, x)
	}
	return list
}

// fromSaid is how far a scatter that older batches taught counts: for as many as they were.
func (c column) fromSaid() (sd, batches float64, ok bool) {
	if c.from == nil || c.from.Scatter == nil {
		return 0, 0, false
	}
	return c.from.Scatter.SI / c.slope(c.at(c.from.Value.SI)), math.Max(float64(c.from.Batches), leastScattered), true
}
