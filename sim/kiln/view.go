package kiln

import "maltwright/sim/air"

// View is what can be seen of the bed at a moment.
type View struct {
	Hours float64 // since New

	X        float64 // mean moisture, kg/kg dry basis
	WetBasis float64 // the same, kg of water per kg of malt
	Mass     float64 // of the malt, kg
	Driest   float64 // moisture of the driest layer, kg/kg dry basis
	Wettest  float64 // of the wettest
	MaltT    float64 // mean temperature of the malt, °C
	Hottest  float64 // temperature of the hottest layer, °C
	HottestX float64 // its moisture, kg/kg dry basis

	On, Off air.State // the air before and behind the bed
	OffRH   float64   // relative humidity of air-off, 0 to 1; fog counts as 1
	WetBulb float64   // of air-on, °C
	Used    float64   // share of the air's drying power that the bed uses
	Limit   Limit     // what keeps the kiln from its setting

	OnPlateau  bool    // air-off sits on its plateau
	Broken     bool    // the break has been
	BreakHours float64 // when, h since New

	Airflow     float64 // m³/s at air-on; of a still oven what leaves it, by its door too
	HeaterPower float64 // now, W
	Ledger      Ledger
	Work        Progress
}

// Layer is one layer of the bed, from air-on to air-off.
type Layer struct {
	X float64 // moisture, kg/kg dry basis
	T float64 // temperature of the malt, °C
}

// View looks at the bed. Before the first Advance no air has passed, and On and
// Off are the ambient air.
func (b *Bed) View() View {
	x, _ := b.means()
	mass := b.dryMass()
	v := View{
		Hours: b.seconds / 3600, X: x, WetBasis: x / (1 + x), Mass: mass * (1 + x),
		On:    air.State{T: b.now.on.t, W: b.now.on.w, P: b.ambient.P},
		Off:   air.State{T: b.now.off.t, W: b.now.off.w, P: b.ambient.P},
		Limit: b.limit, Ledger: b.ledger, Work: b.work,
		Broken: b.plateau.over, BreakHours: b.plateau.hours,
		HeaterPower: b.heat(b.now) * b.kit.Area,
	}
	v.OffRH = min(1, v.Off.RH())
	at := b.seen
	if b.work.Steps == 0 {
		at = b.moment()
	}
	v.WetBulb, v.Used = at.bulb, at.taken
	v.OnPlateau = b.OnPlateau()
	b.survey(&v)
	if v.Airflow = b.airflow(); b.kit.Still && !b.stillAir() {
		v.Airflow += b.kit.Door.draws(b, v.On)
	}
	return v
}

func (b *Bed) survey(v *View) {
	v.Driest, v.Wettest, v.Hottest = b.layers[0].x, b.layers[0].x, b.layers[0].mean-1
	for _, l := range b.layers {
		v.Driest, v.Wettest = min(v.Driest, l.x), max(v.Wettest, l.x)
		v.MaltT += l.mean / float64(len(b.layers))
		if l.mean > v.Hottest {
			v.Hottest, v.HottestX = l.mean, l.x
		}
	}
}

// OnPlateau tells whether air-off sits on its plateau, so that the break is to come.
func (b *Bed) OnPlateau() bool { return b.plateau.best >= plateauLeast && !b.plateau.over }

// WetBasis is the mean moisture, kg of water per kg of malt.
func (b *Bed) WetBasis() float64 { x, _ := b.means(); return x / (1 + x) }

// Mass is that of the malt, kg.
func (b *Bed) Mass() float64 { x, _ := b.means(); return b.dryMass() * (1 + x) }

// Layers appends the layers to dst and returns it.
func (b *Bed) Layers(dst []Layer) []Layer {
	for i := range b.layers {
		dst = append(dst, Layer{X: b.layers[i].x, T: b.layers[i].mean})
	}
	return dst
}

// LayerAt is a layer of the bed with where it lies and the air that goes through it.
type LayerAt struct {
	Layer
	Thick   float64 // m
	In, Off float64 // °C, of the air at its faces in the last step; ambient air before the first
}

// LayersAt appends the layers, as [Bed.Layers] does, with their air to dst and returns it. Each has
// shrunk by the water that it has lost itself, so that together they are as thick as the bed.
func (b *Bed) LayersAt(dst []LayerAt) []LayerAt {
	n := float64(len(b.layers))
	for i := range b.layers {
		l := &b.layers[i]
		at := LayerAt{Layer: Layer{X: l.x, T: l.mean}, Thick: b.depthAt(l.x) / n, In: l.in.t, Off: l.out.t}
		if b.Unblown() {
			at.In, at.Off = b.now.on.t, b.now.on.t
		}
		dst = append(dst, at)
	}
	return dst
}

// Unblown tells whether no air has passed through the bed yet.
func (b *Bed) Unblown() bool { return b.work.Steps == 0 }

// Leaves is the air that leaves the kiln or is led back, behind the walls above the bed.
func (b *Bed) Leaves() air.State {
	return air.State{T: b.now.out.t, W: b.now.out.w, P: b.ambient.P}
}

// Depth gives the depth of the bed, m: as it was loaded, less what it has shrunk by, in
// proportion to the water that it has lost.
func (b *Bed) Depth() float64 { return b.depthAt(b.meanX()) }

// depthAt is the depth at a moisture, kg/kg dry basis.
func (b *Bed) depthAt(x float64) float64 {
	if b.shrinks == 0 {
		return b.depth
	}
	return b.depth - b.shrinks*(b.ledger.WaterAtStart/b.ledger.DryMass-x)
}
