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
	n := s.b.count
	var off [MostLayers]rate
	over := s.off(off[:n])
	for i := range n {
		m := &s.at[i]
		out, byT := s.leave(i, &in, reach)
		own := m.own()
		own.heat += off[i].heat
		own.water += off[i].water
		g := s.flow.g
		own.heat += g * (in.h - out.h)
		own.water += g * (in.w - out.w)
		r := s.remaining(i, own)
		// C·dT + T·dC is what the layer gains
		water := r.water + g*(in.dw-out.dw)
		gain := r.heat + g*(in.dh-out.dh) - m.t*(air.WaterHeat*water-s.b.dryHeat*r.burn)
		answers := m.capacity/s.implicit + g*(byT.dh-air.WaterHeat*m.t*byT.dw)
		if i == n-1 {
			answers += over.byT + over.latentByT - air.WaterHeat*m.t*over.waterByT
		}
		kappa := gain / answers
		out.dt += byT.dt * kappa
		out.dw += byT.dw * kappa
		out.dh += byT.dh * kappa
		own.heat += g * (in.dh - out.dh)
		own.water += g * (in.dw - out.dw)
		if i == n-1 {
			own.heat -= (over.byT + over.latentByT) * kappa
			own.water -= over.waterByT * kappa
			s.lost(&over, kappa)
		}
		s.set(i, own, kappa)
		in = out
	}
	s.flow.off = air.State{T: in.t, W: in.w, P: s.pressure}
	s.flow.offH, s.flow.offW = in.h+in.dh, in.w+in.dw
}

// off is what an open upper face takes beside the air blown through, which it lets pass, with
// how that answers to the uppermost layer; the rates of the layers by it are added to own. A
// shut box loses nothing so. What the lower face would give of the room's warmth, and
// conduction between the layers, are left out as soon as air is blown.
func (s *stage) off(own []rate) facing {
	if !s.Room.Open {
		return facing{}
	}
	n := len(own)
	face := s.face.Blown(s.flow.g / s.b.vessel.Area)
	link := s.b.packing.Conductivity * s.b.vessel.Area / (s.depth / float64(n))
	upper := s.upper()
	over := s.openFace(&face, &s.at[n-1], upper.x, 2*link)
	own[n-1].heat -= over.heat + over.latent
	s.seep(own, &upper, over.water)
	return over
}

// lost keeps what an open face takes, moved by kappa kelvin of the uppermost layer.
func (s *stage) lost(over *facing, kappa float64) {
	s.flow.faces = over.heat + over.byT*kappa
	s.flow.vapour = over.water + over.waterByT*kappa
	s.flow.latent = over.latent + over.latentByT*kappa
}

// reach is the effectiveness of a layer, 0 to 1: 1 − exp(−NTU), by
// [drying.Packing.Exchange], for vapour as for heat.
func (s *stage) reach(on air.State) float64 {
	b := s.b
	flux := s.flow.g / b.vessel.Area
	ntu := b.packing.Exchange(flux) * b.packing.Surface * s.depth / float64(b.count) / (flux * air.DryAirHeat)
	return 1 - powers.Exp(-ntu)
}

// skin is the air in balance with the kernels of a layer, which is the same whatever air
// comes.
type skin struct {
	saturated, slope float64 // pressure at their temperature, Pa, and its answer to each kelvin
	wet, bend        float64 // humidity ratio, and its answer to each kelvin
	supply           float64 // of [grain.Kernels.Supply], kg/s; nil where nobody has asked
}

func (s *stage) skin(m *moment) skin {
	c := skin{}
	c.saturated, c.slope = air.SaturationSlope(m.t)
	activity, _ := s.b.kernels.Activity(m.x, m.t)
	vapour := activity * c.saturated
	c.wet = s.ratio(vapour)
	c.bend = c.wet * c.slope / c.saturated * s.pressure / max(s.pressure-vapour, (1-mostVapour)*s.pressure)
	return c
}

// pass gives the temperature, °C, and the humidity ratio of the air behind a layer, and the
// share of a small change of it that comes through: less than 1 where the kernels hold back
// what does not come to their surface, [grain.Kernels.Give].
func (s *stage) pass(i int, t, w, reach float64) (offT, offW, share float64) {
	m, c := &s.at[i], &s.skins[i]
	lift := s.lift(m, c.bend)
	offT, offW, share = t+reach*(m.t+lift-t), w+reach*(c.wet+c.bend*lift-w), 1
	taken := s.flow.g * (offW - w)
	kernels := s.b.kernels.Of(m.dry)
	if taken <= 0 || kernels.Surely(m.x, taken) {
		return offT, offW, 1
	}
	if c.supply == 0 {
		c.supply = kernels.Supply(m.x, m.t)
	}
	d := grain.Draw{Carries: s.flow.g * reach, W: w, Saturated: c.saturated + c.slope*lift, Pressure: s.pressure}
	if given, through := kernels.GiveOf(c.supply, m.x, m.t, &d, taken); given < taken {
		return offT, w + given/s.flow.g, through
	}
	return offT, offW, 1
}

// leave gives the air behind a layer, with the answer to what went before, and
// beside it the answer to each kelvin of the layer.
func (s *stage) leave(i int, in *stream, reach float64) (out, byT stream) {
	var share float64
	out.t, out.w, share = s.pass(i, in.t, in.w, reach)
	out.dt, out.dw = (1-reach)*in.dt, (1-reach*share)*in.dw
	byT = stream{dt: reach, dw: reach * s.skins[i].bend * share}
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
