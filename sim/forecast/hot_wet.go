package forecast

import "maltwright/sim/kiln"

// Malt that is hotter than it bears while it is wet, layer by layer: in a deep bed the layer
// that meets the air warms long before the rest.

// hotLimits are the malt temperatures that enzymes bear down to a moisture
// (common practice): °C and wet basis, hottest first.
var hotLimits = []struct{ t, w float64 }{{80, 0.10}, {65, 0.12}, {50, 0.25}}

// By so much more than it bears, K, and so much wetter, wet basis, malt is too hot: less is
// how near either is read.
const hotBy, wetBy = 0.5, 0.005

// What is so hot for a shorter time than hotFor, s, or in less than hotShare of the bed's dry
// matter, is no trouble: as it dries each layer passes through it for a while, first the one
// that meets the air. Malt at 65 °C air-on from the start, as is published [owens-2001], on
// a bed of 0.75 m under 4000 to 5000 m³/h for a tonne, is so for 0.8 h in a tenth of it, under
// twice that air in 0.15 of it, and keeps 85 % of its enzymes there; at 70 °C from the start
// it is so in a fifth to two fifths (calibrated: the forecasts of these).
const (
	hotFor   = 1800.0
	hotShare = 0.20
)

// hotWet is the malt of a step that was hotter than it bears so wet.
type hotWet struct {
	t, w, limit float64
	found       bool
	mean        bool      // not only in one layer, but in the mean of the bed, at some time of the step
	times       []float64 // s for which each layer was too hot
}

// begin forgets what a step before has left.
func (h *hotWet) begin(layers int) {
	times := h.times[:0]
	for range layers {
		times = append(times, 0)
	}
	*h = hotWet{times: times}
}

// become takes over what another has, in its own memory.
func (h *hotWet) become(o *hotWet) {
	times := append(h.times[:0], o.times...)
	*h = *o
	h.times = times
}

// stepped looks at the layers of a bed at the end of a step of so many seconds.
func (h *hotWet) stepped(layers []kiln.Layer, dt float64) {
	for i, l := range layers {
		if l.T < hotLimits[len(hotLimits)-1].t+hotBy {
			continue
		}
		w, hot := wetBasis(l.X), false
		for _, bears := range hotLimits {
			over := l.T - bears.t
			if over <= hotBy || w <= bears.w+wetBy {
				continue
			}
			hot = true
			if !h.found || over > h.t-h.limit {
				h.t, h.w, h.limit, h.found = l.T, w, bears.t, true
			}
		}
		if hot {
			h.times[i] += dt
		}
	}
}

// mix spreads what was too hot over the bed: nobody knows which kernels it was.
func (h *hotWet) mix() {
	sum := 0.0
	for _, t := range h.times {
		sum += t
	}
	for i := range h.times {
		h.times[i] = sum / float64(len(h.times))
	}
}

// long is the share of the bed that was too hot for hotFor and more, with times that run in
// straight lines from the middle of one layer to that of the next, and for how long that was
// in the mean of its layers, s.
func (h *hotWet) long() (share, mean float64) {
	n, last := 0, len(h.times)-1
	share = above(h.times[0], h.times[0])/2 + above(h.times[last], h.times[last])/2 // the outer halves
	for i, t := range h.times {
		if t >= hotFor {
			n++
			mean += t
		}
		if i > 0 {
			share += above(h.times[i-1], t)
		}
	}
	return share / float64(len(h.times)), mean / float64(max(n, 1))
}

// above is the share of a line from one time to another that lies at hotFor and more.
func above(from, to float64) float64 {
	low, high := min(from, to), max(from, to)
	switch {
	case high < hotFor:
		return 0
	case low >= hotFor:
		return 1
	}
	return (high - hotFor) / (high - low)
}
