package pneumatic

import (
	"errors"
	"math"

	"maltwright/sim/air"
)

// Advance keeps the bed for dt seconds, above nil and at most 30 days, with the
// air supplied. Out of range it returns a *[air.RangeError], as it does when a
// layer comes to leave −1 to 60 °C or 0 to 60 % moisture, and leaves the bed as
// it was.
func (b *Bed) Advance(dt float64, supply Supply) error {
	if b.count == 0 {
		return errNotMade
	}
	s, err := supply.check(b.vessel.Area)
	err = errors.Join(err, air.Within("step", dt, "s", math.SmallestNonzeroFloat64, longestAdvance))
	if err != nil {
		return err
	}
	r := b.scratch
	r.next, r.air = *b, s
	r.next.room = supply.Room
	r.b = &r.next
	for dt > 0 {
		taken, err := r.step(dt)
		if err != nil {
			return err
		}
		dt -= taken
	}
	*b = r.next
	return nil
}

// runner carries one bed through one stay under one supply. A bed and its copies share
// one, so that a stay asks for no memory.
type runner struct {
	b        *Bed // next
	next     Bed
	air      supplied
	one, two stage
	trial    attempt
}

// step goes on by at most limit seconds and returns the seconds it took.
func (r *runner) step(limit float64) (float64, error) {
	b := r.b
	mean, warmest := b.T(), b.Warmest()
	b.running = r.air.Flow > 0 && r.air.Run.runs(b.running, b.age, mean, warmest)
	limit = min(limit, mostStep, r.air.Run.Clock.untilSwitch(b.age))
	if !b.running && b.pores > 0 && b.starved > 0 {
		limit = min(limit, max(b.pores/b.starved, shortest))
	}
	h := fitted(b.length, limit)
	for {
		if err := b.meter.Spend(2 * b.count); err != nil {
			return 0, err
		}
		a := r.try(h)
		good := h * min(mostGrowth, max(leastGrowth, 0.8/math.Sqrt(a.miss)))
		if a.miss <= 1 || h <= leastStep {
			if share := r.switches(a, mean, warmest); share < 1 && h > shortest {
				h = max(h*share, shortest)
				if a = r.again(h); a == nil {
					return 0, b.meter.Err()
				}
			} else if h < b.length {
				good = max(good, b.length) // it was cut short, not refused
			}
			b.length = min(good, mostStep)
			return h, r.take(a)
		}
		if math.IsNaN(a.miss) {
			good = h * leastGrowth
		}
		b.length = max(good, leastStep)
		h = min(h, b.length)
	}
}

// A step may grow or shrink by these factors from one to the next.
const mostGrowth, leastGrowth = 4.0, 0.1

// shortest, s, is how nearly the moment is met at which a thermostat switches.
const shortest = 1.0

// fitted gives the step to take when so much is left: all of it, half when one
// step would leave a crumb, or the step wished for.
func fitted(wish, left float64) float64 {
	switch {
	case wish >= left:
		return left
	case 2*wish > left:
		return left / 2
	}
	return wish
}

// again tries a shorter step; nil once the meter is used up.
func (r *runner) again(h float64) *attempt {
	if r.b.meter.Spend(2*r.b.count) != nil {
		return nil
	}
	return r.try(h)
}

// switches is the share of a step after which the thermostat switches.
func (r *runner) switches(a *attempt, mean, warmest float64) float64 {
	t := r.air.Run.Thermostat
	if t == nil || r.air.Flow == 0 { // nothing that it could switch
		return 1
	}
	after := *r.b
	after.layers = a.layers
	return t.passed(r.b.running, t.over(mean, warmest), t.over(after.T(), after.Warmest()))
}

// take goes on by a step.
func (r *runner) take(a *attempt) error {
	b := r.b
	before := b.layers
	b.layers = a.layers
	for i := range b.count {
		l := &b.layers[i]
		t, x := b.tOf(l), l.water/b.dryOf(l)
		err := errors.Join(
			air.Within(bedTemperature, t, "°C", lowestRun, highestRun),
			air.Within("moisture of the bed, dry basis", x, "kg/kg", 0, wettestX),
			air.Within("dry matter left", b.dryOf(l)/b.dryAtFirst, air.Share, mostDry, 1))
		if err != nil {
			return err
		}
		b.hottest = math.Max(b.hottest, t)
		b.chit(l, (t+b.tOf(&before[i]))/2)
	}
	b.age += a.h
	b.sinceTurn += a.h
	b.now = a.flows[1]
	b.airs(a.h, (r.one.starved+r.two.starved)/2)
	for i := range a.flows {
		b.ledger.book(&a.flows[i], a.h/2)
		b.plant.book(&r.air, &a.flows[i], a.h/2)
	}
	return nil
}

// chit lets the kernels of a layer chit whose hour has come, at t °C.
func (b *Bed) chit(l *layer, t float64) {
	if l.due >= allDue {
		return
	}
	if due := b.lot.Profile.Due(l.clock); due > l.due {
		l.chitted += b.lot.Chitting(l.due, due, t)
		l.due = due
	}
}

// allDue is so near to one that no kernel is left.
const allDue = 1 - 1e-8
