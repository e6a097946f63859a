package kiln

import (
	"maltwright/sim/air"
	"maltwright/sim/draught"
	"maltwright/sim/drying"
)

// Moved is what drives the air of a kiln, and what it is lost in.
type Moved struct {
	Flow    float64 // m³/s, at air-on
	Bed     float64 // Pa, lost in the bed
	Over    float64 // Pa, lost in beds on floors above
	Ducts   float64 // Pa, lost in ducts, floor and flaps
	Fan     float64 // Pa, that the fan gives; of a fan without a curve what it takes
	Natural float64 // Pa, by which warm air draws
	Power   float64 // W, that the fan draws
	Short   bool    // less air than is set
}

// FullAir is the share of the air that is set from which it counts as all of it.
const FullAir = 0.98

// Takes is what a flow, m³/s at air-on, of the air as it is now would be lost in, Pa: the bed as it was loaded, beds on
// floors above, ducts, floor and flaps.
func (b *Bed) Takes(flow float64) float64 {
	on := b.now.on.at(b.ambient.P)
	lost := b.lost(flow, b.depth, on, b.now.off.at(b.ambient.P))
	if b.kit.Way != nil {
		lost += b.topped(b.kit.Way, b.now.out.at(b.ambient.P)).lost(b.packing, b.passesOn(flow, on))
		lost += b.kit.Way.Ducts(flow, on)
	}
	return lost
}

// Moved is what drives the air now.
func (b *Bed) Moved() Moved { return b.movedBy(b.now, b.airflow()) }

func (b *Bed) movedBy(f flow, v float64) Moved {
	m := Moved{Flow: v}
	if b.kit.Still || b.feed.fed() || v <= 0 { // another kiln drives what it is fed
		return m
	}
	on, off := f.on.at(b.ambient.P), f.off.at(b.ambient.P)
	way := b.way()
	if way == nil {
		way = &draught.Way{Opening: draught.UsualOpening * b.kit.Area}
	}
	m.Bed, m.Ducts = b.lost(v, b.Depth(), on, off), way.Ducts(v, on)
	over := b.topped(way, off)
	m.Over = over.lost(b.packing, b.passesOn(v, on))
	m.Natural = way.Natural(b.ambient, on, off) + over.lifts + way.Steady
	switch {
	case way.Fan != nil:
		m.Fan = way.Blown(v, on)
	case !way.Drives():
		m.Fan = m.Bed + m.Over + m.Ducts
	}
	m.Power = draught.Power(v, m.Fan)
	if way.Power != nil {
		m.Power = *way.Power
	}
	set := b.set.airflow(b.kit)
	m.Short = set > 0 && v < FullAir*set
	return m
}

// fanPower is the electricity that the fan draws, W.
func (b *Bed) fanPower(f flow) float64 { return b.movedBy(f, b.airflow()).Power }

// Gives is the air, m³/s at air-on, that drives itself through a charge on the kiln while it is
// green: air-on of t °C, and air-off saturated at its wet bulb; no more than most, 0 for no
// bound. Of a kiln without a Way it is the airflow.
func (e Equipment) Gives(charge Charge, ambient Ambient, material drying.Material, t, most float64) (float64, error) {
	if most == 0 {
		most = e.Airflow
	}
	if e.Way == nil || !e.Way.Drives() {
		return most, nil
	}
	e.Layers, e.Still, e.Airflow = 1, false, most
	b, err := New(charge, e, ambient, material)
	if err != nil {
		return 0, err
	}
	on := air.State{T: max(t, b.ambient.T), W: b.ambient.W, P: b.ambient.P}
	bulb := on.WetBulbNear(t / 2)
	off := stream{t: bulb, w: air.HumidityRatio(air.Saturation(bulb), on.P)}
	return b.balance(stream{t: on.T, w: on.W}, off, leastDraught*e.Area, e.most(most, e.Way), b.depth), nil
}
