package ensemble

import (
	"cmp"
	"math"

	"gonum.org/v1/gonum/stat"

	"maltwright/lang/sorted"
	"maltwright/sim/forecast"
)

// Driver is an unknown and how much of a figure's spread goes with it.
type Driver struct {
	Unknown Unknown
	Share   float64 // square of the rank correlation, 0 to 1
	Rises   bool    // the figure rises with it
}

// leastShare is the share of a spread under which nothing is said to drive it, and byChance
// the quantile of the standard normal distribution that a rank correlation passes by chance
// once in a hundred, either way.
const leastShare, byChance = 0.01, 2.5758

// alike is how near the 10 and the 90 % point of a figure lie, as a part of it, where it has
// no spread to speak of: what is left is of the arithmetic.
const alike = 1e-3

// Drivers ranks the unknowns by how much of the spread of a figure goes with each,
// the most first. Left out are those under a hundredth, and those whose rank correlation
// unrelated draws would pass once in a hundred: z²/(n − 1) of n members, about 0.07 of 100. A
// figure of which eight of ten members have the same has no drivers.
func (e *Ensemble) Drivers(of func(*forecast.Totals) float64) []Driver {
	values := e.figure(of)
	var kept []int
	for i, v := range values {
		if !math.IsNaN(v) {
			kept = append(kept, i)
		}
	}
	if len(kept) < 10 {
		return nil
	}
	if s := SpreadOf(values); !(s.P90-s.P10 > alike*math.Abs(s.P50)) {
		return nil
	}
	least := max(leastShare, byChance*byChance/float64(len(kept)-1))
	figure := ranks(kept, func(i int) float64 { return values[i] })
	var out []Driver
	for k, u := range e.Unknowns {
		r := stat.Correlation(ranks(kept, func(i int) float64 { return e.Draws[i][k] }), figure, nil)
		if share := r * r; share >= least { // false for NaN, when the figure does not vary
			out = append(out, Driver{u, share, r > 0})
		}
	}
	sorted.Stable(out, func(a, b Driver) int { return cmp.Compare(b.Share, a.Share) })
	return out
}

// ranks gives the rank of each of the members by a value; equals share their mean rank.
func ranks(members []int, value func(int) float64) []float64 {
	order := make([]int, len(members))
	for i := range order {
		order[i] = i
	}
	sorted.Stable(order, func(a, b int) int { return cmp.Compare(value(members[a]), value(members[b])) })
	out := make([]float64, len(members))
	for i := 0; i < len(order); {
		j := i
		for j < len(order) && value(members[order[j]]) == value(members[order[i]]) {
			j++
		}
		for k := i; k < j; k++ {
			out[order[k]] = float64(i+j-1) / 2
		}
		i = j
	}
	return out
}
