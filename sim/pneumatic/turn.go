package pneumatic

import (
	"errors"
	"fmt"

	"maltwright/sim/air"
)

// Turn mixes the bed: water, heat, dry matter and growth of every layer become
// their mean, and fresh air comes into its pores. Nothing is lost.
func (b *Bed) Turn() {
	b.longest = b.LongestUnturned()
	b.sinceTurn = 0
	b.turns++
	if b.count == 0 {
		return
	}
	mean := b.mean()
	for i := range b.inUse() {
		b.layers[i] = mean
	}
	b.aired()
}

// mean is a layer of the whole bed, well mixed. All layers began with the same
// kernels, so that what is counted by the kernel takes the plain mean.
func (b *Bed) mean() layer {
	var m layer
	share := 1 / float64(b.count)
	for i := range b.inUse() {
		l := &b.layers[i]
		m.heat += l.heat * share
		m.water += l.water * share
		m.respired += l.respired * share
		m.clock += l.clock * share
		m.chitted += l.chitted * share
		m.due += l.due * share
		m.debt += l.debt * share
	}
	return m
}

// Sprinkle gives kg of water of t °C, 0 to 45, to all layers alike, and the grain
// takes up all of it. Less than nil, water that would bring a layer over 60 %, or
// a temperature out of range is a *[air.RangeError].
func (b *Bed) Sprinkle(kg, t float64) error {
	if b.count == 0 {
		return errNotMade
	}
	n := float64(b.count)
	most := wettestX * b.lot.DryMass
	for i := range b.inUse() {
		l := &b.layers[i]
		most = min(most, n*(wettestX*b.dryOf(l)-l.water))
	}
	if kg > most {
		return fmt.Errorf("the grain takes up no more than brings it to 60 %% moisture: %w", air.Within("water sprinkled", kg, "kg", 0, most))
	}
	err := errors.Join(
		air.Within("water sprinkled", kg, "kg", 0, most),
		air.Within("temperature of the water sprinkled", t, "°C", lowestBed, highestBed))
	if err != nil {
		return err
	}
	for i := range b.inUse() {
		b.layers[i].water += kg / n
		b.layers[i].heat += air.WaterHeat * t * kg / n
	}
	b.ledger.Sprinkled += kg
	b.ledger.SprinkledHeat += air.WaterHeat * t * kg
	return nil
}
