package kiln

import "math"

const (
	// A Newton step of less than fluxNear of the flux is taken as the last: the
	// error then left is some fluxNear² of it.
	fluxNear = 1e-3

	// fluxLeast is a flux too small to matter, kg of water per kg of dry matter
	// and second: a thousandth of a per cent in a week.
	fluxLeast = 1e-12

	// patience is how many tries Newton is given before every other one halves
	// the bracket: at the kink between dew and drying it can go in circles.
	patience = 8
)

// solve finds the flux at which surface and air agree, by Newton's method in
// a bracket: miss falls with e, from where the air gives all its vapour to
// where the surface has none to give. ok is false when it does not settle.
func (m *meeting) solve(guess float64) (e float64, at found, ok bool) {
	low, high := -m.g*m.in.w, math.Inf(1)
	e = max(guess, low)
	least := fluxLeast * m.dry
	for n := range 120 {
		at = m.try(e)
		if at.miss > 0 {
			low = e
		} else {
			high = e
		}
		step := -at.miss / at.slope
		next := e + step
		if math.Abs(step) <= fluxNear*math.Abs(e)+least {
			at.x, at.t = at.x-m.perDry*step, at.t+at.tByE*step
			return next, at, true
		}
		if !(next > low && next < high) || n > patience && n%2 == 0 {
			next = within(low, high, least)
		}
		if next == e {
			return e, at, true
		}
		e = next
	}
	return e, at, false
}

// within gives a point between low and high, further and further out while
// high is open.
func within(low, high, least float64) float64 {
	if math.IsInf(high, 1) {
		return low + math.Abs(low) + 1e6*least
	}
	return low + (high-low)/2
}
