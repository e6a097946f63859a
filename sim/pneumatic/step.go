package pneumatic

import (
	"math"

	"maltwright/sim/air"
	"maltwright/sim/grain"
)

// The Rosenbrock method ROS2 of [verwer-1999], with γ = 1 − 1/√2 and J the
// derivative of the rates f by the state y:
//
//	(1 − γ·h·J)·k1 = f(y)
//	(1 − γ·h·J)·k2 = f(y + h·k1) − 2·k1
//	y(h) = y + h·(3·k1 + k2)/2,  of first order: y + h·k1
//
// It is of second order whatever stands for J, and stable however stiff. With
// g2 = k2 + 2·k1 the step is y + h·(k1 + g2)/2: k1 and g2 are flows of air, heat
// and water, moved along J, and what is booked.
const gamma = 1 - 1/math.Sqrt2

const (
	firstStep = 60.0 // s, to try first
	leastStep = 1e-3 // s, always taken
	mostStep  = 1800.0
	// stepError, K: what the step may be from that of first order in any layer.
	// The result of second order is far nearer to the truth.
	stepError = 0.05
)

// stage is the bed at one of the two stages of a step.
type stage struct {
	*supplied
	b        *Bed
	y        *[MostLayers]layer
	first    *[MostLayers]rate // k1; nil at the first stage
	implicit float64           // γ·h, s
	depth    float64           // of the bed, m
	starved  float64           // oxygen that the layers lack beyond the pores, kg/s
	running  bool

	at    [MostLayers]moment
	skins [MostLayers]skin // while air is blown
	flows [MostLayers]rate // k1, or g2
	moved [MostLayers]float64
	flow  flow
}

// begin makes the stage ready to run. What it has of each layer is written by run.
func (s *stage) begin(r *runner, y *[MostLayers]layer, first *[MostLayers]rate, implicit, depth float64) {
	s.supplied, s.b, s.y, s.first = &r.air, r.b, y, first
	s.implicit, s.depth, s.running, s.flow, s.starved = implicit, depth, r.b.running, flow{}, 0
}

// remaining is the right side for a layer: its rates, less 2·k1 at the second stage.
func (s *stage) remaining(i int, f rate) rate {
	if s.first == nil {
		return f
	}
	k := &s.first[i]
	return rate{heat: f.heat - 2*k.heat, water: f.water - 2*k.water, burn: f.burn - 2*k.burn, clock: f.clock - 2*k.clock, debt: f.debt - 2*k.debt}
}

// set keeps the flows of a layer, and by how many kelvin they were moved along J.
func (s *stage) set(i int, f rate, kappa float64) {
	s.flows[i], s.moved[i] = f, kappa
	s.flow.burn += f.burn
}

// run settles the stage.
func (s *stage) run() {
	for i := range s.b.count {
		s.at[i] = s.b.moment(&s.y[i])
	}
	if !s.running {
		s.breathe()
		s.stand()
		return
	}
	for i := range s.b.count {
		s.skins[i] = s.skin(&s.at[i])
	}
	s.march(s.settle())
}

// settle gives the air-on of the stage.
func (s *stage) settle() air.State {
	t, volume := s.T, s.Flow
	mix := s.mix(s.room.Enthalpy(), s.room.W)
	if s.Follow != nil || s.Return > 0 {
		h, w := s.exhaust(t, volume)
		if s.Follow != nil {
			wanted, mean := s.wanted()
			t, volume = s.lead(wanted, mean, h, w)
			h, w = s.exhaust(t, volume) // other air leaves the bed a little otherwise
			t, volume = s.lead(wanted, mean, h, w)
		}
		mix = s.mix(h, w)
	}
	p := s.plant(volume, mix)
	on, short := p.reach(t)
	s.flow = flow{g: p.dryAir(on), volume: volume, back: s.Return, asked: t, on: on, short: short}
	return on
}

// exhaust gives what leaves the bed, J and kg of water per kg of dry air, when so much
// air, m³/s, comes on with t °C.
func (s *stage) exhaust(t, volume float64) (h, w float64) {
	p := s.plant(volume, mixture{h: s.room.Enthalpy(), w: s.room.W})
	on := p.on(t)
	s.flow.g = p.dryAir(on)
	reach := s.reach(on)
	t, w = on.T, on.W
	for i := range s.b.count {
		t, w, _ = s.pass(i, t, w, reach)
	}
	return air.State{T: t, W: w}.Enthalpy(), w
}

// wanted is the heat, W, that the air should carry off for the bed to follow, and
// the mean of the bed, °C.
func (s *stage) wanted() (heat, mean float64) {
	content, capacity, burn := 0.0, 0.0, 0.0
	for i := range s.b.count {
		content += s.at[i].t * s.at[i].capacity
		capacity += s.at[i].capacity
		burn += s.at[i].burn
	}
	mean = content / capacity
	made := grain.StarchHeat - mean*(air.WaterHeat*grain.StarchWater-s.b.dryHeat)
	return made*burn + capacity*(mean-s.Follow.T)/followTime, mean
}

// attempt is a step that is not yet taken.
type attempt struct {
	h      float64
	layers [MostLayers]layer
	flows  [2]flow
	miss   float64 // error, of what a step may have
}

// try reckons a step of h seconds.
func (r *runner) try(h float64) *attempt {
	b := r.b
	one, two, a := &r.one, &r.two, &r.trial
	depth := b.Depth()
	one.begin(r, &b.layers, nil, gamma*h, depth)
	one.run()
	a.h = h
	for i := range b.count {
		a.layers[i] = b.layers[i].plus(h, &one.flows[i])
	}
	two.begin(r, &a.layers, &one.flows, gamma*h, depth)
	two.run()
	miss := 0.0
	for i := range b.count {
		miss = max(miss, math.Abs(one.moved[i]+two.moved[i])) // NaN stays
		a.layers[i] = b.layers[i].plus(h/2, &one.flows[i]).plus(h/2, &two.flows[i])
	}
	a.miss = miss / (2 * gamma * stepError)
	a.flows = [2]flow{one.flow, two.flow}
	return a
}
