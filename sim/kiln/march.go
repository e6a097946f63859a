package kiln

import "maltwright/sim/air"

// flow is the air through the bed at a moment, per m².
type flow struct {
	exchange
	on, off stream
	out     stream  // off, past the walls behind the bed
	fresh   stream  // what came to the kiln
	radiant float64 // heat by radiation, W/m²
	taken   float64 // by the walls before the bed, W/m²
	lost    float64 // through the walls to the room, W/m²
	fan     float64 // heat of the fan, W/m²
	settled bool    // every layer was solved
}

// march takes air of the state on through the layers over an implicit stage
// (of nil seconds for the rates at the present state) and leaves the rates of
// the layers in its slot. How much air it is follows from what drives it.
func (b *Bed) march(on stream, s stage) flow {
	if b.way() == nil || b.feed.fed() {
		return b.pass(on, s.length, s.slot)
	}
	if !b.stillAir() {
		if f, ok := b.jointly(on, s, false, nil); ok {
			return f
		}
	}
	return b.driven(on, s.length, s.slot)
}

// pass is march with the airflow as it stands.
func (b *Bed) pass(on stream, a float64, slot int) flow {
	f := flow{exchange: b.exchange(on), on: on, fresh: b.fresh, settled: true}
	if b.meter.Spend(len(b.layers)) != nil { // the searches that ask for it run out at no cost
		f.settled, f.off, f.out = false, on, on
		return f
	}
	m := meeting{
		exchange: f.exchange, material: b.material, in: on, wall: on.t, pressure: b.ambient.P,
		dry: b.dry, perDry: a / b.dry, dryHeat: b.material.DryHeat(),
	}
	m.g = f.each(len(b.layers))
	if f.apart {
		m.radiant /= float64(len(b.layers))
	}
	var mixed mixture
	for i := range b.layers {
		l := &b.layers[i]
		m.refX, m.refH = l.refX, l.refH
		m.vapour = m.in.at(m.pressure).VapourPressure()
		m.sensible = m.g * m.reach * (air.DryAirHeat + air.VapourHeat*m.in.w)
		m.lift, m.draw = l.skew*m.reach, 1/m.reach-l.skew
		e, at, ok := m.solve(l.flux)
		if !ok { // a state without meaning must not be the next guess
			f.settled = false
			return f
		}
		l.flux, l.atX, l.atT = e, at.x, at.t
		l.rates[slot] = rate{x: -e / m.dry, h: m.heat(e, at.t) / m.dry}
		f.radiant += m.radiant * (m.wall - at.t)
		l.in, l.out = m.in, m.off(e, at.t)
		l.mean = at.t + m.lift*(l.in.t-at.t)
		if f.apart {
			mixed.add(l.out)
		} else {
			m.in = l.out
		}
	}
	if f.off = m.in; f.apart {
		f.off = mixed.mean()
	}
	if f.out = f.off; b.walled() {
		b.wash(&f, slot)
	}
	return f
}

// meanT gives the mean temperature of the malt at the end of a stage, °C.
func (b *Bed) meanT() float64 {
	sum := 0.0
	for i := range b.layers {
		sum += b.layers[i].mean
	}
	return sum / float64(len(b.layers))
}

// incoming gives the enthalpy, J per kg of dry air, and the humidity ratio of
// what comes to the heater, before any heat is recovered: fresh air, or what the kiln is fed, and
// exhaust led back.
func (b *Bed) incoming(f flow) (enthalpy, ratio float64) {
	fresh := 1 - f.back
	return fresh*f.fresh.enthalpy() + f.back*f.out.enthalpy(), fresh*f.fresh.w + f.back*f.out.w
}

// need gives the heat that air and walls want, W/m², by the heater and by what is recovered, beside
// that of the fan. In fresh air they want none, and what a shell takes is shed.
func (b *Bed) need(f flow) float64 {
	if b.set.Target == Fresh {
		return 0
	}
	return b.gets(f) + b.bared(f) - f.fan
}

// gets is the heat that air, walls and malt take before the air comes on, W/m².
func (b *Bed) gets(f flow) float64 {
	h, _ := b.incoming(f)
	return f.g*(f.on.enthalpy()-h) + f.radiant + f.taken
}

// shelled tells whether what cools tumbles against walls that are said.
func (b *Bed) shelled() bool {
	return b.set.Target == Fresh && b.kit.Drum.tumbles() && b.walled()
}

// shed gives what the shell of a drum, or malt that cools in still air, leads off into the room, W/m².
func (b *Bed) shed(f flow) float64 {
	if b.shelled() { // all of it is in air and walls, but for what the search left
		return -b.gets(f)
	}
	if b.set.Target == Fresh {
		return -f.radiant
	}
	return b.bared(f)
}

// heat gives what the heater gives, W/m².
func (b *Bed) heat(f flow) float64 { return b.need(f) - b.recovered(f) }
