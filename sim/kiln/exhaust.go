package kiln

import (
	"math"

	"maltwright/sim/air"
)

// Trace has the bed write down the exhaust that leaves it, from now on.
func (b *Bed) Trace() { b.traced = true }

// Exhaust is the air that has left the kiln since [Bed.Trace], behind what is led back and behind its heat exchanger, in
// times since New. It is the course of the steps that the bed took, as [Intake.Thinned] makes it.
func (b *Bed) Exhaust() Intake { return b.trace.Thinned() }

// leave writes down what leaves at a time, s since New.
func (b *Bed) leave(f flow, at float64) {
	if !b.traced {
		return
	}
	flow, off := f.g*(1-f.back), f.out
	if given := b.recovered(f); given > 0 && flow > 0 {
		water := b.condensed(f) / flow
		off.w -= water
		off.t = (f.out.enthalpy() - given/flow - off.w*air.EvaporationHeat) / (air.DryAirHeat + air.VapourHeat*off.w + air.WaterHeat*water)
	}
	b.trace = append(b.trace, Incoming{At: at, T: off.t, W: off.w, Flow: flow * b.kit.Area, Depth: b.Depth()})
}

// What a thinned course may be off the one that it was made from (numerical): well below what
// the tolerances of a step bring about.
const (
	thinKelvin = 0.05
	thinRatio  = 2e-5 // kg/kg
	thinFlow   = 1e-3 // share
	thinTime   = 1.0  // s: what comes sooner behind another time is a jump, or is left out
)

// Thinned gives the course with no more times than it needs, so that who takes its air need
// not stop at each: between two of them the straight line is off by at most 0.05 K, 0.02 g/kg and a thousandth of the
// flow.
func (in Intake) Thinned() Intake {
	in = in.spaced()
	if len(in) < 3 {
		return in
	}
	keep := make([]bool, len(in))
	keep[0], keep[len(in)-1] = true, true
	in.part(0, len(in)-1, keep)
	var list Intake
	for i, k := range keep {
		if k {
			list = append(list, in[i])
		}
	}
	return list
}

// spaced leaves out what stands closer to the time before it than is worth a step. Of a jump
// its two sides stay.
func (in Intake) spaced() Intake {
	var list Intake
	for i, c := range in {
		n := len(list)
		switch {
		case n > 0 && c == list[n-1]:
		case n > 1 && c.At == list[n-1].At && c.At == list[n-2].At:
			list[n-1] = c
		case n > 0 && c.At > list[n-1].At && c.At < list[n-1].At+thinTime && i < len(in)-1:
		default:
			list = append(list, c)
		}
	}
	return list
}

// part marks what is to be kept between two times that are: the one farthest off the straight
// line, and what either side of it then needs.
func (in Intake) part(first, last int, keep []bool) {
	worst, at := 1.0, -1
	for i := first + 1; i < last; i++ {
		if off := in.off(first, last, i); off > worst {
			worst, at = off, i
		}
	}
	if at < 0 {
		return
	}
	keep[at] = true
	in.part(first, at, keep)
	in.part(at, last, keep)
}

// off is how far a time lies off the straight line between two others, 1 being as much as it
// may.
func (in Intake) off(first, last, i int) float64 {
	c, line := in[i], between(in[first], in[last], in[i].At)
	if c.At == in[first].At || c.At == in[last].At { // a side of a jump
		line = in[first]
		if c.At == in[last].At {
			line = in[last]
		}
	}
	return max(math.Abs(c.T-line.T)/thinKelvin, math.Abs(c.W-line.W)/thinRatio, math.Abs(c.Flow-line.Flow)/(thinFlow*c.Flow))
}

// Apart gives how far two courses are apart in the mean over the times from nil to until, s:
// K and kg/kg.
func (in Intake) Apart(other Intake, until float64) (kelvin, ratio float64) {
	if len(in) == 0 || len(other) == 0 || !(until > 0) {
		return math.Inf(1), math.Inf(1)
	}
	const parts = 400
	for i := range parts {
		at := until * (float64(i) + 0.5) / parts
		a, b := in.At(at), other.At(at)
		kelvin += math.Abs(a.T-b.T) / parts
		ratio += math.Abs(a.W-b.W) / parts
	}
	return kelvin, ratio
}
