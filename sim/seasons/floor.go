package seasons

import (
	"maltwright/lang/model"
	"maltwright/lang/vocabulary"
	"maltwright/sim/grain"
)

// floor makes the figures of growth.
func (r *record) floor(s *Season) {
	if bed := r.temperatures(vocabulary.PlaceBed); len(bed) > 0 {
		s.Bed = Figure{bed[0], Measured}
		for _, t := range bed {
			s.Bed.Value = max(s.Bed.Value, t)
		}
	}
	var counts []count
	for _, x := range r.b.Readings {
		if model.Rub(x) != "" {
			s.Rub = model.Rub(x)
		}
		if c, ok := r.counted(x); ok {
			counts = append(counts, c)
		}
	}
	if n := len(counts); n > 0 {
		s.Acrospire, s.ThreeQuarters = Figure{counts[n-1].middle(), Measured}, threeQuarters(counts)
	}
	grown := r.last(func(x *model.Weighed) bool { return !x.Clean && r.ends(x.After, model.GerminateStage) })
	if s.Green = r.weight(grown); grown != nil {
		s.Floor = between(s.Cast, r.since(grown.When()))
	}
}

// count is a count of the acrospire.
type count struct {
	at      float64 // s from the beginning
	grown   float64 // kernels that have a shoot
	kernels []float64
}

// counted takes a reading as a count of the acrospire in which something grows.
func (r *record) counted(x model.Reading) (c count, ok bool) {
	at := r.since(x.When())
	if c, ok = countOf(x); !ok || !at.Known() {
		return c, false
	}
	c.at = at.Value
	return c, true
}

// Middle is the acrospire of the middle kernel of a count, as a share of the kernel: what a process asks of.
// It is false of another reading, and of a count in which nothing grows.
func Middle(x model.Reading) (float64, bool) {
	c, ok := countOf(x)
	if !ok {
		return 0, false
	}
	return c.middle(), true
}

func countOf(x model.Reading) (c count, ok bool) {
	shoots := model.CountOf(x, model.Acrospire)
	if shoots == nil || len(shoots.Kernels) != grain.Overgrown+1 {
		return c, false
	}
	for class, n := range shoots.Kernels {
		c.kernels = append(c.kernels, n.SI)
		if class > grain.NoGrowth {
			c.grown += n.SI
		}
	}
	return c, c.grown > 0
}

// classWidth is how much of the kernel a class of the count spans.
const classWidth = 0.25

// middle gives the acrospire of the middle one of the kernels that grow, as a share of
// the kernel: the kernels of a class are taken to lie evenly over its quarter of the
// kernel, and those that are overgrown over the next beyond it. It is the measure that
// acrospire has in a process.
func (c count) middle() float64 {
	before, half := 0.0, c.grown/2
	for class := grain.ToQuarter; class <= grain.Overgrown; class++ {
		if n := c.kernels[class]; n > 0 && before+n >= half {
			return classWidth * (float64(class-grain.ToQuarter) + (half-before)/n)
		}
		before += c.kernels[class]
	}
	return 0 // not reached: all together are more than a half
}

// past gives the share of the kernels that grow whose shoot is past three quarters.
func (c count) past() float64 {
	return (c.kernels[grain.ToFull] + c.kernels[grain.Overgrown]) / c.grown
}

// threeQuarters gives when the acrospire had come to 3/4 in half of the kernels that
// grow, s from the beginning: between the last count before and the first at which
// it had, on a straight line through the shares of kernels past 3/4. If it had at the
// first count already, that is a bound from above; if it had not at the last, a bound
// from below.
func threeQuarters(counts []count) Figure {
	const half = 0.5
	for i, c := range counts {
		if c.past() < half {
			continue
		}
		if i == 0 {
			return Figure{c.at, Under}
		}
		b := counts[i-1]
		return Figure{b.at + (c.at-b.at)*(half-b.past())/(c.past()-b.past()), Measured}
	}
	return Figure{counts[len(counts)-1].at, Over}
}
