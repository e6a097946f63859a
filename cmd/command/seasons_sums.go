package command

import (
	"slices"
	"strings"

	"gonum.org/v1/gonum/stat"

	"maltwright/sim/seasons"
)

// seasonSum is a column that sums the batches up.
type seasonSum struct {
	head string
	of   func([]float64) float64
	more bool // it is a difference
}

// seasonSums are the columns behind so many batches, or more.
var seasonSums = [...][]seasonSum{
	2: {{"change", func(v []float64) float64 { return v[1] - v[0] }, true}},
	3: {{"mean", func(v []float64) float64 { return stat.Mean(v, nil) }, false}, {"lowest", slices.Min[[]float64], false}, {"highest", slices.Max[[]float64], false}},
}

// cell sums figures up, of at least two batches. A bound among them would pull it to
// one side, and leaves it out.
func (s seasonSum) cell(u seasonUnits, k seasonKind, all []seasons.Figure) string {
	var values []float64
	mark := ""
	for _, f := range all {
		switch {
		case f.Known():
			values = append(values, u.shown(k, f.Value))
			if f.Standing == seasons.Reckoned {
				mark = reckonedMark
			}
		case f.Standing != seasons.Missing:
			return ""
		}
	}
	if len(values) < 2 {
		return ""
	}
	v := s.of(values)
	text := decimals(v, u.digits(k, values[0]))
	if s.more {
		if text = strings.TrimPrefix(text, "-"); strings.Trim(text, "0.") != "" {
			text = map[bool]string{true: "+", false: "-"}[v > 0] + text
		}
	}
	return mark + text
}
