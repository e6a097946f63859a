package ensemble

import (
	"cmp"
	"math"
	"slices"

	"gonum.org/v1/gonum/stat"

	"maltwright/sim/forecast"
)

// Driver is an unknown and how much of a figure's spread goes with it.
type Driver struct {
	Unknown Unknown
	Share   float64 // square of the rank correlation, 0 to 1
	Rises   bool    // the figure rises with it
}

// Drivers ranks the unknowns by how much of the spread of a figure goes with each,
// the most first; those under a hundredth are left out.
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
	figure := ranks(kept, func(i int) float64 { return values[i] })
	var out []Driver
	for k, u := range e.Unknowns {
		r := stat.Correlation(ranks(kept, func(i int) float64 { return e.Draws[i][k] }), figure, nil)
		if share := r * r; share >= 0.01 { // false for NaN, when the figure does not vary
			out = append(out, Driver{u, share, r > 0})
		}
	}
	slices.SortStableFunc(out, func(a, b Driver) int { return cmp.Compare(b.Share, a.Share) })
	return out
}

// ranks gives the rank of each of the members by a value; equals share their mean rank.
func ranks(members []int, value func(int) float64) []float64 {
	order := make([]int, len(members))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(value(members[a]), value(members[b])) })
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
