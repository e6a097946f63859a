package kiln

import (
	"errors"

	"maltwright/sim/air"
	"maltwright/sim/draught"
)

// A kiln with a Way has the air at which what drives it equals what it is lost in:
//
//	p(V)·ρ/1.2 + g·(H·(ρ₀ − ρ_off) + H′·(ρ₀ − ρ_on)) = L·r(V) + 2.5·ρ/2·(V/A′)²
//
// with what lies on floors above, see [Over], on either side of it;
// p the curve of its fan, which blows the air as it comes on to the bed; ρ₀ the density of the
// outside air, ρ that of air-on, kg/m³; H and H′ the heights of warm air above and below the bed,
// L the depth of the bed as it lies by then, r the pressure that is lost in a metre of it, the
// mean of that of the air at both faces; A′ the narrowest of ducts, floor and flaps. The left
// falls and the right rises with V, so there is one such V. It is found anew in every stage,
// together with the air-off that goes with it. Where the air would have to be driven harder than
// it is at any V, or would fall instead of rise, [leastDraught] passes: what leaks.
//
// The airflow that is set is then the most that is let through: a hand closes a flap, against
// which the fan presses as its curve has it at that flow.

const (
	// leastDraught and mostDraught, m/s over the area of the bed, bound the air of a kiln: the range
	// of [New].
	leastDraught, mostDraught = 1e-5, 3.0

	// enoughFlow is how closely the balance is found in a bracket, share of the flow; enoughPressure
	// that of the pressures, share of them (numerical).
	enoughFlow, enoughPressure = 1e-6, 1e-8

	// flattest and steepest bound how the miss of the balance is taken to grow with the flow
	// where a search for it begins (numerical).
	flattest, steepest = 0.1, 3.0

	// mostFanWarmth bounds by how much a fan warms its air, K: one that hardly moves any
	// gives its heat to the room.
	mostFanWarmth = 20.0
)

func (e Equipment) checkWay() error {
	var err error
	if e.Cools != nil {
		err = e.Cools.Check()
	}
	if e.Way == nil {
		return errors.Join(err, checkAirflow(e.Airflow, e.Area))
	}
	err = errors.Join(err, e.Way.Check())
	if e.Airflow != 0 || !e.Way.Drives() {
		err = errors.Join(err, checkAirflow(e.Airflow, e.Area))
	}
	if e.Still {
		err = errors.Join(err, errors.New("nothing drives the air of a still oven"))
	}
	return err
}

// most is the most air that may come, m³/s.
func (e Equipment) most(set float64, way *draught.Way) float64 {
	most := mostDraught * e.Area
	if set > 0 {
		most = min(most, set)
	}
	if way.Fan != nil {
		most = min(most, way.Fan.Most())
	}
	return max(most, leastDraught*e.Area)
}

// airflow is what passes the bed, m³/s at air-on.
func (b *Bed) airflow() float64 {
	switch {
	case b.feed.fed():
		return b.feed.dry * b.kit.Area * b.now.on.at(b.ambient.P).Volume()
	case b.way() == nil:
		return b.set.airflow(b.kit)
	}
	return b.passing
}

// unheated tells whether the air comes on as it comes in, but for what the fan warms it.
func (b *Bed) unheated() bool {
	return b.set.Target == Fresh || b.set.Target == AsComes && b.set.recirculation(b.kit) == 0
}

// driven marches with the air that what drives it brings through the bed, where [Bed.jointly] has not
// found it.
func (b *Bed) driven(on stream, a float64, slot int) flow {
	var f flow
	low, high := leastDraught*b.kit.Area, b.kit.most(b.set.airflow(b.kit), b.way())
	guess := b.passing
	if guess <= 0 {
		guess, b.answers = high, 1
	}
	was, missed := 0.0, 0.0
	try := func(v float64) (miss float64) {
		defer func() {
			if slope := (miss - missed) / (v - was); was > 0 && slope > flattest && slope < steepest {
				b.answers = slope
			}
			was, missed = v, miss
		}()
		b.passing = v
		in := on
		if b.unheated() {
			in.t = b.blownFresh(v)
		}
		f = b.pass(in, a, slot)
		if !f.apart {
			f.fan = f.g * b.fanWarmth(v, in)
		}
		switch {
		case !f.settled: // a shorter step is taken
			return 0
		case !b.way().Drives():
			return v - high
		}
		return v - b.balance(in, f.off, low, high, b.depthAt(b.stageX(a)))
	}
	root(low, high, guess, b.answers, enoughFlow*guess, try)
	return f
}

// stageX is the moisture of the bed, kg/kg dry basis, at the end of a stage of a seconds.
func (b *Bed) stageX(a float64) float64 {
	if a == 0 {
		return b.meanX()
	}
	sum := 0.0
	for i := range b.layers {
		sum += b.layers[i].atX
	}
	return sum / float64(len(b.layers))
}

// balance is the flow, m³/s at air-on, at which what drives it equals what it is lost in.
func (b *Bed) balance(on, off stream, low, high, depth float64) float64 {
	w, guess := b.between(on, off, depth), min(max(b.passing, low), high)
	lost := w.loses(guess)
	enough := enoughPressure * max(lost, w.draws, w.blown(guess))
	return root(low, high, guess, lost/guess, enough, w.gap)
}

// between is the way of the air with the air before and behind the bed.
func (b *Bed) between(on, off stream, depth float64) pressures {
	w := pressures{bed: b, on: on.at(b.ambient.P), off: off.at(b.ambient.P), depth: depth}
	w.over = b.topped(b.way(), w.off)
	w.draws = b.way().Natural(b.ambient, w.on, w.off) + w.over.lifts + b.way().Steady
	return w
}

// pressures has those on the way of the air, Pa, at a flow, m³/s of air as it comes on.
type pressures struct {
	bed          *Bed
	on, off      air.State
	depth, draws float64 // m; Pa
	over         topped
}

func (w *pressures) loses(v float64) float64 {
	b := w.bed
	return b.lost(v, w.depth, w.on, w.off) + w.over.lost(b.packing, b.passesOn(v, w.on)) + b.way().Ducts(v, w.on)
}

func (w *pressures) blown(v float64) float64 { return w.bed.way().Blown(v, w.on) }

// gap is what a flow is lost in less what drives it.
func (w *pressures) gap(v float64) float64 { return w.loses(v) - w.draws - w.blown(v) }

// lost is what air loses in the bed, Pa: the mean of what it would at both faces, of which
// the flow of dry air is one.
func (b *Bed) lost(v, depth float64, on, off air.State) float64 {
	if b.kit.Drum.tumbles() { // it goes over the malt
		return 0
	}
	q := v / b.kit.Area
	return depth / 2 * (b.packing.Loss(q, on) + b.packing.Loss(q*off.Volume()/on.Volume(), off))
}

// fanWarmth is the heat that the fan gives to the air, J for each kg of dry air: all that it draws,
// since its motor stands in the air or close by.
func (b *Bed) fanWarmth(v float64, in stream) float64 {
	way := b.way()
	if way.Fan == nil && way.Power == nil {
		return 0
	}
	s := in.at(b.ambient.P)
	return min(b.drawn(v, s)*s.Volume()/v, mostFanWarmth*(air.DryAirHeat+air.VapourHeat*s.W))
}

// drawn is the electricity, W, that the fan of a Way draws at a flow.
func (b *Bed) drawn(v float64, in air.State) float64 {
	if b.way().Power != nil {
		return *b.way().Power
	}
	return draught.Power(v, b.way().Blown(v, in))
}

// blownFresh is how warm the fan, and walls that are still warm, make the fresh air that it blows, °C.
func (b *Bed) blownFresh(v float64) float64 {
	moist := air.DryAirHeat + air.VapourHeat*b.ambient.W
	t := b.ambient.T
	if b.stillAir() {
		return t
	}
	for range 8 { // each takes off two digits of what is left
		in := stream{t: t, w: b.ambient.W}
		if warmth := b.fanWarmth(v, in); b.walled() {
			t = b.heated(warmth * v / b.kit.Area / in.at(b.ambient.P).Volume())
		} else {
			t = b.ambient.T + warmth/moist
		}
	}
	return t
}
