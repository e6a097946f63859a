package kiln

import (
	"math"

	"maltwright/sim/air"
)

const (
	// plateauLeast is the share of the air's drying power that must once have
	// been used for there to be a plateau (calibrated).
	plateauLeast = 0.75

	// breakFall is the share of its best that the use falls to at the break
	// (calibrated: air-off then stands some 5 K above its plateau at an
	// air-on of 55 to 60 °C, what a maltster calls warming).
	breakFall = 0.85

	// leastDepression is the difference between air-on and its wet bulb, K, below
	// which air-off has no way to go and tells nothing (numerical).
	leastDepression = 2.0
)

// plateau follows air-off: while the drying front is in the bed it stays near
// the wet bulb of air-on. Tumbled malt has none.
type plateau struct {
	bulb  float64 // wet bulb of air-on, °C
	best  float64 // largest share of its drying power the air has used
	over  bool
	hours float64 // of the break, h since New
}

// moment is how air-off stands at a moment.
type moment struct {
	cooled  float64 // (air-on − air-off)/(air-on − wet bulb)
	taken   float64 // (W off − W on)/(W saturated at the wet bulb − W on)
	bulb    float64
	telling bool // air-on is warm and dry enough to speak of it
	seconds float64
}

// moment looks at the air now.
func (b *Bed) moment() moment {
	on := air.State{T: b.now.on.t, W: b.now.on.w, P: b.ambient.P}
	m := moment{seconds: b.seconds, bulb: on.WetBulbNear(b.plateau.bulb)}
	room := air.HumidityRatio(air.Saturation(m.bulb), on.P) - on.W
	if on.T-m.bulb < leastDepression || room <= 0 {
		return m
	}
	m.telling = true
	m.cooled = (on.T - b.now.off.t) / (on.T - m.bulb)
	m.taken = (b.now.off.w - on.W) / room
	return m
}

// mixed forgets the plateau: a stirred bed makes a new one.
func (p *plateau) mixed() { p.best, p.over = 0, false }

// watch looks for the break in the step of dt seconds that ended now.
func (p *plateau) watch(b *Bed, before moment, dt float64) {
	after := b.moment()
	p.bulb, b.seen = after.bulb, after
	if !after.telling || p.over || b.kit.Drum.tumbles() { // tumbled malt has no front
		return
	}
	p.best = math.Max(p.best, math.Min(after.taken, 1))
	limit := breakFall * p.best
	if p.best < plateauLeast || after.cooled >= limit || after.taken >= limit {
		return
	}
	p.over = true
	share := 1.0
	if drop := before.cooled - after.cooled; before.telling && before.cooled > limit && drop > 0 {
		share = (before.cooled - limit) / drop
	}
	p.hours = (before.seconds + share*dt) / 3600
}
