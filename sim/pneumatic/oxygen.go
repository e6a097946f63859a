package pneumatic

import (
	"math"

	"maltwright/sim/grain"
)

// aired fills the pores of the bed with fresh air.
func (b *Bed) aired() { b.pores, b.starved = b.poresHold(), 0 }

// poresHold is the oxygen in the pores of a bed that was aired, kg.
func (b *Bed) poresHold() float64 { return grain.PoreOxygen * b.Depth() * b.vessel.Area }

// reached gives the share of each layer that oxygen reaches by diffusion from the upper face,
// by what each would burn if it had all that it wants:
//
//	∫ z·demand dz = D·ρ
//
// Below that depth there is nothing but what the pores hold.
func (b *Bed) reached(at []moment, depth float64, share []float64) {
	thick := depth / float64(b.count)
	left := grain.PoreSupply
	for k := range b.count { // from the upper face
		i := b.count - 1 - k
		demand := grain.StarchO2 * at[i].burn / (thick * b.vessel.Area)
		from := float64(k) * thick
		to := from + thick
		if used := demand * (to*to - from*from) / 2; used <= left { // what wants nothing has all of it
			left -= used
			share[i] = 1
			continue
		}
		share[i] = (math.Sqrt(from*from+2*left/demand) - from) / thick
		left = 0
	}
}

// breathe leaves the layers of a bed that stands the oxygen that they get. As long as the pores
// hold some, that is all they want; what diffusion does not bring then comes from there.
func (s *stage) breathe() {
	b := s.b
	var share [MostLayers]float64
	b.reached(s.at[:b.count], s.depth, share[:b.count])
	for i := range b.count {
		switch {
		case share[i] >= 1:
		case b.pores > 0:
			s.starved += grain.StarchO2 * (1 - share[i]) * s.at[i].burn
		default:
			b.starve(&s.y[i], &s.at[i], share[i])
		}
	}
}

// airs keeps the account of the pores over dt seconds in which so much came from them, kg/s.
func (b *Bed) airs(dt, starved float64) {
	if b.running {
		b.aired()
		return
	}
	b.starved = starved
	b.pores = math.Max(0, b.pores-dt*starved)
	if b.pores < poresSpent*b.poresHold() {
		b.pores = 0
	}
}

// poresSpent, of what they hold: pores with so little count as empty.
const poresSpent = 1e-3

// OxygenDepth is the depth, m, to which oxygen comes by diffusion from the upper
// face while the fan stands, by what each layer takes where it has all that it wants.
// It is the depth of the bed where oxygen comes all through.
func (b *Bed) OxygenDepth() float64 {
	if b.count == 0 {
		return math.NaN()
	}
	var at [MostLayers]moment
	var share [MostLayers]float64
	for i := range b.inUse() {
		at[i] = b.moment(&b.layers[i])
	}
	depth, sum := b.Depth(), 0.0
	b.reached(at[:b.count], depth, share[:b.count])
	for i := range b.count {
		sum += share[i]
	}
	return depth * sum / float64(b.count)
}
