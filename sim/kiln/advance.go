package kiln

import (
	"cmp"
	"errors"
	"math"

	"maltwright/sim/air"
)

// Progress counts the work done.
type Progress struct {
	Steps    int // accepted
	Rejected int // tried and taken again, shorter

	// ErrorEstimate is the sum over the steps of the estimated error of the
	// mean moisture, kg/kg dry basis: a generous bound of the integration error.
	ErrorEstimate float64
}

// Advance moves the bed on by exactly dt seconds (nil to a week) under the
// setting and reports the work since New. It returns a *[air.RangeError]
// for a duration or setting outside, and ErrStalled when no step meets the
// tolerances; the bed then stands where it had come to.
func (b *Bed) Advance(dt float64, set Setting) (Progress, error) { return b.AdvanceBy(dt, set, nil) }

// Follower is told of every step that the bed has taken, s, when the bed stands at its end.
// An error of it ends the advance.
type Follower interface{ Stepped(dt float64) error }

// AdvanceBy is [Bed.Advance] with a follower, nil for none.
func (b *Bed) AdvanceBy(dt float64, set Setting, by Follower) (Progress, error) {
	err := errors.Join(air.Within("duration", dt, "s", 0, 7*86400), set.check(b.kit))
	if err != nil || dt == 0 {
		return b.work, err
	}
	if b.work.Steps == 0 || set.Target != b.set.Target {
		b.now.on.t = set.at(0) // where a search for air-on begins
		b.hand = hand{}
	}
	goesOn := b.goesOn(set)
	b.set = set
	if !goesOn {
		b.begin(set.at(0))
	}
	if !b.now.settled {
		return b.work, b.stalled()
	}
	for done := 0.0; done < dt; {
		taken, err := b.advanceOnce(done, dt)
		if err != nil {
			return b.work, err
		}
		if by != nil {
			if err := by.Stepped(taken); err != nil {
				return b.work, err
			}
		}
		done += taken
		if b.jumps() {
			b.begin(set.at(done / dt))
		}
		if dt-done < leastStep {
			break
		}
	}
	return b.work, nil
}

// goesOn tells whether a setting takes up where the last one left the kiln: the rates at
// the end of the last step are then those at the beginning of the next.
func (b *Bed) goesOn(set Setting) bool {
	return b.even && set.Target == b.set.Target && math.Abs(set.at(0)-b.asked) < enoughKelvin &&
		set.airflow(b.kit) == b.set.airflow(b.kit) && set.recirculation(b.kit) == b.set.recirculation(b.kit) &&
		(b.kit.Door == nil || (set.Airflow == nil) == (b.set.Airflow == nil))
}

// advanceOnce takes one step that meets the tolerances and gives its length.
func (b *Bed) advanceOnce(done, dt float64) (float64, error) {
	before := b.seen
	for h := math.Inf(1); h > leastStep; {
		if b.meter.Err() != nil {
			break
		}
		h = fitted(b.step, min(dt-done, b.untilKnot()))
		miss := b.attempt(h, b.set.at((done+middle*h)/dt), b.set.at((done+h)/dt))
		good := h * 0.85 / math.Cbrt(math.Max(miss, 1e-4))
		if miss <= 1 {
			b.step = math.Min(good, math.Max(mostGrowth*h, b.step))
			b.asked = b.set.at((done + h) / dt)
			b.accept(h, b.asked)
			if b.calmed() {
				b.begin(b.asked)
			}
			b.work.Steps++
			b.plateau.watch(b, before, h)
			return h, nil
		}
		b.work.Rejected++
		b.step = math.Max(good, leastGrowth*h)
	}
	for i := range b.layers {
		b.layers[i].mean = b.layers[i].t
	}
	b.even = false
	return 0, b.stalled()
}

// stalled is why no step was taken.
func (b *Bed) stalled() error { return cmp.Or(b.meter.Err(), ErrStalled) }

// A step may grow or shrink by these factors from one to the next.
const mostGrowth, leastGrowth = 5.0, 0.1

// fitted gives the step to take when so much is left: all of it, half when one
// step would leave a crumb, or the step wished for.
func fitted(wish, left float64) float64 {
	switch {
	case wish >= left:
		return left
	case 2*wish > left:
		return left / 2
	}
	return wish
}
