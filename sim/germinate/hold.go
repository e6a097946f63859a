package germinate

import (
	"math"

	"maltwright/sim/air"
	"maltwright/sim/grain"
)

const (
	// holdPace, K/s: a bed outside its band is brought back at one kelvin an
	// hour; common practice.
	holdPace = 1.0 / hour
	// edge, K: how near to an edge of the band counts as on it.
	edge = 1e-7
	// heapDepth, m: a bed that must keep its heat is couched so deep, if it is
	// not deeper already; common practice.
	heapDepth = 0.30
)

// course is how the mean temperature moves in a step: by the bed's own balance,
// or held to a rate.
type course struct {
	held bool
	rate float64 // K/s, when held
	// outward is the sign of the temperature's own rate when it is held on an
	// edge.
	outward float64
	// side tells a bed above its band, 1, or below it, -1.
	side float64
}

// freeRate is the rate of the mean temperature with nothing held, K/s.
func (r *runner) freeRate(f *flows) float64 {
	return (f.d[heat] - f.warmth*r.capacityRate(f)) / f.capacity
}

func (r *runner) capacityRate(f *flows) float64 {
	return -r.p.dryHeat*f.burn + air.WaterHeat*(grain.StarchWater*f.burn-f.dry)
}

// course chooses what the hold does from the present state on.
func (r *runner) course() course {
	if r.hold == nil {
		return course{}
	}
	t, free := r.now.warmth, r.freeRate(&r.now)
	switch {
	case t > r.hold.High+edge:
		return course{held: free > -holdPace, rate: -holdPace, side: 1}
	case t < r.hold.Low-edge:
		return course{held: free < holdPace, rate: holdPace, side: -1}
	case t > r.hold.High-edge && free > 0:
		return course{held: true, outward: 1}
	case t < r.hold.Low+edge && free < 0:
		return course{held: true, outward: -1}
	}
	return course{}
}

// rate gives the rates of the state y with the course's hold in them.
func (r *runner) rate(c course, y *vector, f *flows) vector {
	d := f.d
	if !c.held {
		return d
	}
	power := f.capacity*c.rate + f.warmth*r.capacityRate(f) - d[heat]
	d[heat] += power
	d[held] = power
	if power < 0 {
		spare := r.p.turnedLoss(y, f, r.face) - f.loss
		d[beyond] = math.Max(0, -power-math.Max(0, spare))
		return d
	}
	// A heap loses less in proportion to its faces.
	keeps := math.Max(0, 1-2*f.half/heapDepth) * math.Max(0, f.loss)
	d[short] = math.Max(0, power-keeps)
	return d
}

// follow goes at most h seconds along the course, to where it must be chosen
// anew.
func (r *runner) follow(c course, h float64) (float64, vector) {
	if r.hold == nil {
		return h, r.rk4(c, h)
	}
	if c.held && c.side != 0 {
		h = math.Min(h, r.toBand(c, r.now.warmth)/holdPace)
	}
	return r.until(c, h)
}

// toBand is how far a bed of t °C is from the band on the course's side, K.
func (r *runner) toBand(c course, t float64) float64 {
	if c.side > 0 {
		return t - r.hold.High
	}
	return r.hold.Low - t
}
