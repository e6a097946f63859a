package kiln

import (
	"errors"
	"math"

	"maltwright/sim/air"
	"maltwright/sim/drying"
)

// Coefficients of TR-BDF2 as a diagonally implicit Runge–Kutta method whose
// first stage is explicit, with the third-order companion that estimates its
// error (published) [hosea-shampine-1996].
const (
	diagonal   = 1 - math.Sqrt2/2 // of the implicit stages
	early      = math.Sqrt2 / 4   // weight of the first two stages
	middle     = 2 * diagonal     // where the second stage stands, share of the step
	stageCount = 3
)

var (
	weights = [stageCount]float64{early, early, diagonal}

	// missWeights are the weights less those of the third-order companion.
	missWeights = [stageCount]float64{
		early - (1-early)/3, early - (3*early+1)/3, diagonal - diagonal/3,
	}
)

const (
	// moistureTolerance is the error that a step allows itself in any layer,
	// kg/kg dry basis.
	moistureTolerance = 4e-4

	// temperatureTolerance is the same for the temperature of the malt, K.
	temperatureTolerance = 0.2

	// dryGrain is how far below nil a moisture may come by the rounding of
	// solves, kg/kg.
	dryGrain = 1e-9

	firstStep = 10.0 // s
	leastStep = 1e-6 // s, below which a step is given up
)

// ErrStalled says that no step, however short, met the tolerances.
var ErrStalled = errors.New("the kiln forecast came to a halt: no step is short enough")

// begin finds the rates at the present moment, the explicit first stage.
func (b *Bed) begin(asked float64) {
	for i := range b.layers {
		l := &b.layers[i]
		l.refX, l.refH = l.x, l.h
	}
	b.feed.next(b.seconds)
	b.refer(0, 0)
	b.calm = false
	if b.now = b.drive(stage{asked: asked, at: b.seconds}); b.calmed() {
		b.calm = true
		b.now = b.drive(stage{asked: asked, at: b.seconds})
	}
	b.flows[0] = b.now
	b.past.n = 0
	b.past.add(b.seconds, b.stands(b.now))
	b.even, b.seen = false, b.moment()
	b.leave(b.now, b.seconds)
}

// attempt takes the two implicit stages of a step of dt seconds; the targets
// stand at the middle stage and at the end. It returns the error over the
// tolerance: 1 is just good enough.
func (b *Bed) attempt(dt, askedMiddle, askedEnd float64) float64 {
	for i := range b.layers {
		l := &b.layers[i]
		l.refX = l.x + dt*diagonal*l.rates[0].x
		l.refH = l.h + dt*diagonal*l.rates[0].h
	}
	b.refer(dt*diagonal, dt, diagonal)
	before := b.past
	b.flows[1] = b.drive(stage{asked: askedMiddle, length: dt * diagonal, slot: 1, at: b.seconds + middle*dt})
	b.past.add(b.seconds+middle*dt, b.stands(b.flows[1]))
	for i := range b.layers {
		l := &b.layers[i]
		l.refX = l.x + dt*early*(l.rates[0].x+l.rates[1].x)
		l.refH = l.h + dt*early*(l.rates[0].h+l.rates[1].h)
	}
	b.refer(dt*diagonal, dt, early, early)
	b.flows[2] = b.drive(stage{asked: askedEnd, length: dt * diagonal, slot: 2, at: b.seconds + dt})
	miss := math.Inf(1)
	if b.flows[1].settled && b.flows[2].settled {
		miss = b.miss(dt)
	}
	if miss > 1 {
		b.past = before
	} else {
		b.past.add(b.seconds+dt, b.stands(b.flows[2]))
	}
	return miss
}

// miss gives the largest error of a layer over its tolerance. That of the
// temperature is damped as the implicit stages damp it, or the quick
// settling of a thin layer would hold up the step long after it is over.
func (b *Bed) miss(dt float64) float64 {
	last := b.flows[stageCount-1]
	coupling := dt * diagonal * last.each(len(b.layers)) * last.reach * air.DryAirHeat / b.dry
	worst := 0.0
	for i := range b.layers {
		l := &b.layers[i]
		c := l.change(missWeights)
		x := math.Abs(dt * c.x)
		t := math.Abs(dt*c.h) / (drying.SpecificHeat(b.material, l.x) + coupling)
		worst = max(worst, x/moistureTolerance, t/temperatureTolerance) // max keeps NaN
		if l.atX < -dryGrain {
			return math.Inf(1)
		}
	}
	for i := range b.walls {
		worst = max(worst, b.walls[i].miss(dt))
	}
	if math.IsNaN(worst) {
		return math.Inf(1)
	}
	return worst
}

// accept moves the bed to the end of the step that attempt has found, at which asked was asked for.
func (b *Bed) accept(dt, asked float64) {
	last := b.flows[stageCount-1]
	most, share, miss, moved := mostSkew(last.ntu), -math.Expm1(-dt/skewTime), 0.0, 0.0
	for i := range b.layers {
		l := &b.layers[i]
		l.x += dt * l.change(weights).x
		l.h += dt * l.change(weights).h
		miss += math.Abs(dt * l.change(missWeights).x)
		l.rates[0] = l.rates[stageCount-1]
		moved = max(moved, b.settle(l, most, last.reach, share))
	}
	for i := range b.walls {
		b.walls[i].accept(dt)
	}
	b.work.ErrorEstimate += miss / float64(len(b.layers))
	b.ledger.add(b, dt)
	b.leave(b.flows[1], b.seconds+middle*dt)
	b.leave(last, b.seconds+dt)
	b.flows[0], b.now = last, last
	if b.set.Target == AirOff {
		b.hand.accept(dt, asked-last.off.t)
	}
	b.seconds += dt
	b.even = moved < skewNear
}

// change gives the rates of a step under the weights of its stages.
func (l *bedLayer) change(w [stageCount]float64) rate {
	return rate{
		x: w[0]*l.rates[0].x + w[1]*l.rates[1].x + w[2]*l.rates[2].x,
		h: w[0]*l.rates[0].h + w[1]*l.rates[1].h + w[2]*l.rates[2].h,
	}
}
