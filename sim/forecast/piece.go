package forecast

import (
	"maltwright/lang/model"
	"maltwright/lang/source"
	"maltwright/sim/grain"
)

// Piece is how the grain fared on one floor, growing or withering.
type Piece struct {
	Stage       model.StageKind
	Of          model.Stage
	Place       source.Place // the head of the stage
	Depth       float64      // m, of the bed as it was spread
	Deepest     float64      // m; the rootlets make it rise
	Area        float64      // m², given or taken for granted
	Began, Took float64      // s from the first soak, and s on this floor
	MoistureAt  float64      // wet basis, 0 to 1, when it was spread
	Driest      float64      // wet basis, 0 to 1
	DriestAt    float64      // s from the first soak
	Wet         float64      // s in which it held more than WitheredMoisture
	Airy        float64      // m, the least depth to which oxygen comes into the bed by itself
	Slowed      float64      // s in which chitted kernels grew at under half their speed for want of water
	Acrospire   float64      // mean length at the end, as a share of the kernel
	Overgrown   float64      // share of all kernels whose acrospire is longer than the kernel
	Chitted     float64      // share of all kernels
	Rub         grain.Rub    // at the end

	Classes grain.AcrospireClasses // share of all kernels by length of the acrospire, at the end

	Heat GrowthHeat

	Blown *Blown // the air that was blown through it; nil where none was
}

// airyAt, °C, is the warmest that the demand for oxygen is reckoned at: above it the
// bed is too warm already (common practice).
const airyAt = 20.0

// slowShare is the share of its full speed below which growth counts as slowed.
const slowShare = 0.5

// watched is what is noted of a piece as time goes on.
type watched struct {
	depth, moistureAt                      float64 // as it was spread out
	deepest, driest, driestAt, wet, slowed float64
	airy                                   float64
	respired, peak, peakAt                 float64 // kg of dry matter, W, s
	age                                    float64 // s, of the piece when it was last looked at
	warm                                   warmth
}

func (m *growModel) look() {
	b := m.piece.Batch()
	m.seen.look(m.piece.Age(), m.piece.Depth(), m.piece.CoreT(), b)
	if airy := grain.OxygenReach(grain.OxygenDemand(&b, min(m.piece.T(), airyAt))); m.seen.airy == 0 || airy < m.seen.airy {
		m.seen.airy = airy
	}
}

// look notes the state of a piece of that age, s, depth, m, which is
// so warm where it is warmest, °C.
func (w *watched) look(age, depth, t float64, b grain.Batch) {
	moisture := b.Moisture()
	if w.depth == 0 {
		w.depth, w.moistureAt = depth, moisture
	}
	w.breathes(age, &b)
	w.deepest = max(w.deepest, depth)
	if w.driest == 0 || moisture < w.driest {
		w.driest, w.driestAt = moisture, age
	}
	if p := b.Lot.Profile; p.Due(b.Clock) >= 0.5 && p.MoistFactor(moisture, b.Clock) < slowShare {
		w.slowed += age - w.age
	}
	if moisture > WitheredMoisture {
		w.wet += age - w.age
	}
	w.warm.add(t, age-w.age)
	w.age = age
}

// fared writes down how the piece of a stage fared.
func (r *run) fared(m growing, st model.Stage) {
	seen, b := m.noted(), m.batch()
	p := Piece{
		Stage: st.Kind(), Of: st, Place: st.Place(),
		Depth: seen.depth, Deepest: seen.deepest, Area: m.spread(),
		Began: r.clock - m.age(), Took: m.age(),
		Airy: seen.airy, MoistureAt: seen.moistureAt, Driest: seen.driest, DriestAt: r.clock - m.age() + seen.driestAt, Wet: seen.wet, Slowed: seen.slowed,
		Acrospire: b.Acrospire(), Overgrown: b.Classes()[grain.Overgrown],
		Chitted: b.Chitted, Rub: grain.RubAt(b.Modification()), Classes: b.Classes(), Heat: m.heat(),
	}
	p.Heat.Peak, p.Heat.PeakAt = seen.peak, p.Began+seen.peakAt
	took := Energy{Water: p.Heat.Dried}
	if box, ok := m.(*boxModel); ok {
		p.Blown = box.through(model.PieceOf(st).Blown, p.Began)
		r.f.Totals.blew(p.Blown)
		r.notGiven(box, st, p.Blown)
		took.heated(p.Blown.Heat, model.PieceOf(st).Floor.Efficiency, "")
		took.fan(p.Blown.FanEnergy)
		took.Cold = p.Blown.Cold
	} else if piece, ok := m.(*growModel); ok {
		h := piece.piece.Holding()
		if on := model.PieceOf(st).Floor; on != nil {
			took.heated(h.Warmed, on.Efficiency, "")
		}
		took.Cold = h.Cooled
	}
	r.spent(st, took)
	r.f.Pieces = append(r.f.Pieces, p)
}
