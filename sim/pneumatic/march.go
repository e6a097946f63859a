package pneumatic

import (
	"maltwright/sim/air"
	"maltwright/sim/grain"
	"maltwright/sim/powers"
)

// flow is what goes through the bed, or off its faces, at a moment.
type flow struct {
	g          float64   // dry air, kg/s; nil while the fan stands
	volume     float64   // m³/s at air-on
	back       float64   // share of the exhaust led back
	asked      float64   // air-on asked for, °C
	on         air.State // air-on
	offH, offW float64   // J and kg of water per kg of dry air
	off        air.State // air-off
	short      float64   // power that the plant lacks, W

	burn   float64 // dry matter respired, kg/s
	faces  float64 // heat lost by the faces, W, while the fan stands
	vapour float64 // water that leaves by the open face, kg/s
	latent float64 // heat that goes with it, W
}

// stream is the air between two layers, and how it answers to what a step does
// to the layers before it (see stage).
type stream struct {
	t, w, h    float64 // °C, kg and J per kg of dry air
	dt, dw, dh float64
}

// march takes air through the layers at a stage. What a layer gains moves it by κ
// kelvin along J, that moves the air behind it, and that the layers after.
func (s *stage) march(on air.State) {
	reach := s.reach(on)
	in := stream{t: on.T, w: on.W, h: on.Enthalpy()}
	for i := range s.b.count {
		m := &s.at[i]
		out, byT := s.leave(i, &in, reach)
		own := m.own()
		g := s.flow.g
		own.heat += g * (in.h - out.h)
		own.water += g * (in.w - out.w)
		r := s.remaining(i, own)
		// C·dT + T·dC is what the layer gains
		water := r.water + g*(in.dw-out.dw)
		gain := r.heat + g*(in.dh-out.dh) - m.t*(air.WaterHeat*water-s.b.dryHeat*r.burn)
		kappa := gain / (m.capacity/s.implicit + g*(byT.dh-air.WaterHeat*m.t*byT.dw))
		out.dt += byT.dt * kappa
		out.dw += byT.dw * kappa
		out.dh += byT.dh * kappa
		own.heat += g * (in.dh - out.dh)
		own.water += g * (in.dw - out.dw)
		s.set(i, own, kappa)
		in = out
	}
	s.flow.off = air.State{T: in.t, W: in.w, P: s.pressure}
	s.flow.offH, s.flow.offW = in.h+in.dh, in.w+in.dw
}

// reach is the effectiveness of a layer, 0 to 1: 1 − exp(−NTU), by
// [drying.Packing.Exchange], for vapour as for heat.
func (s *stage) reach(on air.State) float64 {
	b := s.b
	flux := s.flow.g / b.vessel.Area
	ntu := b.packing.Exchange(flux) * b.packing.Surface * s.depth / float64(b.count) / (flux * air.DryAirHeat)
	return 1 - powers.Exp(-ntu)
}

// skin is the air in balance with the corns of a layer, which is the same whatever air
// comes.
type skin struct {
	wet, bend float64 // humidity ratio, and its answer to each kelvin
	most      float64 // water that the corns can give, kg/s; below nil where nobody has asked
}

func (s *stage) skin(m *moment) skin {
	p, slope := air.SaturationSlope(m.t)
	vapour := s.b.activity(m.x, m.t) * p
	wet := s.ratio(vapour)
	return skin{wet: wet, bend: wet * slope / p * s.pressure / max(s.pressure-vapour, (1-mostVapour)*s.pressure), most: -1}
}

// gives is the most water that the corns of a layer give, kg/s: k·X of their dry matter each
// second, k of [drying.Kinetics].
func (s *stage) gives(i int) float64 {
	if c := &s.skins[i]; c.most < 0 {
		k, _, _ := s.b.material.Rate(s.at[i].x, s.at[i].t)
		c.most = k * s.y[i].water
	}
	return s.skins[i].most
}

// pass gives the temperature, °C, and the humidity ratio of the air behind a layer, and tells
// whether its corns give all the water that they can.
func (s *stage) pass(i int, t, w, reach float64) (offT, offW float64, limited bool) {
	m, c := &s.at[i], &s.skins[i]
	lift := s.lift(m, c.bend)
	offT, offW = t+reach*(m.t+lift-t), w+reach*(c.wet+c.bend*lift-w)
	if taken := s.flow.g * (offW - w); taken > slowestRate*s.y[i].water {
		if most := s.gives(i); taken > most {
			return offT, w + most/s.flow.g, true
		}
	}
	return offT, offW, false
}

// leave gives the air behind a layer, with the answer to what went before, and
// beside it the answer to each kelvin of the layer.
func (s *stage) leave(i int, in *stream, reach float64) (out, byT stream) {
	rest := 1 - reach
	out = stream{dt: rest * in.dt, dw: rest * in.dw}
	byT = stream{dt: reach, dw: reach * s.skins[i].bend}
	var limited bool
	if out.t, out.w, limited = s.pass(i, in.t, in.w, reach); limited {
		out.dw, byT.dw = in.dw, 0
	}
	latent := air.VapourEnthalpy(out.t)
	sensible := air.DryAirHeat + air.VapourHeat*out.w
	out.h = air.DryAirHeat*out.t + out.w*latent
	out.dh = sensible*out.dt + latent*out.dw
	byT.dh = sensible*byT.dt + latent*byT.dw
	return out, byT
}

// lift is how much warmer than the mean of a layer its upper face is, K. In a bed
// at rest with its air a layer warms the air by q/(G·dh/dT), q its heat of
// respiration, and half of that lies above its mean; so few layers do for many. It
// forms as fast as air carries heat through the layer, and counts for little where
// that takes longer than formTime. A drum has no such difference.
func (s *stage) lift(m *moment, bend float64) float64 {
	if s.b.vessel.Mixed {
		return 0
	}
	carries := s.flow.g * (air.DryAirHeat + bend*air.VapourEnthalpy(m.t))
	return grain.StarchHeat * m.burn / 2 / (carries + m.capacity/formTime)
}

// formTime, s: in some hours the front passes a bed, and no layer is one.
const formTime = 4 * hour

// slowestRate, 1/s: no corn is so slow that it gave less; asking it is dear.
const slowestRate = 1e-8
