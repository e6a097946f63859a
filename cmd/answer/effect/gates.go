package effect

import (
	"fmt"

	"maltwright/cmd/answer/outlook"
)

// gates matches those of two forecasts: of one stage that ask the same, in order, then of
// stages of one kind, whose number may be another where one came or went, then
// what is left of a stage. A gate that is gone comes where it stood.
func gates(a, b []outlook.Gate) (out []Gates) {
	partner, taken := matched(a, b)
	i := 0
	gone := func(end int) {
		for ; i < end; i++ {
			if !taken[i] {
				out = append(out, Gates{Old: &a[i]})
			}
		}
	}
	for j, k := range partner {
		if k < 0 {
			out = append(out, Gates{New: &b[j]})
			continue
		}
		gone(k)
		out = append(out, Gates{&a[k], &b[j]})
	}
	gone(len(a))
	return out
}

// matched gives for each of the new gates the index of its old one, or -1, and which of
// the old are taken.
func matched(a, b []outlook.Gate) (partner []int, taken []bool) {
	partner, taken = make([]int, len(b)), make([]bool, len(a))
	for j := range partner {
		partner[j] = -1
	}
	for _, key := range []func(outlook.Gate) string{
		func(g outlook.Gate) string { return fmt.Sprint(g.Called(), g.Hold, " ", g.Text) },
		func(g outlook.Gate) string { return fmt.Sprint(g.Stage, g.Hold, " ", g.Text) },
		func(g outlook.Gate) string { return fmt.Sprint(g.Called(), g.Hold) },
	} {
		left := map[string][]int{}
		for i := range a {
			if !taken[i] {
				left[key(a[i])] = append(left[key(a[i])], i)
			}
		}
		for j := range b {
			if q := left[key(b[j])]; partner[j] < 0 && len(q) > 0 {
				partner[j], taken[q[0]], left[key(b[j])] = q[0], true, q[1:]
			}
		}
	}
	return partner, taken
}
