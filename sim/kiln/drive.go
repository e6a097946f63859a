package kiln

import "maltwright/sim/air"

const (
	// Lead is how far air-on may run ahead of a malt or air-off temperature
	// that the kiln is set by, K (calibrated: what a careful hand allows).
	Lead = 20.0

	// offGain is how many K a hand sets air-on above what is asked of air-off
	// for each K that air-off lacks, up to Lead, on the way up to it (calibrated).
	offGain = 4.0

	// Where the searches of this file stop: a temperature, K, and a
	// humidity ratio, kg/kg. Both lie far below the tolerances of a step.
	enoughKelvin = 1e-4
	enoughRatio  = 1e-8
)

// stage is a moment at which rates are wanted.
type stage struct {
	asked  float64 // temperature of the target, °C
	length float64 // of the implicit stage, s; nil for the rates as they are
	slot   int
	at     float64 // s since New
}

// drive settles the air-on for the stage and marches it through the bed.
func (b *Bed) drive(s stage) flow {
	if b.feed.fed() {
		b.letIn(s)
		b.fresh = b.feed.came
	}
	switch b.set.Target {
	case Fresh:
		return b.freshen(s)
	case AsComes:
		return b.blowAsComes(s)
	}
	low, high := b.span(s)
	if b.set.Target == AirOn || b.set.Target == Oven {
		return b.blow(s.asked, low, high, s)
	}
	return b.follow(low, high, s)
}

// span gives the bounds of air-on, °C: the kiln's reach, and, where air-on is
// not what is asked for, Lead above what is.
func (b *Bed) span(s stage) (low, high float64) {
	low, high = or(b.kit.ReachLow, coldestSought), or(b.kit.ReachHigh, Hottest)
	if b.set.Target == Malt || b.set.Target == AirOff {
		high = min(high, s.asked+Lead)
	}
	return low, max(low, high)
}

// coldestSought is a bound that no air-on comes to, °C.
const coldestSought = -60.0

// follow looks for the air-on that brings malt or air-off to what is asked.
func (b *Bed) follow(low, high float64, s stage) flow {
	var f flow
	if b.set.Target == AirOff {
		f = b.hold(low, high, s)
	} else if s.length == 0 { // the malt is what it is, so the air stays too
		f = b.blow(min(max(b.now.on.t, low), high), low, high, s)
	} else {
		root(low, high, b.now.on.t, maltAnswer, enoughKelvin, func(t float64) float64 {
			f = b.blow(t, low, high, s)
			return b.meanT() - s.asked
		})
	}
	if b.limit == Unlimited && f.on.t >= high-enoughKelvin {
		b.limit = ByLead
		if high < s.asked { // however long it stays there
			b.limit = ByReachHigh
		}
	}
	return f
}

// maltAnswer is a first guess of how the malt follows air-on over a step, K/K.
const maltAnswer = 0.5

// blow marches with the air-on wanted, as far as reach and heater let it.
func (b *Bed) blow(wanted, low, high float64, s stage) flow {
	before := b.limit
	b.limit = Unlimited
	t := wanted
	switch {
	case wanted > high:
		b.limit, t = ByReachHigh, high
	case wanted < low:
		b.limit, t = ByReachLow, low
	}
	if b.feed.fed() {
		return b.blowFed(t, s)
	}
	if b.set.recirculation(b.kit) == 0 && b.kit.Recovers == 0 && !b.kit.Still && !b.kit.Drum.tumbles() && b.kit.Way == nil {
		return b.blowThrough(t, s)
	}
	if before == ByHeater && b.kit.Heater != nil { // it most likely still is
		return b.blowFull(t, s)
	}
	return b.blowRound(t, s)
}

// blowRound is blow with return air or a heat exchanger: it tries the air-on wanted, and
// another when that takes more than the heater has or less than nothing.
func (b *Bed) blowRound(t float64, s stage) flow {
	near := b.near
	f := b.circulate(t, s)
	if heat := b.heat(f); heat < 0 {
		b.near, b.limit = near, b.tooWarm(t)
		return b.blowWith(0, t, b.warmest(t), s, b.need)
	} else if b.kit.Heater != nil && heat > *b.kit.Heater/b.kit.Area {
		b.near = near
		return b.blowFull(t, s)
	}
	return f
}

// blowFull is blowRound with all that the heater has, or with the air-on
// wanted when that is less.
func (b *Bed) blowFull(t float64, s stage) flow {
	f := b.blowWith(*b.kit.Heater/b.kit.Area, min(t, b.ambient.T, b.fresh.t), t, s, func(f flow) float64 { return b.need(f) - b.offered(f) })
	switch {
	case f.on.t < t:
		b.limit = ByHeater
	case b.heat(f) < 0:
		return b.blowRound(t, s)
	}
	return f
}

// blowThrough is blow without return air, where the heater's limit is known
// beforehand: Q = V/v(T)·(h(T) − h(ambient)), V/v(T) being the flow of dry air
// at air-on. Both v and h are straight in T.
func (b *Bed) blowThrough(t float64, s stage) flow {
	if b.walled() {
		return b.blowWalled(t, s)
	}
	if t < b.ambient.T {
		b.limit, t = ByIncomingAir, b.ambient.T
	}
	if b.kit.Heater != nil {
		power := *b.kit.Heater
		flow := b.set.airflow(b.kit)
		perKelvin := b.ambient.Volume() / (b.ambient.T + air.ZeroCelsius)
		capacity := flow * (air.DryAirHeat + air.VapourHeat*b.ambient.W)
		rise := power * b.ambient.Volume() / (capacity - power*perKelvin)
		if rise >= 0 && b.ambient.T+rise < t {
			b.limit, t = ByHeater, b.ambient.T+rise
		}
	}
	return b.march(stream{t: t, w: b.ambient.W}, s)
}

// mostVapour bounds the search for the water at air-on, share of the pressure.
const mostVapour = 0.9

// circulate marches with return air: its water comes back to air-on, until
// both agree.
func (b *Bed) circulate(t float64, s stage) flow {
	turns := b.set.recirculation(b.kit) != 0
	if b.joins() {
		on := stream{t: t, w: b.fresh.w}
		if f, ok := b.jointly(on, s, turns, nil); ok {
			return f
		}
	}
	var f flow
	if b.kit.Way != nil && !turns && !b.kit.Still { // nothing comes back
		f = b.march(stream{t: t, w: b.fresh.w}, s)
		b.near = f.on
		return f
	}
	most := air.HumidityRatio(mostVapour*b.ambient.P, b.ambient.P)
	root(0, most, b.near.w, 1, enoughRatio, func(w float64) float64 {
		f = b.march(stream{t: t, w: w}, s)
		_, ratio := b.incoming(f)
		return w - ratio
	})
	b.near = f.on
	return f
}

// blowWith looks for the air-on, with return air, that takes the given heat,
// W/m², as takes counts it.
func (b *Bed) blowWith(heat, low, high float64, s stage, takes func(flow) float64) flow {
	var f flow
	slope := b.now.g*air.DryAirHeat + b.now.radiant + 1
	if b.joins() {
		find := &warmth{low: low, high: high, missing: func(f flow) float64 { return (takes(f) - heat) / slope }}
		if f, ok := b.jointly(stream{w: b.fresh.w}, s, b.set.recirculation(b.kit) != 0, find); ok {
			return f
		}
	}
	root(low, high, b.near.t, slope, enoughKelvin*slope, func(t float64) float64 {
		f = b.circulate(t, s)
		return takes(f) - heat
	})
	return f
}

// warmest gives a temperature that incoming air cannot exceed, °C.
func (b *Bed) warmest(t float64) float64 {
	t = max(t, b.ambient.T, b.fresh.t, b.now.off.t)
	for i := range b.layers {
		t = max(t, b.layers[i].t)
	}
	for i := range b.walls {
		t = max(t, b.walls[i].against)
	}
	if b.kit.Way != nil {
		t += mostFanWarmth
	}
	return t + 1
}
