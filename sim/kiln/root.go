package kiln

import "math"

// root finds where a rising f passes nil between low and high, by secant steps
// held in a bracket, from guess and with slope for the first of them. It returns
// as soon as |f| ≤ enough, or, when f does not change sign, at the nearest
// end. The last call of f is always at the point returned, so that what f
// leaves behind belongs to it.
func root(low, high, guess, slope, enough float64, f func(float64) float64) float64 {
	x := min(max(guess, low), high)
	y := f(x)
	lowTried, highTried := false, false
	for range 80 {
		if math.Abs(y) <= enough || (x == high && y < 0) || (x == low && y > 0) {
			break
		}
		if y < 0 {
			low, lowTried = x, true
		} else {
			high, highTried = x, true
		}
		next := x - y/slope
		if !(next > low) {
			next = edge(low, high, lowTried)
		} else if !(next < high) {
			next = edge(high, low, highTried)
		}
		if next == x {
			break
		}
		before, beforeY := x, y
		x, y = next, f(next)
		if s := (y - beforeY) / (x - before); s > 0 {
			slope = s
		}
	}
	return x
}

// edge gives the edge of the bracket that a step would leave, or the middle once
// that edge has been tried.
func edge(near, far float64, tried bool) float64 {
	if tried {
		return near + (far-near)/2
	}
	return near
}
