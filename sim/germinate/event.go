package germinate

import (
	"maltwright/sim/work"
)

const (
	// eventTime, s: how close the moment is found at which a course ends.
	eventTime = 1e-6
	// leastStep, s: a course is followed at least so long, so that rounding at
	// its end cannot stop the clock.
	leastStep = 0.01
)

// past is below nil until the moment at which the course must be chosen anew: a
// floating bed leaves its band, comes back to it, or becomes too slow in
// coming; a held bed would leave its edge inward, come faster by itself, or want
// more than can be done for it; a bed for which all is done comes back to its
// band, or comes fast enough.
func (r *runner) past(c course, f *flows) float64 {
	switch {
	case c.full:
		return max(-r.toBand(c, f.warmth), -c.side*r.netRate(c, f)-holdPace)
	case c.side != 0 && c.held:
		return max(-c.side*r.freeRate(f)-holdPace, r.wanting(c, f))
	case c.held:
		return max(-c.outward*r.freeRate(f), r.wanting(c, f))
	case c.side != 0:
		return max(-r.toBand(c, f.warmth), holdPace+c.side*r.freeRate(f))
	}
	return max(f.warmth-r.hold.High, r.hold.Low-f.warmth) - edge/2
}

// until follows the course for h seconds, or to the moment it must be chosen
// anew if that comes first, found by false position in Illinois' variant.
func (r *runner) until(c course, h float64) (float64, vector) {
	y := r.rk4(c, h)
	f := r.p.flow(&y, r.room, r.face)
	high := r.past(c, &f)
	if high <= 0 {
		r.now, r.fresh = f, true
		return h, y
	}
	// The course was chosen as not past; rounding on an edge may say otherwise.
	low := min(r.past(c, &r.now), -edge/2)
	to := max(r.moment(c, h, low, high), min(h, leastStep))
	return to, r.rk4(c, to)
}

// moment brackets the change of sign between nil and h seconds.
func (r *runner) moment(c course, h, low, high float64) float64 {
	from, to := 0.0, h
	for range 60 {
		_ = r.p.meter.Spend(work.Piece) // the step that follows sees that it is used up
		if to-from < eventTime {
			break
		}
		mid := to - high*(to-from)/(high-low)
		mid = min(max(mid, from+eventTime/4), to-eventTime/4)
		y := r.rk4(c, mid)
		f := r.p.flow(&y, r.room, r.face)
		if g := r.past(c, &f); g > 0 {
			to, high, low = mid, g, low/2
		} else {
			from, low, high = mid, g, high/2
		}
	}
	return to
}
