package forecast

import "math"

// warmth is for how long a bed was how warm: s in each whole degree, from 0 °C up. What is
// warmer than the last counts in it.
type warmth [64]float32

// stayedLong is for how long in all a bed must be warmer to have stayed so, s: what kills
// grain kills it in hours, and no spike does (common practice).
const stayedLong = 3 * 3600

func (w *warmth) add(t, dt float64) {
	if t >= 0 {
		w[min(int(t), len(w)-1)] += float32(dt)
	}
}

// above is for how long the bed was warmer than so many °C, rounded up, s.
func (w *warmth) above(t float64) (s float64) {
	for _, spent := range w[min(max(int(math.Ceil(t)), 0), len(w)):] {
		s += float64(spent)
	}
	return s
}

// stayed is the warmest whole degree that the bed was above for long in all, °C, or 0.
func (w *warmth) stayed() float64 {
	above := float32(0)
	for degree := len(w) - 1; degree > 0; degree-- {
		if above += w[degree]; above >= stayedLong {
			return float64(degree)
		}
	}
	return 0
}
