package kiln

import (
	"math"

	"maltwright/sim/drying"
)

// A layer is not even from face to face: the air that enters it is warmer and
// drier than the air that leaves, and the kernels go along. Taking every kernel at
// the state of the exit is an error of the order of the layer's depth, and
// dries a tray of three layers by a point too little half way.
//
// So the kernels dry at the state in the middle of the air's way through
// the layer, by as much as skew says: the share of the air's whole change by
// which the mean kernel lies back from the exit. It is half, less what the kernels'
// film already holds back, as long as the air leaves much of its chance to
// take up water unused; it goes to nothing when the layer brings the air
// to rest with the kernel, where the exit is what counts and half would overshoot.

const (
	// skewTime is how fast skew follows what it is reckoned from, s: slowly
	// against a step's own error, quickly against drying (numerical, without
	// effect on a result).
	skewTime = 60.0

	// roomLeast is the difference of relative humidity below which the air has
	// no chance worth the name (numerical).
	roomLeast = 0.05

	// skewNear is how little the skew has moved when rates that were found before it
	// did still hold (numerical).
	skewNear = 0.01
)

// settle gives the layer its temperature, its mean and its skew after a step
// of which the share of the way to go was share. It gives by how much the skew moved.
func (b *Bed) settle(l *bedLayer, most, reach, share float64) (moved float64) {
	l.t = drying.Temperature(b.material, l.x, l.h)
	l.mean = l.t + l.skew*reach*(l.in.t-l.t)
	moved = (most*b.unused(l) - l.skew) * share
	l.skew += moved
	return math.Abs(moved)
}

// mostSkew gives the skew of a layer whose air keeps its chance to the end:
// half the air's change, less the distance of the kernel from the air at the
// exit that the effectiveness already holds.
func mostSkew(ntu float64) float64 {
	if ntu < 1e-3 {
		return ntu / 12
	}
	return 0.5 - 1/ntu + 1/math.Expm1(ntu)
}

// unused gives twice the share of its chance to take up water that the air
// leaves unused in the layer, 0 to 1.
func (b *Bed) unused(l *bedLayer) float64 {
	in, out := l.in.at(b.ambient.P).RH(), l.out.at(b.ambient.P).RH()
	rest, _, _ := b.material.Humidity(l.x, l.t)
	room := rest - in
	if room <= 0 {
		return 0
	}
	return max(0, min(1, 2*(rest-out)/room, room/roomLeast))
}
