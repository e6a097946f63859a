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
// held to a rate, or by that balance with all done for the bed that can be done.
type course struct {
	held bool
	full bool
	rate float64 // K/s, when held
	// outward is the sign of the temperature's own rate when it is held on an
	// edge.
	outward float64
	// side tells a bed above its band, 1, or below it, -1; of one for which all is
	// done it may be its edge.
	side float64
}

// freeRate is the rate of the mean temperature with nothing held, K/s.
func (r *runner) freeRate(f *flows) float64 {
	return (f.d[heat] - f.warmth*r.capacityRate(f)) / f.capacity
}

func (r *runner) capacityRate(f *flows) float64 {
	return -r.p.dryHeat*f.burn + air.WaterHeat*(grain.StarchWater*f.burn-f.dry)
}

// heaped is the heat that heaping keeps in, W, beside which a heater may stand. Nothing
// like it cools: turns do, each when it is due ([Piece.Turn]), and a cooler.
func (p *Piece) heaped(f *flows) float64 { return p.heapKeeps(f) * max(0, f.loss) }

// heapKeeps is the share of its loss that a bed would keep as a heap, which loses
// less in proportion to its faces. The heap is a block on a square as deep as it may
// be, or a cube if there is too little grain for that.
func (p *Piece) heapKeeps(f *flows) float64 {
	sides := 2 * p.floor.Area
	volume := f.half * sides
	deep := min(heapDepth, math.Cbrt(volume))
	faces := 2*volume/deep + 4*math.Sqrt(volume*deep)
	return max(0, 1-faces/sides)
}

// need is the power that holds the bed to the course's rate, W; below nil it is
// taken out.
func (r *runner) need(c course, f *flows) float64 {
	return f.capacity*c.rate + f.warmth*r.capacityRate(f) - f.d[heat]
}

// all is the power of a course on which all is done, W.
func (r *runner) all(c course, f *flows) float64 {
	if c.side > 0 {
		return -r.room.Cooler
	}
	return r.p.heaped(f) + r.room.Heater
}

// wanting is what a held course wants beyond all that can be done, as the rate at
// which the bed would leave the course, K/s; at most nil where it can be held.
func (r *runner) wanting(c course, f *flows) float64 {
	need := r.need(c, f)
	return max(-need-r.room.Cooler, need-r.p.heaped(f)-r.room.Heater) / f.capacity
}

// netRate is the rate of the mean temperature on a course that does not hold it to
// one, K/s.
func (r *runner) netRate(c course, f *flows) float64 {
	if !c.full {
		return r.freeRate(f)
	}
	return r.freeRate(f) + r.all(c, f)/f.capacity
}

// course chooses what the hold does from the present state on.
func (r *runner) course() course {
	if r.hold == nil {
		return course{}
	}
	c := r.wanted()
	if c.held && r.wanting(c, &r.now) > 0 {
		side := 1.0
		if r.need(c, &r.now) > 0 {
			side = -1
		}
		return course{full: true, side: side}
	}
	return c
}

// wanted is the course on which nothing is wanting.
func (r *runner) wanted() course {
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
func (r *runner) rate(c course, f *flows) vector {
	d := f.d
	if !c.held && !c.full {
		return d
	}
	power := r.need(c, f)
	if c.full {
		power = r.all(c, f)
	}
	d[heat] += power
	d[held] = power
	// a step ends a little behind the moment from which more is wanted than there is
	d[cooled] = min(max(0, -power), r.room.Cooler)
	d[warmed] = min(max(0, power-r.p.heaped(f)), r.room.Heater)
	return d
}

// follow goes at most h seconds along the course, to where it must be chosen
// anew.
func (r *runner) follow(c course, h float64) (float64, vector) {
	if r.hold == nil {
		return h, r.rk4(c, h)
	}
	if c.held && c.side != 0 {
		h = min(h, r.toBand(c, r.now.warmth)/holdPace)
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
