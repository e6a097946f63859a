package kiln

import (
	"math"

	"maltwright/sim/air"
	"maltwright/sim/draught"
)

// Malt cools under a fan or a draught as it dries: the same march, with fresh air. Over a fire that is
// out it draws that air by its own warmth. Where nothing drives air, in an oven that is opened, or so
// little that still air takes more, it cools by its two faces alone: by free convection and
// radiation, and no faster than what conducts heat through it.

const (
	// openConvection and openRadiation are what a face gives to the still air and the walls of
	// a room, W/(m² K). Free convection: the mean of a face upward and one downward, 1.32 and
	// 0.59·(ΔT/L)^¼ at 30 K and 0.4 m (handbook [mcadams-1954], from memory); radiation of a dull
	// surface at 45 °C, 4·0.9·σ·T³ (published).
	openConvection = 3.0
	openRadiation  = 6.0

	// bedConductivity is that of malt at rest with the air between it, W/(m K)
	// (handbook, from memory: dry grain in bulk 0.1 to 0.2).
	bedConductivity = 0.15

	// faces of a tray or a bed.
	faces = 2
)

// parabola is how many times λ/L passes from the mean of a plate to its face, L deep, where
// the warmth in it lies in a parabola, as it does once it has begun to cool.
const parabola = 3

// outlasts is how many times what a fan's air carries, W/(m² K), still air must take so that malt
// cools as fast by itself (numerical: its warmest layer from 80 to 30 °C in a room of 15 °C).
const outlasts = 1.1

// way is what drives the air now; nil where it is there whatever the bed.
func (b *Bed) way() *draught.Way {
	if b.set.Target == Fresh && b.kit.Cools != nil {
		return b.kit.Cools
	}
	return b.kit.Way
}

// stillAir tells whether the malt is left to cool with nothing that drives air, or
// with so little of it that still air takes more.
func (b *Bed) stillAir() bool {
	return b.set.Target == Fresh && !b.kit.Drum.tumbles() &&
		(b.calm || b.kit.Still)
}

// Cooled is what a thermometer shows of malt that cools, °C: of malt that air is led through its warmest
// layer, for the front of the cool air climbs, and what lies above it is as hot as before when the mean has
// come down; in still air, where the warmth lies in it as in a plate, the mean.
func (b *Bed) Cooled() float64 {
	v := View{}
	if b.survey(&v); b.stillAir() {
		return v.MaltT
	}
	return v.Hottest
}

// calmed tells whether air that comes through the malt as it cools has become so little that the malt
// is to be taken to cool in still air.
func (b *Bed) calmed() bool {
	f := &b.now
	return b.set.Target == Fresh && !b.kit.Drum.tumbles() && !f.apart && f.settled &&
		faces*b.throughFace() > outlasts*f.g*(air.DryAirHeat+air.VapourHeat*b.ambient.W)
}

// throughFace gives what the malt loses by a face in still air, W/(m² K) to its mean.
func (b *Bed) throughFace() float64 {
	return 1 / (1/(openConvection+openRadiation) + b.Depth()/2/(bedConductivity*parabola))
}

// openExchange is that of malt in still air. The layers are taken to cool side by side: their mean
// then does as that of a plate of their depth.
func (b *Bed) openExchange() exchange {
	whole := faces * b.throughFace()
	convection := whole * openConvection / (openConvection + openRadiation)
	x := exchange{ntu: stillNTU, reach: -math.Expm1(-stillNTU), apart: true}
	x.g = convection / (x.reach * air.DryAirHeat)
	x.radiant = whole - convection
	return x
}

// each gives the dry air that meets one of n layers, kg/(m² s).
func (x exchange) each(n int) float64 {
	if x.apart {
		return x.g / float64(n)
	}
	return x.g
}

// freshen marches with air of the room and no heat but that of the walls.
func (b *Bed) freshen(s stage) flow {
	b.limit, b.fresh = Unlimited, stream{t: b.ambient.T, w: b.ambient.W}
	on := b.fresh
	if b.shelled() {
		return b.blowWith(0, b.ambient.T, b.warmest(b.ambient.T), s, b.gets)
	}
	if b.walled() && !b.stillAir() {
		on.t = b.heated(0)
	}
	return b.march(on, s)
}

// mixture is air of several streams of the same flow.
type mixture struct{ enthalpy, w, n float64 }

func (m *mixture) add(s stream) {
	m.enthalpy, m.w, m.n = m.enthalpy+s.enthalpy(), m.w+s.w, m.n+1
}

func (m *mixture) mean() stream {
	w := m.w / m.n
	return stream{t: (m.enthalpy/m.n - air.EvaporationHeat*w) / (air.DryAirHeat + air.VapourHeat*w), w: w}
}
