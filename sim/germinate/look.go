package germinate

import "maltwright/sim/grain"

// T is the mean temperature of the bed, °C. It is not a number in a Piece that
// New did not make.
func (p *Piece) T() float64 { return p.y[heat] / p.capacity(&p.y) }

// CoreT is the temperature in the middle of the bed's depth, °C.
func (p *Piece) CoreT() float64 { return p.T() + p.y[excess]/3 }

// FaceT is the temperature of the bed's faces, °C.
func (p *Piece) FaceT() float64 { return p.T() - 2*p.y[excess]/3 }

// Highest is the highest temperature anywhere in the bed so far, °C, as seen at
// the steps taken, some minutes apart.
func (p *Piece) Highest() float64 { return p.hottest }

// X is the mean moisture, kg of water per kg of dry matter left.
func (p *Piece) X() float64 { return p.water(&p.y) / p.dry(&p.y) }

// Moisture is the mean moisture on the wet basis, kg of water per kg of malt.
func (p *Piece) Moisture() float64 { return p.water(&p.y) / p.Mass() }

// Mass is the weight of the piece, kg.
func (p *Piece) Mass() float64 { return p.dry(&p.y) + p.water(&p.y) }

// DryMatter is the dry matter left, kg.
func (p *Piece) DryMatter() float64 { return p.dry(&p.y) }

// Evaporated is the water lost to the air on this floor so far, kg; negative
// when more has condensed.
func (p *Piece) Evaporated() float64 { return p.y[dried] }

// Depth is the depth of the bed, m.
func (p *Piece) Depth() float64 { return p.lot.BedVolume(p.X(), p.y[clock]) / p.floor.Area }

// Chitted is the share of all kernels that have chitted.
func (p *Piece) Chitted() float64 { return p.chitted }

// Due is the share of the germinable kernels whose chit is due.
func (p *Piece) Due() float64 { return p.due }

// MoistFactor is the share of full speed at which the kernels grow in the moisture
// that they have; see [grain.Profile.MoistFactor].
func (p *Piece) MoistFactor() float64 { return p.lot.Profile.MoistFactor(p.Moisture(), p.y[clock]) }

// Clock is the growth clock, °C·h.
func (p *Piece) Clock() float64 { return p.y[clock] }

// Acrospire is the mean acrospire, as a share of the kernel.
func (p *Piece) Acrospire() float64 { return p.lot.Profile.Acrospire(p.y[clock]) }

// Classes is the share of all kernels in each class of acrospire length; the last
// is the overgrown share.
func (p *Piece) Classes() grain.AcrospireClasses {
	return p.lot.Profile.Classes(p.y[clock], p.chitted)
}

// Modification is the modification index, 0 to 1.
func (p *Piece) Modification() float64 { return p.lot.Profile.Modification(p.y[clock]) }

// Rub is the word the rub test would give.
func (p *Piece) Rub() grain.Rub { return grain.RubAt(p.Modification()) }

// CO2 is the carbon dioxide given off since the grain was raw, kg.
func (p *Piece) CO2() float64 { return grain.StarchCO2 * p.y[respired] }

// RespirationLoss is the dry matter respired since the grain was raw, as a
// share of the first dry matter.
func (p *Piece) RespirationLoss() float64 { return p.y[respired] / p.lot.DryMass }

// Age is the time on this floor, s.
func (p *Piece) Age() float64 { return p.age }

// SinceTurn is the time since the last turn, or since New, s.
func (p *Piece) SinceTurn() float64 { return p.sinceTurn }

// LongestUnturned is the longest time between two turns so far, the running one
// counted, s.
func (p *Piece) LongestUnturned() float64 { return max(p.longest, p.sinceTurn) }

// Batch is the grain as it would be taken off the floor now.
func (p *Piece) Batch() grain.Batch {
	return grain.Batch{
		Lot:      p.lot,
		Dry:      p.dry(&p.y),
		Water:    p.water(&p.y),
		Leached:  p.leached,
		Respired: p.y[respired],
		Clock:    p.y[clock],
		Chitted:  p.chitted,
		Debt:     p.y[debt],
	}
}
