package pneumatic

import (
	"maltwright/sim/air"
	"maltwright/sim/grain"
)

// layer is the grain between two heights of the bed.
type layer struct {
	heat     float64 // J, from dry matter and liquid water at 0 °C
	water    float64 // kg
	respired float64 // dry matter, kg, since the grain was raw
	clock    float64 // growth clock, °C·h
	chitted  float64 // share of its kernels
	due      float64 // share of its germinable kernels whose chit is due
	debt     float64 // share by which it grows and breathes less, see [grain.Lot.DebtRate]
}

// plus returns the layer with h times the rates added to it.
func (l layer) plus(h float64, r *rate) layer {
	l.heat += h * r.heat
	l.water += h * r.water
	l.respired += h * r.burn
	l.clock += h * r.clock
	l.debt += h * r.debt
	return l
}

// rate is how a layer changes each second.
type rate struct{ heat, water, burn, clock, debt float64 }

// moment is what a layer's state comes to.
type moment struct {
	t        float64 // °C
	x        float64 // kg of water per kg of dry matter
	dry      float64 // kg of dry matter
	capacity float64 // J/K
	burn     float64 // dry matter respired, kg/s
	pace     float64 // of the growth clock, °C·h/s
	debt     float64 // 1/s
}

func (b *Bed) dryOf(l *layer) float64 { return b.dryAtFirst - l.respired }

// capacityOf is the heat capacity of a layer, J/K.
func (b *Bed) capacityOf(l *layer) float64 {
	return b.dryHeat*b.dryOf(l) + air.WaterHeat*l.water
}

func (b *Bed) tOf(l *layer) float64 { return l.heat / b.capacityOf(l) }

// moment gives what goes on in a layer by itself, where it has all the oxygen that it wants.
func (b *Bed) moment(l *layer) moment {
	dry := b.dryOf(l)
	m := moment{capacity: b.capacityOf(l), x: l.water / dry, dry: dry}
	m.t = l.heat / m.capacity
	w := l.water / (l.water + dry)
	m.burn = b.lot.DryMass / float64(b.count) * b.lot.RespirationSpeed(l.clock, m.t, w, 1-l.debt)
	m.pace = b.lot.ClockSpeed(l.clock, m.t, w, 1-l.debt) / hour
	if l.debt > 0 {
		m.debt = b.lot.DebtRate(l.debt, l.clock, w, 0)
	}
	return m
}

// starve leaves a layer the share of its oxygen that reaches it, 0 to 1: it grows and burns by
// that share alike.
func (b *Bed) starve(l *layer, m *moment, share float64) {
	m.burn *= share
	m.pace *= share
	m.debt = b.lot.DebtRate(l.debt, l.clock, m.x/(1+m.x), 1-share)
}

// own is the part of a layer's rates that neither air nor neighbour has to do with.
func (m *moment) own() rate {
	return rate{heat: grain.StarchHeat * m.burn, water: grain.StarchWater * m.burn, burn: m.burn, clock: m.pace, debt: m.debt}
}

const hour = 3600.0
