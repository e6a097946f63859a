package kiln

import (
	"errors"

	"maltwright/sim/air"
	"maltwright/sim/drying"
	"maltwright/sim/work"
)

// Bed is malt on a kiln. Make one with New; move it with Advance; ask it with
// View. Clone copies it, so that a caller can go back and look closer.
type Bed struct {
	material drying.Material
	packing  drying.Packing
	kit      Equipment
	ambient  air.State
	dry      float64 // dry matter of a layer, kg/m²
	depth    float64 // of the bed as it was loaded, m
	surface  float64 // of the kernels of a layer, m²/m²
	shrinks  float64 // m for each kg/kg of its moisture

	layers []bedLayer
	walls  []wall           // before the bed and behind it; none where nothing is said of them
	flows  [stageCount]flow // of the step being taken
	now    flow             // of the moment reached
	near   stream           // air-on as last found, where a search begins
	fresh  stream           // what comes to the kiln: outside air, or what it is fed
	feed   feed
	traced bool
	trace  Intake  // of the exhaust
	set    Setting // in force
	hand   hand    // by which air-off is held
	asked  float64 // of the target where the last step ended, °C
	even   bool    // now is the end of the last step, its rates hold, and nobody has touched the bed since
	seen   moment  // of now
	calm   bool    // what comes through malt that cools is less than still air takes
	limit  Limit

	passing float64 // airflow of the last march, m³/s; of a bed with a Way
	answers float64 // how the miss of its balance grew with the flow at last

	joint joint
	past  past

	seconds float64 // since New
	step    float64 // to try next, s
	ledger  Ledger
	plateau plateau
	work    Progress
	meter   *work.Meter
}

// New puts a charge of the material on a kiln. It returns a *[air.RangeError], or several
// joined, for values outside: dry matter 1 g to 1000 t, moisture 0 to 1.5 dry
// basis, malt 0 to 300 °C, depth 0.01 µm to 10 m, or bulk density 200 to 1000 kg/m³
// with a depth of 0.01 µm to 20 m from it,
// area 10 cm² to 1 ha, walls 10 cm² to 10 ha, airflow 1e-5 to 3 m/s times the area, reach −20 to
// 300 °C, exhaust led back and heat recovered 0 to 0.98, ambient −20 to 50 °C.
func New(charge Charge, kit Equipment, ambient Ambient, material drying.Material) (*Bed, error) {
	outside, err := ambient.state()
	if err := errors.Join(err, charge.check(), kit.check(), material.Check()); err != nil {
		return nil, err
	}
	depth := charge.bedDepth(kit.Area)
	if err := air.Within("depth of the bed", depth, "m", thinnest, 20); err != nil {
		return nil, err
	}
	n := kit.layerCount(charge, ambient, material)
	b := &Bed{
		material: material, packing: material.Packing(), kit: kit, ambient: outside,
		dry: charge.DryMass / kit.Area / float64(n), depth: depth,
		layers: make([]bedLayer, n), step: firstStep,
	}
	for i := range b.layers {
		b.layers[i] = bedLayer{
			x: charge.Moisture, h: drying.Enthalpy(material, charge.Moisture, charge.Temperature),
			t: charge.Temperature, mean: charge.Temperature,
		}
	}
	b.surface = b.packing.Surface * or(charge.Settled, depth) / float64(n)
	b.shrinks = charge.shrinks(depth)
	b.walls = kit.build(outside.T)
	b.now.on = stream{t: outside.T, w: outside.W}
	b.now.off, b.now.out, b.near, b.fresh = b.now.on, b.now.on, b.now.on, b.now.on
	b.ledger = b.opening()
	return b, nil
}

func (e Equipment) layerCount(charge Charge, ambient Ambient, material drying.Material) int {
	switch {
	case e.Still || e.Drum.tumbles():
		return 1
	case e.Layers == 0:
		return LayersFor(charge, ambient, material, Draught{usualHeat, e.Airflow})
	}
	return e.Layers
}

// Meter has the bed, and every clone of it, spend what it does from a meter. Once that
// is used up Advance returns its error.
func (b *Bed) Meter(m *work.Meter) { b.meter = m }

// Clone returns a bed of its own in the same state.
func (b *Bed) Clone() *Bed {
	c := new(Bed)
	c.Become(b)
	return c
}

// Become puts the bed into the state of another one, in the memory that it has.
func (b *Bed) Become(o *Bed) {
	layers, walls, trace := append(b.layers[:0], o.layers...), append(b.walls[:0], o.walls...), append(b.trace[:0], o.trace...)
	*b = *o
	b.layers, b.walls, b.trace = layers, walls, trace
}

// Mix stirs the bed: every layer takes the mean moisture and heat. Water and
// energy are kept. The plateau of the air-off is looked for anew.
func (b *Bed) Mix() {
	x, h := b.means()
	for i := range b.layers {
		l := &b.layers[i]
		l.x, l.h, l.t = x, h, drying.Temperature(b.material, x, h)
		l.mean = l.t
	}
	b.plateau.mixed()
	b.even = false
}

// meanX gives the moisture of the whole bed, kg/kg dry basis.
func (b *Bed) meanX() float64 {
	sum := 0.0
	for i := range b.layers {
		sum += b.layers[i].x
	}
	return sum / float64(len(b.layers))
}

// means gives moisture and enthalpy of the whole bed, per kg of dry matter.
func (b *Bed) means() (x, h float64) {
	for i := range b.layers {
		x += b.layers[i].x
		h += b.layers[i].h
	}
	n := float64(len(b.layers))
	return x / n, h / n
}

// dryMass gives the dry matter of the whole bed, kg.
func (b *Bed) dryMass() float64 { return b.dry * float64(len(b.layers)) * b.kit.Area }
