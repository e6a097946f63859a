package seasons

import (
	"cmp"
	"slices"

	"gonum.org/v1/gonum/stat"

	"maltwright/lang/model"
)

// Mean is that of one figure of several batches. Like every sum of them it is missing
// where fewer than two are known, and where a bound among them would pull it to one side; what cannot be is left out of it, and
// it is reckoned where one of them is.
func Mean(all []Figure) Figure {
	return sum(all, func(v []float64) float64 { return stat.Mean(v, nil) })
}

// Lowest is the least of them.
func Lowest(all []Figure) Figure { return sum(all, slices.Min[[]float64]) }

// Highest is the greatest of them.
func Highest(all []Figure) Figure { return sum(all, slices.Max[[]float64]) }

// Change is what the last of them has more than the first.
func Change(all []Figure) Figure {
	return sum(all, func(v []float64) float64 { return v[len(v)-1] - v[0] })
}

func sum(all []Figure, of func([]float64) float64) Figure {
	var values []float64
	standing := Measured
	for _, f := range all {
		switch {
		case f.Known():
			values = append(values, f.Value)
			if f.Standing == Reckoned {
				standing = Reckoned
			}
		case f.Standing == Over || f.Standing == Under:
			return Figure{}
		}
	}
	if len(values) < 2 {
		return Figure{}
	}
	return Figure{of(values), standing}
}

// ByBeginning orders batches by when they began; those that do not say come last.
func ByBeginning(a, b *model.Batch) int {
	if !a.Began.IsZero() && !b.Began.IsZero() {
		return a.Began.Compare(b.Began.Time)
	}
	says := map[bool]int{true: 1}
	return cmp.Compare(says[!b.Began.IsZero()], says[!a.Began.IsZero()])
}
