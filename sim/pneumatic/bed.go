package pneumatic

import (
	"errors"

	"maltwright/sim/air"
	"maltwright/sim/drying"
	"maltwright/sim/grain"
	"maltwright/sim/work"
)

// Vessel is where the bed lies.
type Vessel struct {
	Area   float64 // of the bed, across the air, m², 0.0001 to 1e6
	Layers int     // from air-on to air-off, up to MostLayers; 0 for DefaultLayers
	Mixed  bool    // a drum: all of the bed is one layer
}

const (
	// DefaultLayers is the number of layers of a bed when none is stated.
	DefaultLayers = 20
	// MostLayers bounds their number.
	MostLayers = 40

	lowestBed, highestBed = 0.0, 45.0   // °C, of a bed laid out
	lowestRun, highestRun = -1.0, 60.0  // °C, to which it may drift
	thinnestBed           = 1e-8        // m, kernels strewn so far apart that they do not touch
	deepestBed            = 5.0         // m
	wettestX              = 0.6 / 0.4   // kg/kg: 60 % wet basis, more than any malt takes up
	mostDry               = 0.5         // share of the first dry matter that is left at the least
	longestAdvance        = 30 * 86400. // s, in one call
)

// Bed is grain that germinates with air blown through it. Copy it with an
// assignment. Make it with [New]. A bed and its copies are of one goroutine at a time.
type Bed struct {
	lot        grain.Lot
	packing    drying.Packing
	kernels    grain.Kernels
	dryHeat    float64 // specific heat of the dry matter, J/(kg K)
	vessel     Vessel
	count      int     // of the layers
	leached    float64 // kg
	dryAtFirst float64 // dry matter of a layer before it burnt any, kg
	layers     [MostLayers]layer

	age       float64 // s
	sinceTurn float64 // s
	longest   float64 // longest time between turns so far, s
	turns     int
	hottest   float64 // °C, in any layer, since New
	running   bool    // the fan
	length    float64 // of the step to try next, s
	now       flow    // of the last step
	pores     float64 // oxygen in them, kg
	starved   float64 // oxygen that came from the pores in the last step, kg/s
	room      Room    // last stood in
	ledger    Ledger
	plant     Plant

	meter   *work.Meter
	scratch *runner
}

// New lays the batch, grain that dries as the material does, all of it at t °C
// (0 to 45), into the vessel. It returns the errors of [grain.Batch.Check] and of
// the material, and *[air.RangeError] for a vessel or a temperature out of range,
// or a bed thinner than 0.01 µm or deeper than 5 m.
func New(batch grain.Batch, material drying.Material, vessel Vessel, t float64) (Bed, error) {
	if err := errors.Join(batch.Check(), material.Check()); err != nil {
		return Bed{}, err
	}
	err := errors.Join(
		air.Within("area of the bed", vessel.Area, "m²", 1e-4, 1e6),
		air.Within("layers", float64(vessel.Layers), "", 0, MostLayers),
		air.Within(bedTemperature, t, "°C", lowestBed, highestBed),
		air.Within("moisture of the bed, dry basis", batch.X(), "kg/kg", 0, wettestX),
		air.Within("depth of the bed", batch.BedVolume()/vessel.Area, "m", thinnestBed, deepestBed),
	)
	if err != nil {
		return Bed{}, err
	}
	b := Bed{lot: batch.Lot, packing: material.Packing(), dryHeat: material.DryHeat(),
		vessel: vessel, count: vessel.layerCount(), leached: batch.Leached, hottest: t, length: firstStep, scratch: new(runner)}
	b.kernels = grain.KernelsOf(material)
	b.spread(batch, t)
	b.aired()
	b.ledger = Ledger{DryStart: batch.Dry, WaterStart: batch.Water, HeatStart: b.heat()}
	return b, nil
}

func (v Vessel) layerCount() int {
	switch {
	case v.Mixed:
		return 1
	case v.Layers == 0:
		return DefaultLayers
	}
	return v.Layers
}

// spread shares the batch out between the layers.
func (b *Bed) spread(batch grain.Batch, t float64) {
	n := float64(b.count)
	b.dryAtFirst = (b.lot.DryMass - batch.Leached) / n
	l := layer{
		water: batch.Water / n, respired: batch.Respired / n,
		clock: batch.Clock, chitted: batch.Chitted, due: b.lot.Profile.Due(batch.Clock),
	}
	l.heat = b.capacityOf(&l) * t
	for i := range b.inUse() {
		b.layers[i] = l
	}
}

// inUse are the layers that there are.
func (b *Bed) inUse() []layer { return b.layers[:b.count] }

// Meter has the bed, and every copy of it, spend what it does from a meter. Once
// that is used up Advance returns its error.
func (b *Bed) Meter(m *work.Meter) { b.meter = m }

var errNotMade = errors.New("this bed holds no grain; make it with New")
