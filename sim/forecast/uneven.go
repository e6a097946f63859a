package forecast

import (
	"maltwright/sim/air"
	"maltwright/sim/pneumatic"
)

// between is what is seen of a bed between two turns, or from one to the end.
type between struct {
	rested bool   // it came to rest with its air, or had no air that went on all the time
	worst  Uneven // as far as it came on its way to rest
}

// uneven notes how far apart the faces of a bed are with air through it.
func (m *boxModel) uneven(d pneumatic.Draught) {
	if m.runs < m.bed.SinceTurn() && m.runs < m.bed.Age() {
		m.between.rested = true
	}
	rests := m.settled(d.Flow)
	if !rests && m.between.rested {
		return
	}
	bottom, top := m.faces()
	u := Uneven{bottom, top, d.Heat, d.Flow, m.bed.Age()}
	if rests {
		m.between.rested = true
		m.blown.Uneven.worse(u)
		return
	}
	if u.Difference() <= d.Heat/(d.Flow*airDensity*saturatedHeat) { // above it is what a turn left
		m.between.worst.worse(u)
	}
}

// worse takes a larger difference.
func (u *Uneven) worse(than Uneven) {
	if than.Difference() > u.Difference() {
		*u = than
	}
}

// parted closes what was seen between two turns. A bed that a weak fan never brings to
// rest between them counts with what it came to.
func (m *boxModel) parted() {
	if !m.between.rested {
		m.blown.Uneven.worse(m.between.worst)
	}
	m.between = between{}
}

// settled tells whether the same air has passed the whole bed, and more, since it was turned.
func (m *boxModel) settled(flow float64) bool {
	b := m.bed.Batch()
	capacity := b.Lot.Profile.Malt.DryHeat()*b.Dry + air.WaterHeat*b.Water
	passage := capacity / (flow * airDensity * saturatedHeat)
	return min(m.runs, m.bed.SinceTurn()) > settledAfter*passage
}

const (
	airDensity    = 1.22   // kg/m³ at 15 °C
	saturatedHeat = 2750.0 // J/(kg K), of saturated air between 12 and 18 °C (derived)

	settledAfter = 1.8 // passages: for one after a turn the top is warmer than it will settle
)
