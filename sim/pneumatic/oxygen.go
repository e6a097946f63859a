package pneumatic

import (
	"math"

	"maltwright/sim/grain"
)

const (
	// poreDiffusion, m²/s, is that of oxygen through the pores of a bed:
	// 2.0e-5 in free air (handbook, from memory) times the voids of 0.40 to the
	// power 1.5 (handbook, from memory: Bruggeman's law).
	poreDiffusion = 2.0e-5 * 0.2530
	// airOxygen is the density of oxygen in air, kg/m³: published, 23.1 % of the
	// mass of air of 1.23 kg/m³ at 15 °C.
	airOxygen = 0.284
)

// OxygenReach is the depth, m, to which oxygen comes by diffusion from an open
// face into a bed that stands and takes demand kg/(m³ s) of it, the same at every
// depth: √(2·D·ρ/demand), D the diffusion through the pores, ρ the oxygen in the
// air. Nothing taken is reached at any depth.
func OxygenReach(demand float64) float64 {
	return math.Sqrt(2 * poreDiffusion * airOxygen / demand)
}

// OxygenDemand is the oxygen, kg/(m³ s), that a batch takes at t °C, spread over
// the room it fills.
func OxygenDemand(b *grain.Batch, t float64) float64 {
	burn := b.Lot.DryMass * b.Lot.RespirationSpeed(b.Clock, t, b.Moisture(), 1)
	return grain.StarchO2 * burn / b.Lot.BedVolume(b.X(), b.Clock)
}

// OxygenDepth is the depth, m, to which oxygen comes by diffusion from the upper
// face while the fan stands, by what each layer takes now: ∫ z·demand dz = D·ρ.
// It is the depth of the bed where oxygen comes all through.
func (b *Bed) OxygenDepth() float64 {
	if b.count == 0 {
		return math.NaN()
	}
	depth := b.Depth()
	thick := depth / float64(b.count)
	left := poreDiffusion * airOxygen
	for i := range b.count { // from the upper face
		m := b.moment(&b.layers[b.count-1-i])
		demand := grain.StarchO2 * m.burn / (thick * b.vessel.Area)
		from := float64(i) * thick
		to := from + thick
		if used := demand * (to*to - from*from) / 2; used < left {
			left -= used
			continue
		}
		return math.Sqrt(from*from + 2*left/demand)
	}
	return depth
}
