package chart

import (
	"math"
	"slices"
)

// limits are the ends of the scale of a field.
func (f *Field) limits() (low, high float64) {
	if f.Low < f.High {
		return f.Low, f.High
	}
	low, high = math.Inf(1), math.Inf(-1)
	for _, row := range f.Value {
		for _, v := range row {
			if known(v) {
				low, high = math.Min(low, v), math.Max(high, v)
			}
		}
	}
	return low, high
}

// scale are the bounds of the steps of a field.
func (f *Field) scale() Ticks {
	low, high := f.limits()
	return NiceTicks(low, high, Steps+1, f.Places)
}

// step is the colour of the i-th of n steps: they are spread over all that there are.
func step(i, n int) Ink {
	if n < 2 {
		return Step(Steps / 2)
	}
	return Step(int(math.Round(float64(i) * (Steps - 1) / float64(n-1))))
}

// value is the field at a time and a depth, between its known values in proportion; NaN outside them.
func (f *Field) value(at, depth float64) float64 {
	i, u := place01(f.At, at)
	j, v := place01(f.Depth, f.ontoLayers(depth))
	if i < 0 || j < 0 {
		return math.NaN()
	}
	mix := func(a, b, w float64) float64 {
		switch w {
		case 0:
			return a
		case 1:
			return b
		}
		return a + w*(b-a)
	}
	row := func(j int) float64 { return mix(f.get(j, i), f.get(j, i+1), u) }
	if v == 0 {
		return row(j)
	}
	return mix(row(j), row(j+1), v)
}

// ontoLayers is a depth, and that of the lowest layer where it is less than half a layer below its middle.
func (f *Field) ontoLayers(depth float64) float64 {
	if d := f.Depth; len(d) > 1 && depth < d[0] && depth >= 0 && d[0]-depth <= (d[1]-d[0])*0.55 {
		return d[0]
	}
	return depth
}

func (f *Field) get(j, i int) float64 {
	if j >= len(f.Value) || i >= len(f.Value[j]) {
		return math.NaN()
	}
	return f.Value[j][i]
}

// place01 finds x in an ascending list: between i and i+1, at a share of the way; -1 outside.
func place01(list []float64, x float64) (i int, share float64) {
	n := len(list)
	if n == 0 || !(x >= list[0] && x <= list[n-1]) {
		return -1, 0
	}
	i, _ = slices.BinarySearch(list, x)
	if i == 0 || i < n && list[i] == x {
		return i, 0
	}
	i--
	return i, (x - list[i]) / (list[i+1] - list[i])
}
