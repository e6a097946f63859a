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
	chitted  float64 // share of its corns
	due      float64 // share of its germinable corns whose chit is due
}

// plus returns the layer with h times the rates added to it.
func (l layer) plus(h float64, r *rate) layer {
	l.heat += h * r.heat
	l.water += h * r.water
	l.respired += h * r.burn
	l.clock += h * r.clock
	return l
}

// rate is how a layer changes each second.
type rate struct{ heat, water, burn, clock float64 }

// moment is what a layer's state comes to.
type moment struct {
	t        float64 // °C
	x        float64 // kg of water per kg of dry matter
	dry      float64 // kg of dry matter
	capacity float64 // J/K
	burn     float64 // dry matter respired, kg/s
	pace     float64 // of the growth clock, °C·h/s
}

func (b *Bed) dryOf(l *layer) float64 { return b.dryAtFirst - l.respired }

// capacityOf is the heat capacity of a layer, J/K.
func (b *Bed) capacityOf(l *layer) float64 {
	return b.dryHeat*b.dryOf(l) + air.WaterHeat*l.water
}

func (b *Bed) tOf(l *layer) float64 { return l.heat / b.capacityOf(l) }

// moment gives what goes on in a layer by itself.
func (b *Bed) moment(l *layer) moment {
	dry := b.dryOf(l)
	m := moment{capacity: b.capacityOf(l), x: l.water / dry, dry: dry}
	m.t = l.heat / m.capacity
	w := l.water / (l.water + dry)
	m.burn = b.lot.DryMass / float64(b.count) * b.lot.RespirationSpeed(l.clock, m.t, w, 1)
	m.pace = b.lot.ClockSpeed(l.clock, m.t, w, 1) / hour
	return m
}

// own is the part of a layer's rates that neither air nor neighbour has to do with.
func (m *moment) own() rate {
	return rate{heat: grain.StarchHeat * m.burn, water: grain.StarchWater * m.burn, burn: m.burn, clock: m.pace}
}

const hour = 3600.0
