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
	Slowed      float64      // s in which chitted corns grew at under half their speed for want of water
	Acrospire   float64      // mean length at the end, as a share of the corn
	Overgrown   float64      // share of all corns whose acrospire is longer than the corn
	Chitted     float64      // share of all corns
	Rub         grain.Rub    // at the end

	Classes grain.AcrospireClasses // share of all corns by length of the acrospire, at the end
}

// slowShare is the share of its full speed below which growth counts as slowed.
const slowShare = 0.5

// watched is what is noted of a piece as time goes on.
type watched struct {
	deepest, driest, driestAt, wet, slowed float64
	age                                    float64 // s, of the piece when it was last looked at
}

func (m *growModel) look() {
	age := m.piece.Age()
	w := m.piece.Moisture()
	m.seen.deepest = max(m.seen.deepest, m.piece.Depth())
	if m.seen.driest == 0 || w < m.seen.driest {
		m.seen.driest, m.seen.driestAt = w, age
	}
	if m.piece.Due() >= 0.5 && m.piece.MoistFactor() < slowShare {
		m.seen.slowed += age - m.seen.age
	}
	if w > WitheredMoisture {
		m.seen.wet += age - m.seen.age
	}
	m.seen.age = age
}

// fared writes down how the piece of a stage fared that was spread out as start.
func (r *run) fared(m *growModel, st model.Stage, start growModel) {
	began := r.clock - (m.piece.Age() - start.piece.Age())
	r.f.Pieces = append(r.f.Pieces, Piece{
		Stage: st.Kind(), Of: st, Place: st.Place(),
		Depth: start.piece.Depth(), Deepest: m.seen.deepest, Area: m.area,
		Began: began, Took: m.piece.Age() - start.piece.Age(),
		MoistureAt: start.moisture(), Driest: m.seen.driest, DriestAt: began + m.seen.driestAt, Wet: m.seen.wet, Slowed: m.seen.slowed,
		Acrospire: m.piece.Acrospire(), Overgrown: m.piece.Classes()[grain.Overgrown],
		Chitted: m.piece.Chitted(), Rub: m.piece.Rub(), Classes: m.piece.Classes(),
	})
}
